import type { Place } from './edges.js';
import type { Box } from './view.js';

/** Side of a cell of the map of what is drawn where, mm: about half the height of a label. */
const CELL = 1;

/**
 * What can be on a cell, and how much it costs a leader to cross it. A label lies on the part or on nothing at all: never on a
 * line, nor on the surroundings of a place that is named; and no leader goes through what is taken.
 */
export const INK = { part: 0.1, line: 2, edge: 4, named: 8, taken: 30 } as const;

/** How far a label stands off the place that it names, mm: nearest first. */
const GAPS = [2, 3.5, 5, 8, 12, 17, 23, 30, 40, 55, 75, 100];

/** The first and the last of them. */
const NEAREST = 2;
const FARTHEST = 100;

/** How many directions are tried at each distance. */
const DIRECTIONS = 24;

/** What a millimetre of leader costs, against a cell under the label. */
const LEADER_LENGTH = 1.3;

/** What a cell that a leader crosses costs, as a share of what it would cost under the label. */
const LEADER_CROSSING = 0.6;

/** So far from the place that it names, a leader may still be over another label that is close by, mm. */
const CLOSE = 3;

/** From one place to the next where a whole area is searched for room, mm. */
const STRIDE = 2;

/** Most steps in which a line is noted: three times round an A0 sheet. What is longer runs off the sheet anyway. */
export const MOST_STEPS = 12_000;

/** A map of the ink on a part of the sheet, and of the room that is left for labels. */
export interface Room {
  /** Notes ink at a place. */
  mark(place: Place, ink: number): void;
  /** Notes ink along a straight line. */
  markLine(from: Place, to: Place, ink: number): void;
  /** Notes ink all over a box. */
  markBox(box: Box, ink: number): void;
  /** The best box of a size for the label of a place, on no line, so far off at most; null if there is none. */
  find(place: Place, width: number, height: number, farthest?: number): Box | null;
  /** The box of a size nearest to a place with at most so much ink under it, none without it; null if there is none. */
  clearing(place: Place, width: number, height: number, most?: number): Box | null;
  /** Whether there is no line in a box, and it is on the map. */
  isBare(box: Box): boolean;
  /** Takes a box for the label of a place. */
  take(place: Place, box: Box): void;
}

/** A map of an area with nothing on it yet. Every step costs the same few hundred look-ups, however full it is. */
export function emptyRoom(area: Box): Room {
  const columns = Math.max(1, Math.ceil(area.width / CELL));
  const rows = Math.max(1, Math.ceil(area.height / CELL));
  const cells = new Float32Array(columns * rows);
  // What is under boxes, kept until more is drawn: no box lies on what is taken, and no label on a line.
  let sums: Sums | null = null;
  let blocked: Sums | null = null;

  const column = (x: number): number => Math.floor((x - area.x) / CELL);
  const row = (y: number): number => Math.floor((y - area.y) / CELL);
  const raise = (c: number, r: number, ink: number): void => {
    if (c < 0 || r < 0 || c >= columns || r >= rows) return;
    const i = r * columns + c;
    if ((cells[i] as number) >= ink) return;
    cells[i] = ink;
    sums = null;
    blocked = null;
  };
  const mark = ([x, y]: Place, ink: number): void => raise(column(x), row(y), ink);
  const markLine = (from: Place, to: Place, ink: number): void => {
    const steps = stepsBetween(from, to);
    for (let i = 0; i <= steps; i++) mark(between(from, to, steps === 0 ? 0 : i / steps), ink);
  };
  const markBox = ({ x, y, width, height }: Box, ink: number): void => {
    const [left, right] = [Math.max(column(x), 0), Math.min(column(x + width), columns - 1)];
    const [top, bottom] = [Math.max(row(y), 0), Math.min(row(y + height), rows - 1)];
    for (let r = top; r <= bottom; r++) for (let c = left; c <= right; c++) raise(c, r, ink);
  };

  /** The ink under a box, infinite where some of it is a line or it is off the map; gives up over `limit`. */
  const under = ({ x, y, width, height }: Box, limit: number): number => {
    const [left, right, top, bottom] = [column(x), column(x + width), row(y), row(y + height)];
    if (x < area.x || y < area.y || x + width > area.x + area.width || y + height > area.y + area.height) {
      return Number.POSITIVE_INFINITY;
    }
    let sum = 0;
    for (let r = top; r <= Math.min(bottom, rows - 1); r++) {
      for (let c = left; c <= Math.min(right, columns - 1); c++) {
        const ink = cells[r * columns + c] as number;
        if (ink >= INK.line) return Number.POSITIVE_INFINITY;
        sum += ink;
      }
      if (sum > limit) return sum;
    }
    return sum;
  };

  const leader = (place: Place, end: Place): number => {
    const steps = stepsBetween(place, end);
    const length = Math.hypot(end[0] - place[0], end[1] - place[1]);
    const step = length / steps;
    let sum = LEADER_LENGTH * length;
    for (let i = 1; i <= steps; i++) {
      const [x, y] = between(place, end, i / steps);
      const [c, r] = [column(x), row(y)];
      const outside = c < 0 || r < 0 || c >= columns || r >= rows;
      const ink = outside ? INK.taken : (cells[r * columns + c] as number);
      // A line through a label would strike out what it says; but a place may lie close to one.
      if (ink >= INK.taken && i * step > CLOSE) return Number.POSITIVE_INFINITY;
      sum += ink >= INK.taken ? ink : LEADER_CROSSING * ink;
    }
    return sum;
  };

  const find = (place: Place, width: number, height: number, farthest = FARTHEST): Box | null => {
    let best: Box | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const gap of GAPS) {
      if (gap > farthest) break;
      // Every label at this distance or beyond has at least this much of a leader.
      if (LEADER_LENGTH * gap > least) break;
      for (let i = 0; i < DIRECTIONS; i++) {
        const box = besides(place, width, height, gap, i);
        const price = under(box, least);
        if (price >= least) continue;
        const whole = price + leader(place, nearest(box, place));
        if (whole < least) [best, least] = [box, whole];
      }
    }
    return best ?? anywhere(place, width, height, farthest);
  };

  /** The box with the cheapest leader of all that lie on no line: where the usual places have none. */
  const anywhere = (place: Place, width: number, height: number, farthest: number): Box | null => {
    blocked ??= sumsOf(cells, columns, rows, INK.line);
    const lines = blocked;
    let best: Box | null = null;
    let least = Number.POSITIVE_INFINITY;
    const [x, y] = place;
    const reach = farthest + Math.hypot(width, height) / 2;
    for (let top = Math.max(area.y, y - reach); top + height <= area.y + area.height; top += STRIDE) {
      if (top + height / 2 > y + reach) break;
      for (let left = Math.max(area.x, x - reach); left + width <= area.x + area.width; left += STRIDE) {
        if (left + width / 2 > x + reach) break;
        const box = { x: left, y: top, width, height };
        const end = nearest(box, place);
        const distance = Math.hypot(end[0] - x, end[1] - y);
        if (distance < NEAREST || distance > farthest || LEADER_LENGTH * distance >= least) continue;
        const right = Math.min(column(left + width), columns - 1);
        const bottom = Math.min(row(top + height), rows - 1);
        if (inkIn(lines, column(left), row(top), right, bottom) >= BLOCKED / 100) continue;
        const price = leader(place, end);
        if (price < least) [best, least] = [box, price];
      }
    }
    return best;
  };

  const clearing = ([x, y]: Place, width: number, height: number, most = 0): Box | null => {
    let best: Box | null = null;
    // The square of the distance.
    let least = Number.POSITIVE_INFINITY;
    sums ??= sumsOf(cells, columns, rows, INK.taken);
    for (let top = area.y; top + height <= area.y + area.height; top += STRIDE) {
      if ((top + height / 2 - y) ** 2 >= least) continue;
      for (let left = area.x; left + width <= area.x + area.width; left += STRIDE) {
        const distance = (left + width / 2 - x) ** 2 + (top + height / 2 - y) ** 2;
        if (distance >= least) continue;
        const box = { x: left, y: top, width, height };
        const right = Math.min(column(left + width), columns - 1);
        const bottom = Math.min(row(top + height), rows - 1);
        if (inkIn(sums, column(left), row(top), right, bottom) <= most) [best, least] = [box, distance];
      }
    }
    return best;
  };

  const take = (place: Place, box: Box): void => {
    markBox(box, INK.taken);
    // Dear to cross: two leaders that cross are hard to follow.
    markLine(place, nearest(box, place), INK.named);
  };

  const isBare = (box: Box): boolean => under(box, Number.POSITIVE_INFINITY) < Number.POSITIVE_INFINITY;

  return { mark, markLine, markBox, find, clearing, isBare, take };
}

