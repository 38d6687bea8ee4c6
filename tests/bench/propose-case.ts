import {
  type AimDocument,
  type DrawerTool,
  disc,
  type Edge,
  parseAim,
  propose,
  subtract,
} from '@edgebite/core';
import type { Figure } from './figures.js';
import { type Effort, type Timing, timed } from './measure.js';

/** The name of the case. */
export const PROPOSE_CASE = 'propose-12';

/** From a plate with twelve hollow arcs and a drawer of twenty tools to ways, read and examined. */
export function proposeFigures(effort: Effort): Figure[] {
  const aim = plate();
  const work = () => propose(parseAim(aim));
  const { ways, refusals } = work();
  const right = refusals.length === 0 && ways.length > 1 && ways.every(({ job }) => job.cuts.length >= 12);
  if (!right) process.exitCode = 1;
  const [ours] = timed([work], effort) as [Timing];
  return [{ kind: 'time', case: PROPOSE_CASE, who: 'edgebite', ...ours, bare: ours.wall, right }];
}

function plate(): AimDocument {
  const corners = [
    { x: 0, y: 0 },
    { x: 240, y: 0 },
    { x: 240, y: 100 },
    { x: 0, y: 100 },
  ] as const;
  const outer = corners.map((a, k): Edge => ({ kind: 'line', a, b: corners[(k + 1) % 4] ?? a }));
  const bites = Array.from({ length: 12 }, (_, k) =>
    disc({ x: 20 + (k % 6) * 40, y: k < 6 ? 0 : 100 }, 8 + k),
  );
  const [finished] = subtract([{ outer, holes: [] }], bites);
  return {
    edgebite: 1,
    units: 'mm',
    blank: { rectangle: [240, 100] },
    finished: { edges: (finished?.outer ?? []).map(written) },
    thickness: 12,
    material: 'mild steel',
    arcs: true,
    drawer: drawer(),
  };
}

function written(edge: Edge) {
  const ends = { a: [edge.a.x, edge.a.y], b: [edge.b.x, edge.b.y] } as const;
  if (edge.kind === 'line') return { kind: 'line' as const, ...ends };
  return { kind: 'arc' as const, ...ends, center: [edge.center.x, edge.center.y] as const, ccw: edge.ccw };
}

function drawer(): DrawerTool[] {
  const toolMaterial = 'HSS' as const;
  return [
    ...[6, 8, 10, 12].map(
      (d): DrawerTool => ({ id: `d${d}`, kind: 'drill', toolMaterial, diameter: d, reach: 60 }),
    ),
    ...[14, 16, 18, 20, 24, 28, 32].map((d): DrawerTool => {
      const reach = d < 20 ? 25 : 7;
      return { id: `r${d}`, kind: 'annular cutter', toolMaterial, diameter: d, wall: 4, reach, teeth: 6 };
    }),
    ...[8, 10, 20].map((d): DrawerTool => {
      const sizes = { smallest: d, largest: d + 40, bar: 60 };
      return { id: `h${d}`, kind: 'boring head', toolMaterial, ...sizes, maxSpeed: 1000 };
    }),
    ...[5, 8, 10, 12, 16, 20].map((d): DrawerTool => {
      const mill = { diameter: d, reach: 40, teeth: 4, centerCutting: d % 4 === 0 };
      return { id: `m${d}`, kind: 'end mill', toolMaterial, ...mill };
    }),
  ];
}
