import {
  area,
  centroid,
  type DrawerTool,
  disc,
  examine,
  type Finding,
  intersect,
  type JobDocument,
  parseJob,
  type Region,
  type Report,
  subtract,
} from '@edgebite/core';
import type { MadePart } from './parts.js';

/*
 * The way there and back by trying everything: each disc of a part made by each tool of a drawer, alone or after each
 * other one, in every order of all cuts. Shares nothing with the search but `examine`.
 */

type Cut = JobDocument['cuts'][number];

interface Made {
  readonly cut: Cut;
  readonly tool: DrawerTool;
}

/** What a tool changes costs, and the deepest bites: the defaults of an aim in millimetres. */
const CHANGE = 3;
const TURNING = 10;
const BITE = 0.5;
const ALLOWANCE = 0.5;

export function orders<T>(all: readonly T[]): T[][] {
  if (all.length < 2) return [[...all]];
  return all.flatMap((first, k) => orders(all.filter((_, n) => n !== k)).map((rest) => [first, ...rest]));
}

/** Findings of cuts that cannot be made so, or have nothing to cut any more. */
const POINTLESS: readonly Finding['code'][] = [
  'passes-not-possible',
  'cut-in-air',
  'cut-misses',
  'reach-too-short',
  'tool-does-not-fit',
  'spindle-too-fast',
];

/** Whether the cuts can be made, and each still has something to cut. */
export function isSound({ findings }: Report): boolean {
  return !findings.some(({ code }) => POINTLESS.includes(code));
}

/** How many dangers a report tells of. */
export function dangersIn({ findings }: Report): number {
  return findings.filter(({ level }) => level === 'danger').length;
}

/** Fewest dangers, and the least time of the ways that have no more; null where there is no way at all. */
export function bestByTrying(part: MadePart): { readonly dangers: number; readonly time: number } | null {
  const { discs } = part;
  const methods = discs.map((_, k) => methodsOf(part, k));
  let best: { readonly dangers: number; readonly time: number } | null = null;
  for (const choice of products(methods)) {
    for (const all of orders(choice.flat())) {
      const { order, report } = withoutIdle(part, all);
      if (!isSound(report)) continue;
      const dangers = dangersIn(report);
      const time = timeOf(report, order);
      if (best === null || dangers < best.dangers || (dangers === best.dangers && time < best.time)) {
        best = { dangers, time };
      }
    }
  }
  return best;
}

/** An order without the cuts that find nothing left to take: they need not be made. */
function withoutIdle(part: MadePart, order: readonly Made[]): { order: readonly Made[]; report: Report } {
  const report = examine(parseJob(jobOf(part, order)));
  const idle = report.findings.flatMap(({ code, about }) =>
    code === 'cut-in-air' || code === 'cut-misses' ? about : [],
  );
  if (idle.length === 0) return { order, report };
  return withoutIdle(
    part,
    order.filter(({ cut }) => !idle.includes(`cut:${cut.id}`)),
  );
}

/** How many jobs that would be. */
export function countByTrying(part: MadePart): number {
  const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));
  return products(part.discs.map((_, k) => methodsOf(part, k))).reduce(
    (sum, choice) => sum + factorial(choice.flat().length),
    0,
  );
}

function products<T>(lists: readonly (readonly T[])[]): T[][] {
  return lists.reduce<T[][]>((all, list) => all.flatMap((one) => list.map((item) => [...one, item])), [[]]);
}

