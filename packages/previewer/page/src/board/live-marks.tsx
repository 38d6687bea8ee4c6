import { lengthText, numberText } from '@edgebite/svg';
import type { Live, Span } from '../move/live.js';
import { endText, live } from '../state/live.js';
import { shown } from '../state/store.js';
import type { Summary } from '../worker/messages.js';
import type { Place } from '../worker/sketch.js';
import { drawn } from './drawn.js';
import { onScreen, type Size, type View } from './view.js';

/** The dimensions to be drawn; null while nothing moves, as the full drawing has dimensions of its own. */
function liveNow(): { readonly live: Live; readonly summary: Summary } | null {
  const summary = shown.value?.summary;
  if (drawn.value !== null || live.value === null || summary === undefined) return null;
  return { live: live.value, summary };
}

/** Dimensions of the cut that moves: to the edges next to it, its thinnest web, and how it opens a face. */
export function LiveMarks({ view, size }: { view: View; size: Size }) {
  const now = liveNow();
  if (now === null) return null;
  const { edges, web, opened, radius } = now.live;
  // Of a bite the way to its own face says less than how deep it is and how wide.
  const plain = edges.filter(({ source }) => source !== opened?.depth.source);
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of shapes takes no focus
    <g class="live" aria-hidden="true">
      {plain.map((span, k) => (
        <g key={k} class="edge">
          <Line span={span} view={view} />
          <Figure span={span} radius={radius} view={view} size={size} />
        </g>
      ))}
      {opened !== null && (
        <g class="opened">
          <Line span={opened.depth} view={view} />
          <Line span={opened.opening} view={view} />
        </g>
      )}
      {web !== null && (
        <g class={isThin(web, now.summary) ? 'web thin' : 'web'}>
          <Line span={web} view={view} />
        </g>
      )}
    </g>
  );
}

const isThin = ({ size }: Span, { limits }: Summary): boolean => size < limits.web;

/** The same in words, under the drawing's own lines, where they cross nothing. */
export function LiveWords() {
  const now = liveNow();
  if (now === null) return null;
  const { summary } = now;
  const { web, opened } = now.live;
  return (
    <div class="live-words" aria-hidden="true">
      {web !== null && <p class={isThin(web, summary) ? 'thin' : ''}>{webText(web, summary)}</p>}
      {opened !== null && (
        <p>
          {lengthText(opened.depth.size, summary.units)} deep, opens{' '}
          {lengthText(opened.opening.size, summary.units)}
        </p>
      )}
    </div>
  );
}

/** What a web comes to, and how far that is from its limit. */
function webText(web: Span, summary: Summary): string {
  const { units, limits } = summary;
  const off = numberText(Math.abs(web.size - limits.web), units);
  const side = isThin(web, summary) ? 'under' : 'over';
  return `Web ${lengthText(web.size, units)} to ${endText(web.source)}, ${off} ${side} the limit`;
}

function Line({ span, view }: { span: Span; view: View }) {
  const [[x1, y1], [x2, y2]] = [onScreen(view, span.from), onScreen(view, span.to)];
  return <line x1={x1} y1={y1} x2={x2} y2={y2} />;
}

/** Room of a figure on the screen, pixels: about so much for a digit, and so far from its line. */
const DIGIT = 8;
const GAP = 12;

/** Between rim and edge a figure needs so much. */
const LEAST = 44;

interface FigureProps {
  readonly span: Span;
  readonly radius: number;
  readonly view: View;
  readonly size: Size;
}

function Figure({ span, radius, view, size }: FigureProps) {
  const words = numberText(span.size, shown.value?.summary.units ?? 'mm');
  const [x, y] = figureAt(span, radius, words, view, size);
  return (
    <text x={x} y={y}>
      {words}
    </text>
  );
}

// Beside its line between rim and edge; where that is short, past the edge; and never past the rim of the board.
function figureAt(
  { from, to, size: far }: Span,
  radius: number,
  words: string,
  view: View,
  board: Size,
): Place {
  const half = (words.length * DIGIT) / 2;
  const [[x1, y1], [x2, y2]] = [onScreen(view, from), onScreen(view, to)];
  const long = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [ux, uy] = [(x2 - x1) / long, (y2 - y1) / long];
  const isLong = (far - radius) * view.scale >= LEAST;
  const at = isLong ? ((1 + Math.max(radius, 0) / far) / 2) * long : long + GAP + half * Math.abs(ux);
  const aside = isLong ? [Math.abs(uy) * (half + GAP / 2), -Math.abs(ux) * GAP] : [0, uy * GAP];
  const [x, y] = [x1 + ux * at + (aside[0] ?? 0), y1 + uy * at + (aside[1] ?? 0) + 4];
  return [
    Math.min(Math.max(x, half + 2), board.width - half - 2),
    Math.min(Math.max(y, 14), board.height - 6),
  ];
}
