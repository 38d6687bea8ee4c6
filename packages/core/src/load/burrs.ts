import type { Side } from '../cut/cut.js';
import { type Point, samePoint } from '../geometry/point.js';
import type { Region } from '../region/region.js';
import type { Layer } from './by-height.js';
import { engagementOf } from './engagement.js';

/** A place where teeth leave the metal sideways, and between which depths of the tool. */
export interface LeavingPlace {
  readonly at: Point;
  readonly from: number;
  readonly to: number;
}

/** Where a tool that goes straight down leaves burrs. */
export interface Burrs {
  /** From the entry on down; in layers that follow each other the same place is one. */
  readonly leaves: readonly LeavingPlace[];
  /** Length of the rim along which it breaks through what lies below; 0 where it stops in metal or meets none. */
  readonly under: number;
}

/**
 * Where burrs are to be looked for: teeth leave one where they come out of the metal, sideways at the end of each arc that they cut
 * and downwards where the tool breaks through. The spindle turns clockwise seen from above as the part lies, so that
 * of a cut from the bottom, told on the drawing, they leave at the other end of the arc.
 *
 * Source: exit burrs, common practice, no source.
 * @param layers from the tool's start on down
 * @param from the side of the drawn part that the tool starts from
 * @param isThrough whether the tool comes out below the last layer
 * @throws RangeError as `engagementOf`.
 */
export function burrsOf(
  { center, radius }: { readonly center: Point; readonly radius: number },
  layers: readonly Layer[],
  from: Side,
  isThrough: boolean,
): Burrs {
  const known = new Map<Region, ReturnType<typeof engagementOf>>();
  const arcsIn = (metal: Region) => {
    const engagement = known.get(metal) ?? engagementOf(metal, center, radius);
    known.set(metal, engagement);
    return engagement.arcs;
  };
  const leaves: { at: Point; from: number; to: number }[] = [];
  let under = 0;
  layers.forEach((layer, k) => {
    const arcs = arcsIn(layer.metal);
    for (const { entry, exit } of arcs) {
      const at = (from === 'top' ? exit : entry)?.at;
      if (at === undefined) continue;
      const above = leaves.find((one) => one.to === layer.from && samePoint(one.at, at));
      if (above === undefined) leaves.push({ at, from: layer.from, to: layer.to });
      else above.to = layer.to;
    }
    const below = layers[k + 1];
    if (below === undefined ? isThrough : arcsIn(below.metal).length === 0)
      under += arcs.reduce((sum, { length }) => sum + length, 0);
  });
  return { leaves, under };
}