function methodsOf({ aim, discs, blank }: MadePart, k: number): Made[][] {
  const { center, radius } = discs[k] as MadePart['discs'][number];
  const at: [number, number] = [center.x, center.y];
  const size = 2 * radius;
  const { drawer, thickness } = aim;
  const able = drawer.filter((tool) => depthsOf(tool, thickness).length > 0);
  const round = disc(center, radius);
  const isOpen = area(subtract(round, [blank])) > 1e-6;
  const straight = (tool: Exclude<DrawerTool, { kind: 'boring head' }>): Made[] =>
    depthsOf(tool, thickness).map((down, n) => {
      const { diameter } = tool;
      const every = { id: `${k}${tool.id}${n}`, center: at, diameter, ...down };
      if (tool.kind !== 'annular cutter') return { tool, cut: { kind: 'bore', ...every } };
      return { tool, cut: { kind: 'annular', ...every, wall: tool.wall, reach: tool.reach } };
    });
  const roughs = able.flatMap((tool) =>
    tool.kind === 'boring head' || tool.diameter > size - 2 * ALLOWANCE
      ? []
      : [{ tool, cuts: straight(tool) }],
  );
  return able.flatMap((tool): Made[][] => {
    const last = (passes: Extract<Cut, { kind: 'bore' }>['passes']): Made[] =>
      depthsOf(tool, thickness).map((down, n) => ({
        tool,
        cut: { id: `${k}${tool.id}last${n}`, kind: 'bore', center: at, diameter: size, passes, ...down },
      }));
    if (tool.kind === 'boring head') {
      if (size < tool.smallest || size > tool.largest) return [];
      const out = last({ kind: 'open out', bite: BITE, smallest: tool.smallest });
      const after = roughs.map(({ cuts }) => [...cuts, ...out]);
      if (!isOpen) return after;
      return [...after, out, last({ kind: 'step in', bite: BITE, approach: inward(round, blank) })];
    }
    if (Math.abs(tool.diameter - size) < 1e-9) return [straight(tool)];
    if (tool.kind !== 'end mill' || tool.diameter > size || !aim.arcs) return [];
    const out = last({ kind: 'open out', bite: tool.diameter / 4, smallest: tool.diameter });
    const after = roughs
      .filter((rough) => rough.tool !== tool && rough.tool.diameter >= tool.diameter)
      .map(({ cuts }) => [...cuts, ...out]);
    return [...after, ...(isOpen ? [out] : []), ...(tool.centerCutting ? [[...straight(tool), ...out]] : [])];
  });
}

/** Through at once, or half way from each side with an overlap, as far as a tool comes; none where it does not come. */
function depthsOf(tool: DrawerTool, thickness: number): { depth?: number; from?: 'top' | 'bottom' }[] {
  const isHead = tool.kind === 'boring head';
  const most = isHead ? tool.bar : tool.reach;
  if (isHead ? most > thickness : most >= thickness) return [{}];
  if (isHead ? most <= thickness / 2 : most < thickness / 2) return [];
  const wanted = 0.55 * thickness;
  const depth = isHead ? (most > wanted ? wanted : thickness / 2) : Math.min(most, wanted);
  return [
    { depth, from: 'top' },
    { depth, from: 'bottom' },
  ];
}

function inward(round: Region, blank: Region): number {
  const air = centroid(subtract(round, [blank])) ?? { x: 0, y: 0 };
  const metal = centroid(intersect([round, blank])) ?? { x: 1, y: 0 };
  return Math.round((Math.atan2(metal.y - air.y, metal.x - air.x) * 180) / Math.PI);
}

function jobOf({ aim, keep }: MadePart, order: readonly Made[]): JobDocument {
  const used = [...new Set(order.map(({ tool }) => tool))];
  return {
    edgebite: 1,
    units: aim.units,
    part: { outline: aim.blank, thickness: aim.thickness, material: aim.material },
    keep,
    tools: used.map((tool) => {
      const { id, kind, toolMaterial } = tool;
      const cuts = order.filter((one) => one.tool === tool).map(({ cut }) => cut.id);
      const all = { id, kind, toolMaterial, cuts };
      if (tool.kind === 'boring head')
        return {
          ...all,
          maxSpeed: tool.maxSpeed,
          smallest: tool.smallest,
          largest: tool.largest,
          bar: tool.bar,
        };
      if (tool.kind === 'drill') return { ...all, diameter: tool.diameter };
      const { diameter, teeth } = tool;
      return tool.kind === 'end mill'
        ? { ...all, diameter, teeth, centerCutting: tool.centerCutting }
        : { ...all, diameter, teeth, pilot: tool.pilot };
    }),
    cuts: order.map(({ cut }) => cut),
  } as JobDocument;
}

function timeOf({ steps }: Report, order: readonly Made[]): number {
  const cutting = steps.reduce(
    (sum, { minutes }) => sum + (minutes === null ? 0 : (minutes[0] + minutes[1]) / 2),
    0,
  );
  const changes = order.slice(1).reduce((sum, { tool, cut }, k) => {
    const before = order[k] as Made;
    return (
      sum +
      (before.tool === tool ? 0 : CHANGE) +
      ((before.cut.from ?? 'top') === (cut.from ?? 'top') ? 0 : TURNING)
    );
  }, 0);
  return cutting + changes;
}
