import type { Point } from '../geometry/point.js';
import { startOf } from '../overlay/rotate.js';
import { KERF, type NarrowPlace } from './narrow-places.js';
import { NEVER, type Timeline } from './timeline.js';
import { goneAt } from './walls-over-time.js';

/** The metal that stands across a narrow place, slab by slab: where it is narrower than holds it is taken as cut. */
export interface Neck {
  /** By slab, how wide the metal is after a moment; 0 where there is none. */
  readonly widthsAfter: (moment: number) => number[];
}

/** Necks, and when each cell goes if they are taken as cut from when on they are narrower than holds. */
export interface Necks {
  readonly momentOf: Int32Array;
  readonly list: readonly Neck[];
  /** By face: numbers of the necks that it is part of. */
  readonly ofFace: ReadonlyMap<number, readonly number[]>;
}

/** A face across a narrow place, from where to where along the way across, and when it goes. */
interface Stretch {
  readonly face: number;
  readonly from: number;
  readonly to: number;
  readonly gone: number;
}

/** Metal wider than a narrow place by no more than this share of `hold` is as wide: walls bend away within a kerf. */
const BEND = 4 * KERF;

/**
 * Takes necks as cut.
 * @param places the places whose kerfs are the marks of the timeline's cells, in order
 */
export function takenAsCut(timeline: Timeline, places: readonly NarrowPlace[], hold: number): Necks {
  const { cells, momentOf } = timeline;
  const n = cells.slabs.length;
  const asCut = momentOf.slice();
  const ofFace = new Map<number, number[]>();
  const list = places.map((place, k): Neck => {
    const faces = cells.markedFaces[k] as readonly number[];
    const bySlab = cells.slabs.map((_, s) => stretchesIn(timeline, place, faces, s));
    bySlab.forEach((stretches, s) => {
      const neck = firstNarrow(stretches, hold);
      for (const { face } of neck?.metal ?? []) {
        const now = asCut[face * n + s] as number;
        const { moment } = neck as { moment: number };
        asCut[face * n + s] = now === NEVER ? moment : Math.min(now, moment);
      }
    });
    for (const face of faces) ofFace.set(face, [...(ofFace.get(face) ?? []), k]);
    const widthOf = (stretches: readonly Stretch[], moment: number) => {
      const { width } = standing(stretches, moment);
      // The kerf has a width of its own, over which walls bend away.
      return Math.abs(width - place.thickness) <= BEND * hold ? place.thickness : width;
    };
    return { widthsAfter: (moment) => bySlab.map((stretches) => widthOf(stretches, moment)) };
  });
  return { momentOf: asCut, list, ofFace };
}

function stretchesIn(
  { cells, momentOf }: Timeline,
  { at, across }: NarrowPlace,
  faces: readonly number[],
  slab: number,
): Stretch[] {
  const n = cells.slabs.length;
  const { graph } = cells.subdivision;
  const { points, originX, originY } = graph.curves;
  const along = ({ x, y }: Point) => (x - at.x) * across.dx + (y - at.y) * across.dy;
  const stretches = faces.map((face): Stretch => {
    let [from, to] = [Infinity, -Infinity];
    const { start, half } = cells.borders;
    for (let k = start[face] as number; k < (start[face + 1] as number); k++) {
      const v = startOf(graph, half[k] as number);
      const place = along({ x: (points.x[v] as number) + originX, y: (points.y[v] as number) + originY });
      [from, to] = [Math.min(from, place), Math.max(to, place)];
    }
    return { face, from, to, gone: goneAt(momentOf[face * n + slab] as number) };
  });
  return stretches.sort((a, b) => a.from - b.from || a.to - b.to);
}

/** The metal round the middle after a moment: stretches that follow each other, and how far they reach. */
function standing(stretches: readonly Stretch[], moment: number): { width: number; metal: Stretch[] } {
  let run: Stretch[] = [];
  let [from, to] = [0, -Infinity];
  for (const one of stretches) {
    if (one.gone <= moment) continue;
    if (one.from > to) {
      // Between this one and the last there is a gap.
      if (run.length > 0 && to > 0) break;
      run = [];
      from = one.from;
    }
    run.push(one);
    to = Math.max(to, one.to);
  }
  return run.length > 0 && from < 0 && to > 0 ? { width: to - from, metal: run } : { width: 0, metal: [] };
}

/** When the metal is narrower than holds for the first time by what is cut, and what stands then; null if never. */
function firstNarrow(
  stretches: readonly Stretch[],
  hold: number,
): { moment: number; metal: readonly Stretch[] } | null {
  if (standing(stretches, -1).width < hold) return null;
  const moments = [...new Set(stretches.map(({ gone }) => gone))].sort((a, b) => a - b);
  for (const moment of moments) {
    if (moment < 0 || moment === Infinity) continue;
    const { width, metal } = standing(stretches, moment);
    if (width === 0) return null;
    if (width < hold) return { moment, metal };
  }
  return null;
}

/** The largest square that stands in metal of some widths and heights: by that much it holds. */
export function holdingSquare(widths: readonly number[], heights: readonly number[]): number {
  let best = 0;
  for (let s = 0; s < widths.length; s++) {
    let [narrowest, high] = [Infinity, 0];
    for (let t = s; t < widths.length; t++) {
      narrowest = Math.min(narrowest, widths[t] as number);
      high += heights[t] as number;
      best = Math.max(best, Math.min(narrowest, high));
    }
  }
  return best;
}
