import { type Aim, SAME_SHARE } from '../aim/aim.js';
import { intersect } from '../combine/boolean.js';
import { isSameSize } from '../cut/same-size.js';
import type { DrawerTool } from '../document/schema-drawer.js';
import type { Edge } from '../geometry/edge.js';
import { reversed } from '../geometry/parts.js';
import type { Point } from '../geometry/point.js';
import { area } from '../region/measure.js';
import { disc, type Loop, type Region } from '../region/region.js';
import { chainBefore } from './chains.js';
import type { Method, PlannedCut } from './cut-plan.js';
import type { SlotFeature, WallFeature } from './features.js';
import { straightRuns } from './slots.js';
import { boresOf, type Descent, descentsOf } from './suits.js';
import { wallPaths } from './wall-paths.js';

/** The same of a slot, which is worked out of two walls. */
const SAME_WIDTH = 1e-7;

type MillTool = DrawerTool & { readonly kind: 'end mill' };
type DrillTool = DrawerTool & { readonly kind: 'drill' };

/**
 * The ways of end mills that go along a path: a slot of their own width, or beside walls.
 * @param leads whether the machine leads them along arcs
 */
export function sweptMethods(
  aim: Aim,
  feature: SlotFeature | WallFeature,
  able: readonly DrawerTool[],
  leads: boolean,
): Method[] {
  const mills = able.filter((tool): tool is MillTool => tool.kind === 'end mill');
  const drills = able.filter((tool): tool is DrillTool => tool.kind === 'drill');
  return mills.flatMap((mill) => {
    const paths = pathsOf(aim, feature, mill, leads);
    if (paths === null) return [];
    const cuts = descentsOf(aim, mill, feature).flatMap((descent) =>
      paths.map((path, k) => along(aim, feature, mill, path, descent, k, paths.length)),
    );
    const chain = chainBefore(aim, feature, mill.diameter, paths, drills);
    return [
      { cuts },
      ...startedByDrills(aim, feature, mill, cuts, drills),
      ...(chain.length === 0 ? [] : [{ cuts: [...chain, ...cuts] }]),
    ];
  });
}

function pathsOf(
  { job: { outline } }: Aim,
  feature: SlotFeature | WallFeature,
  { diameter }: MillTool,
  leads: boolean,
): readonly Loop[] | null {
  if (feature.kind === 'slot') {
    const isLed = leads || feature.path.every(({ kind }) => kind === 'line');
    return isLed && Math.abs(diameter - feature.width) <= SAME_WIDTH * diameter ? [feature.path] : null;
  }
  const { region, layer } = feature;
  const nothing = SAME_SHARE * area(outline);
  const paths = wallPaths(region, layer, diameter, nothing);
  if (leads || paths?.flat().every(({ kind }) => kind === 'line') === true) return paths;
  const clear = (tool: Region) => area(intersect([layer.stays, tool])) <= nothing;
  return straightRuns(region, diameter, outline, clear, nothing);
}

function along(
  aim: Aim,
  feature: SlotFeature | WallFeature,
  tool: MillTool,
  path: Loop,
  { side, depth, word }: Descent,
  k: number,
  count: number,
): PlannedCut {
  const { diameter } = tool;
  return {
    id: `${feature.id} mill${count === 1 ? '' : ` ${k + 1}`}${word}`,
    tool,
    feature: feature.id,
    stage: k + 1,
    side,
    isLast: true,
    document: {
      kind: 'swept',
      diameter,
      path: { edges: startedInAir(aim, path, diameter).map(edgeDocument) },
      ...depth,
    },
  };
}

/** The path from its end in the air, if only its other end lies in metal. */
function startedInAir({ job }: Aim, path: Loop, diameter: number): Loop {
  const isInAir = (p: Point) =>
    area(intersect([job.outline, disc(p, diameter / 2)])) <= SAME_SHARE * area(job.outline);
  const [start, end] = [path[0]?.a as Point, path.at(-1)?.b as Point];
  return isInAir(start) || !isInAir(end) ? path : [...path].reverse().map(reversed);
}

type Written = Extract<
  Extract<PlannedCut['document'], { kind: 'swept' }>['path'],
  { edges: unknown }
>['edges'][number];

function edgeDocument(edge: Edge): Written {
  const ends = { a: [edge.a.x, edge.a.y], b: [edge.b.x, edge.b.y] } as const;
  if (edge.kind === 'line') return { kind: 'line', ...ends };
  return { kind: 'arc', ...ends, center: [edge.center.x, edge.center.y], ccw: edge.ccw };
}

/** A mill that does not cut to its centre goes down in a hole of its own size at the start of what goes through. */
function startedByDrills(
  aim: Aim,
  feature: SlotFeature | WallFeature,
  mill: MillTool,
  cuts: readonly PlannedCut[],
  drills: readonly DrillTool[],
): Method[] {
  const { id, layer } = feature;
  const [first] = cuts;
  if (mill.centerCutting === true || layer.depth !== null || first?.document.kind !== 'swept') return [];
  const { path } = first.document;
  const at = 'edges' in path ? path.edges[0]?.a : undefined;
  if (at === undefined || !isWhole(aim, at, mill.diameter)) return [];
  return drills
    .filter(({ diameter }) => isSameSize(mill.diameter, diameter))
    .map((drill) => ({
      cuts: [
        ...boresOf(aim, drill, feature, {
          id: `${id} drill`,
          stage: 0,
          isLast: false,
          at,
          diameter: drill.diameter,
        }),
        ...cuts,
      ],
    }));
}

function isWhole({ job }: Aim, [x, y]: readonly [number, number], diameter: number): boolean {
  const round = disc({ x, y }, diameter / 2);
  return area(intersect([job.outline, round])) >= (1 - SAME_SHARE) * area(round);
}
