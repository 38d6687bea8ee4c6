import type { AimLayer } from '../aim/aim.js';
import { intersect } from '../combine/boolean.js';
import { offset } from '../combine/offset.js';
import { subtract } from '../combine/subtract.js';
import { sweptRegion } from '../cut/swept.js';
import { extentOf, grown } from '../geometry/bounds.js';
import type { Edge } from '../geometry/edge.js';
import { area, boundsOf, loopsOf } from '../region/measure.js';
import type { Loop, Region } from '../region/region.js';
import { renamedRegion } from '../region/renamed-region.js';

/** From one path to the next one further in, of the diameter: what is between two stays under the tool. */
const STEP_SHARE = 0.4;

/** More paths than this for one piece are no sensible way to make it. */
const MOST_PATHS = 40;

/** What paths are cut off with is named so. */
const END = 'end';

/**
 * Paths of a mill's centre that clear a piece, one beside the other, the ones furthest from its walls first and the walls
 * themselves last; null where the mill does not come everywhere, or where there would be very many.
 *
 * Source: a tool of radius r that stays off the walls has its centre in what is left of the free room when it shrinks by
 * r; a place that is deeper than one path and less deep than the next is within a step of a path.
 * @param nothing areas smaller than this are rounding
 */
export function wallPaths(
  region: Region,
  { stays }: AimLayer,
  diameter: number,
  nothing: number,
): Loop[] | null {
  const radius = diameter / 2;
  const box = boundsOf(region);
  if (box === null) return null;
  const room = subtract(boxRegion(grown(box, extentOf(box) + 4 * diameter)), [stays]);
  const near = renamedRegion(offset(region, 1.5 * radius), END);
  const paths: Loop[] = [];
  for (let shrunk = radius; ; shrunk += STEP_SHARE * diameter) {
    const centers = intersect([offset(room, -shrunk), near]);
    if (centers.length === 0) break;
    // The first ones may miss a piece that lies off all walls.
    const level = openChains(centers).filter(
      (chain) => area(intersect([sweptRegion(chain, radius), region])) > nothing,
    );
    paths.push(...level);
    if (paths.length > MOST_PATHS) return null;
  }
  if (paths.length === 0) return null;
  const left = subtract(
    region,
    paths.map((path) => sweptRegion(path, radius)),
  );
  return area(left) <= nothing ? paths.reverse() : null;
}

function boxRegion({
  minX,
  minY,
  maxX,
  maxY,
}: {
  minX: number;
  minY: number;
  maxX: number;
  maxY: number;
}): Region {
  const corners = [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
  return [
    {
      outer: corners.map((a, k) => ({ kind: 'line', a, b: corners[(k + 1) % 4] as typeof a })),
      holes: [],
    },
  ];
}

/** The boundary of a region without the edges that it was cut off with: whole loops, and the chains between cuts. */
function openChains(region: Region): Loop[] {
  return loopsOf(region).flatMap((loop) => {
    const first = loop.findIndex(({ source }) => source === END);
    if (first < 0) return [loop];
    const chains: Edge[][] = [];
    let open: Edge[] | null = null;
    for (let k = 0; k < loop.length; k++) {
      const edge = loop[(first + k) % loop.length] as Edge;
      if (edge.source === END) open = null;
      else if (open === null) {
        open = [edge];
        chains.push(open);
      } else open.push(edge);
    }
    return chains;
  });
}
