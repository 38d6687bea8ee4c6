import { described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import type { Point } from '../geometry/point.js';
import type { JobCut } from '../job/plan.js';
import type { Copy } from './copies.js';
import { type Motion, movedBy } from './motion.js';

/** Copies of one cut lie in one place if they are no further apart than this share of their diameter. */
const SAME = 1e-6;

/**
 * Round cuts that a repeat puts where another copy of the same cut is, as where a turn goes round once too often.
 * @param motionOf what takes the written cut to a copy
 */
export function samePlaceIssues(
  copies: readonly Copy[],
  read: readonly (JobCut | null)[],
  motionOf: (copy: Copy) => readonly Motion[],
): JobIssue[] {
  const seen = new Map<string, Copy>();
  const told = new Set<number>();
  return copies.flatMap((copy): JobIssue[] => {
    const cut = read[copy.cut] ?? null;
    if (cut === null || cut.kind === 'swept') return [];
    const at = movedBy(motionOf(copy), cut.center);
    const [own, ...near] = cellsRound(copy.cut, at, SAME * cut.diameter);
    const before = [own, ...near].map((cell) => seen.get(cell ?? '')).find((one) => one !== undefined);
    seen.set(own ?? '', before ?? copy);
    const repeat = copy.by.at(-1)?.repeat ?? before?.by.at(-1)?.repeat;
    if (before === undefined || repeat === undefined || told.has(repeat)) return [];
    told.add(repeat);
    const message = `puts ${described(copy.id)} where ${described(before.id)} is already; make it fewer, or move the line or the centre`;
    return [{ path: `/repeat/${repeat}`, message }];
  });
}

/** The cell of a place among square ones, and the eight round it: what lies within a cell's width is in one of them. */
function cellsRound(cut: number, { x, y }: Point, width: number): string[] {
  const [column, row] = [Math.floor(x / width), Math.floor(y / width)];
  const offsets = [0, -1, 1];
  return offsets.flatMap((dx) => offsets.map((dy) => `${cut} ${column + dx} ${row + dy}`));
}
