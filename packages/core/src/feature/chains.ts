import { type Aim, SAME_SHARE } from '../aim/aim.js';
import { intersect } from '../combine/boolean.js';
import type { DrawerTool } from '../document/schema-drawer.js';
import type { Edge } from '../geometry/edge.js';
import { edgeLength, pointAlong } from '../geometry/measure.js';
import { distance, type Point } from '../geometry/point.js';
import { area } from '../region/measure.js';
import { disc, type Loop } from '../region/region.js';
import type { PlannedCut } from './cut-plan.js';
import type { SlotFeature, WallFeature } from './features.js';
import { boresOf } from './suits.js';

/** Longer chains nobody drills to save a mill some metal. */
const MOST_HOLES = 12;

/** Between two holes there is so much more metal than the limit of a web. */
const SPARE = 1.05;

type DrillTool = DrawerTool & { readonly kind: 'drill' };

/**
 * Holes in a row along the paths of a mill, before it comes: most of the metal is gone then, and none is loose, since between
 * two holes there stays more than a web. They leave the allowance at the walls and are whole, so that nothing leads the drill
 * aside. The largest drill that fits makes them; none where only one hole would fit, or there would be very many.
 */
export function chainBefore(
  aim: Aim,
  feature: SlotFeature | WallFeature,
  diameter: number,
  paths: readonly Loop[],
  drills: readonly DrillTool[],
): readonly PlannedCut[] {
  if (feature.layer.depth !== null) return [];
  const fitting = drills.filter((drill) => drill.diameter <= diameter - 2 * aim.allowance);
  const [first, ...others] = fitting;
  if (first === undefined) return [];
  const drill = others.reduce((most, one) => (one.diameter > most.diameter ? one : most), first);
  const { web, hold } = aim.job.limits;
  const pitch = drill.diameter + SPARE * Math.max(web, hold);
  const places: Point[] = [];
  for (const place of paths.flatMap((path) => path.flatMap((edge) => along(edge, pitch)))) {
    if (places.every((one) => distance(one, place) >= pitch) && isWhole(aim, place, drill.diameter)) {
      places.push(place);
    }
  }
  if (places.length < 2 || places.length > MOST_HOLES) return [];
  return places.flatMap(({ x, y }, k) =>
    boresOf(aim, drill, feature, {
      id: `${feature.id} chain ${k + 1}`,
      stage: 0,
      isLast: false,
      at: [x, y],
      diameter: drill.diameter,
    }),
  );
}

/** Places along an edge so far apart, its ends among them as far as that goes. */
function along(edge: Edge, pitch: number): Point[] {
  const steps = Math.max(1, Math.floor(edgeLength(edge) / pitch));
  return Array.from({ length: steps + 1 }, (_, k) => pointAlong(edge, k / steps));
}

/** Whether a round lies wholly on the blank, off its edge by more than a web. */
function isWhole({ job }: Aim, center: Point, diameter: number): boolean {
  const round = disc(center, diameter / 2 + job.limits.web);
  return area(intersect([job.outline, round])) >= (1 - SAME_SHARE) * area(round);
}
