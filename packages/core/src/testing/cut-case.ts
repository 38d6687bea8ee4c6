import { arcEdge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import type { Loop, Region } from '../region/region.js';
import { placed, type Similarity, transformed } from './transform.js';

/** One cut of a generated case: a disc, a ring, or any region. */
export type Cut =
  | { readonly kind: 'disc'; readonly center: Point; readonly radius: number }
  | { readonly kind: 'ring'; readonly center: Point; readonly outer: number; readonly inner: number }
  | { readonly kind: 'shape'; readonly region: Region };

/** How a circle is written down: the number of arcs, where the first starts, and the direction. */
export interface Encoding {
  readonly arcs: 2 | 3 | 4;
  /** Angle of the first joint from the x axis, radians. */
  readonly start: number;
}

/** An outline and the cuts made in it, with the family it is drawn from. JSON-safe, so a failure can be kept. */
export interface CutCase {
  readonly family: string;
  readonly unit: 'mm' | 'inch';
  readonly outline: Region;
  readonly cuts: readonly Cut[];
}

/** Two half circles joined at the lowest and the highest point, as `circleLoop` writes them. */
export const HALVES: Encoding = { arcs: 2, start: -Math.PI / 2 };

/** Three arcs whose joints lie at no round angle: the encoding in which other libraries fail least. */
export const OBLIQUE_THIRDS: Encoding = { arcs: 3, start: 0.3711 };

/**
 * A full circle in a given encoding.
 * @throws RangeError if the radius is not positive or a number is not finite.
 */
export function encodedCircle(center: Point, radius: number, encoding: Encoding, ccw = true): Loop {
  const joints = Array.from({ length: encoding.arcs }, (_, k): Point => {
    const angle = encoding.start + ((ccw ? k : -k) * 2 * Math.PI) / encoding.arcs;
    return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
  });
  return joints.map((a, k) => arcEdge(a, joints[(k + 1) % joints.length] as Point, center, ccw));
}

/** A cut as a region, its circles in the given encoding. */
export function cutRegion(cut: Cut, encoding: Encoding = HALVES): Region {
  if (cut.kind === 'shape') return cut.region;
  if (cut.kind === 'disc') {
    return [{ outer: encodedCircle(cut.center, cut.radius, encoding), holes: [] }];
  }
  const outer = encodedCircle(cut.center, cut.outer, encoding);
  return [{ outer, holes: [encodedCircle(cut.center, cut.inner, encoding, false)] }];
}

/** The cuts of a case as regions. */
export function cutRegions(cutCase: CutCase, encoding: Encoding = HALVES): Region[] {
  return cutCase.cuts.map((cut) => cutRegion(cut, encoding));
}

/** A cut put through a similarity. */
export function placedCut(cut: Cut, by: Similarity): Cut {
  if (cut.kind === 'shape') return { ...cut, region: transformed(cut.region, by) };
  const center = placed(cut.center, by);
  if (cut.kind === 'disc') return { kind: 'disc', center, radius: cut.radius * by.scale };
  return { kind: 'ring', center, outer: cut.outer * by.scale, inner: cut.inner * by.scale };
}
