import type { Place } from './edges.js';
import { type Box, holds } from './view.js';

/** Side of a cell of the map of what is drawn where, mm: about half the height of a label. */
const CELL = 1;

/** How much it costs a label to lie on a cell that has this on it. */
export const INK = { part: 0.35, metal: 0.5, line: 2, named: 8, taken: 30 } as const;

/** How far a label stands off the place that it names, mm: nearest first. */
const GAPS = [3, 5, 8, 12, 17, 23, 30, 40];

/** How many directions are tried at each distance. */
const DIRECTIONS = 16;

/** What a millimetre of leader costs, against a cell under the label. */
const LEADER_LENGTH = 0.9;

/** What a cell that a leader crosses costs, as a share of what it would cost under the label. */
const LEADER_CROSSING = 0.35;

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
  /** The best box of a size for a label of a place, and whether it hides another label; null if none is near. */
  find(place: Place, width: number, height: number): { readonly box: Box; readonly free: boolean } | null;
  /** Takes a box for the label of a place. */
  take(place: Place, box: Box): void;
}

/** A map of an area with nothing on it yet. Every step costs the same few hundred look-ups, however full it is. */
export function emptyRoom(area: Box): Room {
  const columns = Math.max(1, Math.ceil(area.width / CELL));
  const rows = Math.max(1, Math.ceil(area.height / CELL));
  const cells = new Float32Array(columns * rows);

  const index = ([x, y]: Place): number => {
    const column = Math.floor((x - area.x) / CELL);
    const row = Math.floor((y - area.y) / CELL);
    return column < 0 || row < 0 || column >= columns || row >= rows ? -1 : row * columns + column;
  };
  const mark = (place: Place, ink: number): void => {
    const i = index(place);
    if (i >= 0) cells[i] = Math.max(cells[i] as number, ink);
  };
  const inkAt = (place: Place): number => cells[index(place)] ?? INK.taken;
  const markLine = (from: Place, to: Place, ink: number): void => {
    for (const place of along(from, to)) mark(place, ink);
  };
  const markBox = (box: Box, ink: number): void => {
    for (const place of over(box)) mark(place, ink);
  };

  const cost = (place: Place, box: Box): number => {
    let sum = 0;
    for (const cell of over(box)) sum += inkAt(cell);
    const end = nearest(box, place);
    sum += LEADER_LENGTH * Math.hypot(end[0] - place[0], end[1] - place[1]);
    for (const cell of along(place, end)) sum += LEADER_CROSSING * inkAt(cell);
    return sum;
  };

  const find = (place: Place, width: number, height: number): ReturnType<Room['find']> => {
    let best: Box | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const box of candidates(place, width, height)) {
      if (!within(area, box)) continue;
      const price = cost(place, box);
      if (price < least) [best, least] = [box, price];
    }
    return best === null
      ? null
      : { box: best, free: [...over(best)].every((cell) => inkAt(cell) < INK.taken) };
  };
  const take = (place: Place, box: Box): void => {
    markBox(box, INK.taken);
    markLine(place, nearest(box, place), INK.line);
  };

  return { mark, markLine, markBox, find, take };
}

/** The place of a box's edge that is nearest to a place outside of it. */
export function nearest(box: Box, [x, y]: Place): Place {
  return [Math.min(Math.max(x, box.x), box.x + box.width), Math.min(Math.max(y, box.y), box.y + box.height)];
}

function* candidates([x, y]: Place, width: number, height: number): Generator<Box> {
  for (const gap of GAPS) {
    for (let i = 0; i < DIRECTIONS; i++) {
      // Starts to the upper right, where a label reads best, and avoids the exact level and upright.
      const angle = ((i + 2.5) / DIRECTIONS) * 2 * Math.PI;
      const dx = Math.cos(angle);
      const dy = -Math.sin(angle);
      const reach = gap + (Math.abs(dx) * width + Math.abs(dy) * height) / 2;
      yield { x: x + dx * reach - width / 2, y: y + dy * reach - height / 2, width, height };
    }
  }
}

function within(area: Box, box: Box): boolean {
  return holds(area, [box.x, box.y]) && holds(area, [box.x + box.width, box.y + box.height]);
}

function* along(from: Place, to: Place): Generator<Place> {
  const steps = Math.min(Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / CELL), MOST_STEPS);
  for (let i = 1; i <= steps; i++) {
    yield [from[0] + ((to[0] - from[0]) * i) / steps, from[1] + ((to[1] - from[1]) * i) / steps];
  }
}

function* over(box: Box): Generator<Place> {
  for (let y = box.y; y < box.y + box.height + CELL; y += CELL) {
    for (let x = box.x; x < box.x + box.width + CELL; x += CELL) yield [x, y];
  }
}
