import { drawn, heading, type Lie, laid } from './lie.js';
import type { Metal } from './metal.js';
import type { Place } from './shapes.js';
import { lengthOf, type Span, spansOf, type Told } from './spans.js';

/** How a standing tool meets the metal of one slab, seen as the part lies. */
export interface SimLoad {
  readonly share: number;
  /** How far off the share may be: what is left untold. */
  readonly slack: number;
  /** Null where something too small to tell may be a strike, or part two. */
  readonly strikes: number | null;
  readonly sideLoad: number;
  /** Degrees in the machine's axes; null where the side load is about 0. */
  readonly push: number | null;
  /** How far off the side load may be. */
  readonly loadSlack: number;
}

export interface Standing {
  readonly center: Place;
  readonly radius: number;
  /** Width of the teeth of a ring; null for a disc, of which the circle counts. */
  readonly wall: number | null;
}

/** Stretches of a turn shorter than this (radians) are not told, for a circle and for a ring. */
const SHORTEST = { circle: 2e-6, ring: 2e-4 };

/** An arc counts where there is metal this far to both sides. */
const SIDE = 1e-5;

/**
 * Load of a tool in the metal of a slab. The tool stands over the part as it lies; at machine angle a its tooth is
 * at (cos a, sin a) from the centre and, the spindle turning clockwise seen from above, moves along (sin a, -cos a).
 * So it pushes the part.
 */
export function loadIn(metal: Metal, tool: Standing, lie: Lie): SimLoad {
  const middle = laid(lie, tool.center);
  const under = (angle: number, far: number): Place =>
    drawn(lie, [middle[0] + far * Math.cos(angle), middle[1] + far * Math.sin(angle)]);
  const spans =
    tool.wall === null
      ? spansOf(0, 2 * Math.PI, SHORTEST.circle, (a, half) => onCircle(metal, tool, under, a, half))
      : spansOf(0, 2 * Math.PI, SHORTEST.ring, (a, half) => inRing(metal, tool, under, a, half));
  const wide = tool.wall === null ? () => ALL : widthAt(metal, tool, under);
  return summed(spans, wide);
}

type Under = (angle: number, far: number) => Place;

function onCircle(
  metal: Metal,
  { center, radius }: Standing,
  under: Under,
  angle: number,
  half: number,
): Told {
  let isIn = true;
  for (const far of [radius - SIDE, radius + SIDE]) {
    const [x, y] = under(angle, far);
    const { low, high } = metal.bounds(x, y, far * half, center);
    if (high < 0) return 'out';
    if (low <= 0) isIn = false;
  }
  if (!isIn) return 'split';
  return told(metal, under(angle, radius));
}

function told(metal: Metal, [x, y]: Place): Told {
  const whose = metal.whose(x, y);
  return whose === 'stands' ? 'in' : whose === 'lifted' ? 'out' : 'untold';
}

/** Of a stretch of a turn: whether the tooth is in metal somewhere on its width all the way, or nowhere. */
function inRing(metal: Metal, tool: Standing, under: Under, angle: number, half: number): Told {
  const width = tool.wall as number;
  const seen = (from: number, to: number): Told => {
    const far = (from + to) / 2;
    const [x, y] = under(angle, far);
    const [deep, wide] = [(to - from) / 2, to * half];
    const { low, high, lowOfOthers } = metal.bounds(
      x,
      y,
      Math.sqrt(deep * deep + wide * wide),
      tool.center,
      deep,
    );
    if (high < 0) return 'out';
    if (low > 0) return told(metal, [x, y]);
    // The border of a tool on the same centre is not told by shorter turns, but by thinner rings.
    if (deep <= wide && lowOfOthers <= 0) return 'split';
    if (deep < SIDE) return 'out';
    const inner = seen(from, far);
    if (inner === 'in') return 'in';
    const outer = seen(far, to);
    if (outer === 'in') return 'in';
    if (inner === 'split' || outer === 'split') return 'split';
    return inner === 'untold' || outer === 'untold' ? 'untold' : 'out';
  };
  return seen(tool.radius - width + SIDE, tool.radius - SIDE);
}

/** Length of metal under a tooth, and of what is not told. */
interface Width {
  readonly metal: number;
  readonly untold: number;
}

/** Of a circle, which has no width. */
const ALL: Width = { metal: 1, untold: 0 };