/** For every cell the ink to the left of and above it, in hundredths, so that the sums are exact. */
interface Sums {
  readonly across: number;
  readonly ink: Float64Array;
}

// More ink than any box may lie on.
const BLOCKED = 1e12;

/** The sums of a map on which cells with so much ink are not to be lain on. */
function sumsOf(cells: Float32Array, columns: number, rows: number, most: number): Sums {
  const across = columns + 1;
  const ink = new Float64Array(across * (rows + 1));
  for (let r = 0; r < rows; r++) {
    let line = 0;
    for (let c = 0; c < columns; c++) {
      const own = cells[r * columns + c] as number;
      line += own >= most ? BLOCKED : Math.round(own * 100);
      ink[(r + 1) * across + c + 1] = (ink[r * across + c + 1] as number) + line;
    }
  }
  return { across, ink };
}

/** The ink in cells from one column and row to others. */
function inkIn({ across, ink }: Sums, left: number, top: number, right: number, bottom: number): number {
  const at = (column: number, row: number): number => ink[row * across + column] as number;
  return (at(right + 1, bottom + 1) - at(left, bottom + 1) - at(right + 1, top) + at(left, top)) / 100;
}

/** The place of a box's edge that is nearest to a place outside of it. */
export function nearest(box: Box, [x, y]: Place): Place {
  return [Math.min(Math.max(x, box.x), box.x + box.width), Math.min(Math.max(y, box.y), box.y + box.height)];
}

/** A box that stands off a place in one of the directions. */
function besides([x, y]: Place, width: number, height: number, gap: number, direction: number): Box {
  // Starts to the upper right, where a label reads best, and avoids the exact level and upright.
  const angle = ((direction + 2.5) / DIRECTIONS) * 2 * Math.PI;
  const dx = Math.cos(angle);
  const dy = -Math.sin(angle);
  const reach = gap + (Math.abs(dx) * width + Math.abs(dy) * height) / 2;
  return { x: x + dx * reach - width / 2, y: y + dy * reach - height / 2, width, height };
}

// Half a cell a step: a line misses no more than the corner of a cell.
function stepsBetween(from: Place, to: Place): number {
  return Math.min(Math.ceil((2 * Math.hypot(to[0] - from[0], to[1] - from[1])) / CELL), MOST_STEPS);
}

function between(from: Place, to: Place, share: number): Place {
  return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
}
