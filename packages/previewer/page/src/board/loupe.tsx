import type { Place, Sketch } from '../worker/sketch.js';
import { enlarged, matrixOf, onScreen, type Size, type View } from './view.js';

/** A web under the loupe. */
export interface LoupeWeb {
  readonly ends: readonly [Place, Place];
  readonly thickness: number;
  /** Its thickness with its unit. */
  readonly words: string;
}

interface LoupeProps {
  readonly place: Place;
  /** The web at the place; null where it is a tip. */
  readonly web: LoupeWeb | null;
  readonly view: View;
  readonly size: Size;
  readonly sketch: Sketch;
}

/** How many times the loupe enlarges at least and at most, and what it does for a tip that has no thickness. */
const TIMES = { least: 3, most: 12, tip: 6 };

/** A web is enlarged until its thickness is this share of the loupe's radius. */
const FILLED = 0.5;

/** Radius of the loupe as a share of the drawing's shorter side, and its bounds in pixels. */
const RADIUS = { share: 0.2, least: 52, most: 104 };

/** Pixels between the loupe and the rim of the drawing, and between the loupe and the place. */
const GAP = { rim: 10, place: 24 };

/** A round window in which the place of a finding is enlarged, in a corner where it hides little of the part. */
export function Loupe({ place, web, view, size, sketch }: LoupeProps) {
  const radius = Math.min(
    Math.max(Math.min(size.width, size.height) * RADIUS.share, RADIUS.least),
    RADIUS.most,
  );
  const from = onScreen(view, place);
  const at = corner(from, radius, view, size, sketch);
  const times = web === null ? TIMES.tip : timesFor((radius * FILLED) / (web.thickness * view.scale));
  const inner = enlarged(view, place, at, times);
  const rim = Math.max(1 - radius / Math.hypot(at[0] - from[0], at[1] - from[1]), 0);
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of shapes takes no focus
    <g class="loupe" aria-hidden="true">
      <clipPath id="loupe-clip">
        <circle cx={at[0]} cy={at[1]} r={radius} />
      </clipPath>
      <line
        x1={from[0]}
        y1={from[1]}
        x2={from[0] + (at[0] - from[0]) * rim}
        y2={from[1] + (at[1] - from[1]) * rim}
      />
      <circle class="glass" cx={at[0]} cy={at[1]} r={radius} />
      <g clip-path="url(#loupe-clip)">
        <g transform={matrixOf(inner)}>
          <path class="gone" d={sketch.outline} />
          {sketch.pieces.map(({ id, role, plan, top }) => (
            <g key={id} class={`piece ${role === 'kept' ? 'kept' : role === 'held slug' ? 'held' : 'loose'}`}>
              <path class="floor" d={plan} />
              <path class="face" d={top} />
            </g>
          ))}
        </g>
        {web === null ? (
          <circle class="spot" cx={at[0]} cy={at[1]} r={12} />
        ) : (
          <Across web={web} view={inner} />
        )}
      </g>
      <circle class="rim" cx={at[0]} cy={at[1]} r={radius} />
      <text x={at[0]} y={at[1] + radius - 9}>
        ×{times}
      </text>
      {web !== null && (
        <text x={at[0]} y={at[1] - radius + 20}>
          {web.words}
        </text>
      )}
    </g>
  );
}

function Across({ web, view }: { web: LoupeWeb; view: View }) {
  const [[x1, y1], [x2, y2]] = [onScreen(view, web.ends[0]), onScreen(view, web.ends[1])];
  return <line class="across" x1={x1} y1={y1} x2={x2} y2={y2} />;
}

function timesFor(wanted: number): number {
  return Math.round(Math.min(Math.max(wanted, TIMES.least), TIMES.most));
}

// Of the corners that do not hide the place, the one that hides least of the part's box; the nearest of equals.
function corner(from: Place, radius: number, view: View, size: Size, sketch: Sketch): Place {
  const inset = radius + GAP.rim;
  const [left, bottom] = onScreen(view, [sketch.box[0], sketch.box[1]]);
  const [right, top] = onScreen(view, [sketch.box[2], sketch.box[3]]);
  const rated = [inset, size.width - inset].flatMap((x) =>
    [inset, size.height - inset].map((y) => {
      const away = Math.hypot(x - from[0], y - from[1]);
      const wide = Math.max(Math.min(x + radius, right) - Math.max(x - radius, left), 0);
      const high = Math.max(Math.min(y + radius, bottom) - Math.max(y - radius, top), 0);
      const hides = away < radius + GAP.place ? 1 : 0;
      return { at: [x, y] as const, rank: [hides, Math.round((wide * high) / radius), away] };
    }),
  );
  rated.sort((a, b) => a.rank.map((value, k) => value - (b.rank[k] ?? 0)).find((by) => by !== 0) ?? 0);
  return rated[0]?.at ?? [inset, inset];
}