/** Length of metal under the tooth at an angle. */
function widthAt(metal: Metal, tool: Standing, under: Under): (angle: number) => Width {
  const shortest = 1e-4;
  return (angle) => {
    const spans = spansOf(tool.radius - (tool.wall as number), tool.radius, shortest, (far, half) => {
      const [x, y] = under(angle, far);
      const { low, high } = metal.bounds(x, y, half);
      return high < 0 ? 'out' : low > 0 ? told(metal, [x, y]) : 'split';
    });
    return { metal: lengthOf(spans, 'in'), untold: lengthOf(spans, 'untold') };
  };
}

/** Panels of at most this (radians) are summed up, and none is halved below the other. */
const PANEL = { most: Math.PI / 45, least: 1e-3 };

/** Widths over a panel that differ from its middle one by no more than this share of it tell all of it. */
const EVEN = 1e-3;

/** The middle of a part of a turn, its size, and the width in metal there. */
type Panel = (middle: number, by: number, width: Width) => void;

/**
 * Sums up a stretch in metal by panels, halved where the width in metal does not run straight from end to end: it may
 * jump, and a jump between any two of five places is seen.
 */
function eachPanel({ from, to }: Span, wide: (angle: number) => Width, add: Panel): void {
  const part = (a: number, b: number, [first, middle, last]: readonly [Width, Width, Width]) => {
    const by = (b - a) / 2;
    const [one, other] = [wide(a + by / 2), wide(b - by / 2)];
    const isEven = isStraight(first, one, middle) && isStraight(middle, other, last);
    if (isEven || by < PANEL.least) {
      add(a + by / 2, by, one);
      add(b - by / 2, by, other);
      return;
    }
    part(a, a + by, [first, one, middle]);
    part(a + by, b, [middle, other, last]);
  };
  const count = Math.max(1, Math.ceil((to - from) / PANEL.most));
  const by = (to - from) / count;
  for (let k = 0; k < count; k++) {
    const [a, b] = [from + k * by, from + (k + 1) * by];
    part(a, b, [wide(a), wide((a + b) / 2), wide(b)]);
  }
}

function isStraight({ metal: one }: Width, { metal: middle }: Width, { metal: other }: Width): boolean {
  return Math.abs(one + other - 2 * middle) <= EVEN * (one + other + 2 * middle);
}

function summed(spans: readonly Span[], wide: (angle: number) => Width): SimLoad {
  const turn = 2 * Math.PI;
  const untold = lengthOf(spans, 'untold');
  let [x, y, all, open] = [0, 0, 0, 0];
  for (const span of spans) {
    if (span.state !== 'in') continue;
    eachPanel(span, wide, (angle, by, width) => {
      // The sum of a direction over a turn of h is 2 sin(h / 2) in the middle one.
      const chord = width.metal * 2 * Math.sin(by / 2);
      x += chord * Math.sin(angle);
      y -= chord * Math.cos(angle);
      all += width.metal * by;
      open += width.untold * by;
    });
  }
  const size = all === 0 ? 0 : Math.sqrt(x * x + y * y) / all;
  return {
    share: lengthOf(spans, 'in') / turn,
    slack: untold / turn + 1e-6,
    strikes: strikesOf(spans),
    sideLoad: size,
    push: size < 1e-3 ? null : heading(x, y),
    loadSlack:
      all === 0
        ? 1e-6
        : (2 * untold) / Math.max(lengthOf(spans, 'in'), 1e-3) + (2 * open) / Math.max(all, 1e-3) + 1e-6,
  };
}

/** What is left untold of a crossing is shorter than this, radians. */
const CROSSING = 2e-3;

/** How often a tooth comes from air into metal. */
function strikesOf(spans: readonly Span[]): number | null {
  const first = spans[0];
  if (first === undefined) return 0;
  const round = spans.length > 1 && spans.at(-1)?.state === first.state ? spans.slice(0, -1) : spans;
  const clear = (k: number) => round[(k + round.length) % round.length]?.state;
  let strikes = 0;
  for (const [k, { state, from, to }] of round.entries()) {
    if (state === 'untold') {
      // A crossing told to within the shortest stretch: in on one side and out on the other.
      const isCrossing = to - from < CROSSING && clear(k - 1) !== clear(k + 1);
      if (!isCrossing) return null;
    }
    if (state === 'in' && round.length > 1) strikes++;
  }
  return strikes;
}
