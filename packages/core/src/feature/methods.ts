import type { Aim } from '../aim/aim.js';
import { intersect } from '../combine/boolean.js';
import { subtract } from '../combine/subtract.js';
import { isSameSize, SAME_SIZE } from '../cut/same-size.js';
import type { DrawerTool, HeadTool, RingTool, RoundDrawerTool } from '../document/schema-drawer.js';
import { DEGREE } from '../geometry/angle.js';
import { distance } from '../geometry/point.js';
import { centroid } from '../region/measure.js';
import { disc } from '../region/region.js';
import type { Method, PlannedCut } from './cut-plan.js';
import type { Feature, RoundFeature } from './features.js';
import { boresOf, descentsOf, reaches, spindleSuits } from './suits.js';
import { sweptMethods } from './swept-methods.js';

/** The deepest bite of an end mill along a radius, of its diameter; common practice, no source. */
const MILL_BITE_SHARE = 1 / 4;

/** Drawers larger than this are looked through for the largest tools of each kind only. */
export const SMALL_DRAWER = 6;

type MillTool = DrawerTool & { readonly kind: 'end mill' };

/** What a tool must be able to do besides fitting in. */
export interface Demands {
  readonly reach: boolean;
  readonly spindle: boolean;
  /** That it goes along no arc where the machine leads none. */
  readonly arcs: boolean;
}

const ALL_DEMANDS: Demands = { reach: true, spindle: true, arcs: true };

/**
 * All ways of one tool, or of one that roughs and one that finishes, to make a feature.
 * @param demands to ask what could be made if tools reached further, the spindle had other speeds, or it could be led along arcs
 */
export function methodsOf(aim: Aim, feature: Feature, demands = ALL_DEMANDS): Method[] {
  const able = aim.drawer.filter(
    (tool) =>
      !(demands.reach && !reaches(aim, tool, feature)) &&
      !(demands.spindle && !spindleSuits(aim, tool, sizeFor(tool, feature))),
  );
  const leads = aim.arcs || !demands.arcs;
  return feature.kind === 'round'
    ? roundMethods(aim, feature, able, leads)
    : sweptMethods(aim, feature, able, leads);
}

/** The diameter at which a tool's edges run; of a head that of the place that it bores. */
function sizeFor(tool: DrawerTool, feature: Feature): number {
  if (tool.kind !== 'boring head') return tool.diameter;
  return feature.kind === 'round' ? 2 * feature.radius : tool.largest;
}

function roundMethods(
  aim: Aim,
  feature: RoundFeature,
  able: readonly DrawerTool[],
  leads: boolean,
): Method[] {
  // Only mills leave a square floor.
  const usable = feature.layer.depth === null ? able : able.filter(({ kind }) => kind === 'end mill');
  return [
    ...usable.flatMap((tool) => alone(aim, feature, tool)),
    ...usable.flatMap((tool) =>
      tool.kind === 'boring head'
        ? headMethods(aim, feature, tool, usable)
        : tool.kind === 'end mill' && leads
          ? millMethods(aim, feature, tool, usable)
          : [],
    ),
  ];
}

/** A tool of just the size. */
function alone(aim: Aim, feature: RoundFeature, tool: DrawerTool): Method[] {
  if (tool.kind === 'boring head' || !isSize(tool.diameter, feature)) return [];
  return [{ cuts: straightDown(aim, feature, tool, { stage: 0, isLast: true }) }];
}

/** Whether a tool could form the wall of a round place, if it could get there. */
export function fits(tool: DrawerTool, feature: RoundFeature): boolean {
  const size = 2 * feature.radius;
  if (feature.layer.depth !== null && tool.kind !== 'end mill') return false;
  // A size worked out from the ends of an arc may be a last digit under or over the one that a head is made for.
  const slack = SAME_SIZE * feature.radius;
  if (tool.kind === 'boring head') return size >= tool.smallest - slack && size <= tool.largest + slack;
  return isSize(tool.diameter, feature) || (tool.kind === 'end mill' && tool.diameter < size);
}

function isSize(diameter: number, { radius }: RoundFeature): boolean {
  return isSameSize(diameter, 2 * radius);
}

interface StageOfFeature {
  readonly stage: number;
  readonly isLast: boolean;
}

const DOWN_WORD = { drill: 'drill', 'end mill': 'plunge', 'annular cutter': 'ring' } as const;

/** A tool that goes straight down once, or once from each side. */
function straightDown(
  aim: Aim,
  feature: RoundFeature,
  tool: RoundDrawerTool,
  place: StageOfFeature,
): PlannedCut[] {
  const { id: name, center } = feature;
  const { diameter } = tool;
  const at = [center.x, center.y] as const;
  const id = `${name} ${DOWN_WORD[tool.kind]}`;
  if (tool.kind !== 'annular cutter') return boresOf(aim, tool, feature, { id, ...place, at, diameter });
  const { wall, reach } = tool;
  return descentsOf(aim, tool, feature).map(({ side, depth, word }): PlannedCut => {
    const document = { kind: 'annular', center: at, diameter, ...depth, wall, reach } as const;
    return { tool, feature: name, ...place, id: `${id}${word}`, side, document };
  });
}

/** What may be cut before a finishing tool comes: nothing, or one tool that leaves the allowance at least. */
function roughings(
  aim: Aim,
  { radius }: RoundFeature,
  able: readonly DrawerTool[],
): (RoundDrawerTool | null)[] {
  const most = 2 * (radius - aim.allowance);
  const fitting = able.filter(
    (tool): tool is RoundDrawerTool => tool.kind !== 'boring head' && tool.diameter <= most,
  );
  if (aim.drawer.length <= SMALL_DRAWER) return [null, ...fitting];
  const largest = (of: readonly RoundDrawerTool[]) =>
    of.reduce<RoundDrawerTool | null>(
      (best, tool) => (best === null || tool.diameter > best.diameter ? tool : best),
      null,
    );
  const rings = fitting.filter((tool): tool is RingTool => tool.kind === 'annular cutter');
  return [
    null,
    largest(rings.filter(({ reach }) => reach >= aim.job.thickness)),
    largest(rings.filter(({ reach }) => reach < aim.job.thickness)),
    largest(fitting.filter(({ kind, reach }) => kind === 'drill' && reach >= aim.job.thickness)),
    largest(fitting.filter(({ kind, reach }) => kind === 'drill' && reach < aim.job.thickness)),
    largest(fitting.filter((tool) => tool.kind === 'end mill' && tool.centerCutting === true)),
  ].filter((tool, k) => k === 0 || tool !== null);
}

/** A head opens a hole out, or steps in from the air. */
function headMethods(aim: Aim, feature: RoundFeature, head: HeadTool, able: readonly DrawerTool[]): Method[] {
  const { id: name, center, radius, isOpen } = feature;
  if (!fits(head, feature)) return [];
  const finish = (passes: object, stage: number): PlannedCut[] =>
    boresOf(aim, head, feature, {
      id: `${name} bore`,
      stage,
      isLast: true,
      at: [center.x, center.y],
      // One of its limits, where the size is that but for the last digit.
      diameter: Math.min(Math.max(2 * radius, head.smallest), head.largest),
      passes,
    });
  const { bite } = aim;
  const opened = roughings(aim, feature, able).flatMap((rough): Method[] => {
    if (rough === null && !isOpen) return [];
    const before = rough === null ? [] : straightDown(aim, feature, rough, { stage: 0, isLast: false });
    const passes = passesIn(rough === null ? radius : radius - rough.diameter / 2, bite);
    return [{ cuts: [...before, ...finish({ kind: 'open out', bite, smallest: head.smallest }, 1)], passes }];
  });
  const approach = wayIn(aim, feature);
  if (approach === null) return opened;
  const stepped = finish({ kind: 'step in', bite, approach }, 0);
  return [...opened, { cuts: stepped, passes: passesIn(radius, bite) }];
}

/** How many bites a length takes. */
function passesIn(length: number, bite: number): number {
  return Math.ceil(length / bite);
}

/** The whole degrees in which a centre moves in from the air, straight at the middle of the metal; null where none lies open. */
function wayIn({ job }: Aim, { center, radius, isOpen }: RoundFeature): number | null {
  if (!isOpen) return null;
  const round = disc(center, radius);
  const air = centroid(subtract(round, [job.outline]));
  const metal = centroid(intersect([round, job.outline]));
  if (air === null || metal === null || distance(air, metal) <= SAME_SIZE * radius) return null;
  return Math.round(Math.atan2(metal.y - air.y, metal.x - air.x) / DEGREE);
}

/** An end mill goes down in the middle, in metal or in what was roughed out, and round. */
function millMethods(aim: Aim, feature: RoundFeature, mill: MillTool, able: readonly DrawerTool[]): Method[] {
  const { id: name, center, radius, isOpen } = feature;
  if (mill.diameter >= 2 * radius || isSize(mill.diameter, feature)) return [];
  const bite = MILL_BITE_SHARE * mill.diameter;
  const round = boresOf(aim, mill, feature, {
    id: `${name} mill round`,
    stage: 1,
    isLast: true,
    at: [center.x, center.y],
    diameter: 2 * radius,
    passes: { kind: 'open out', bite, smallest: mill.diameter },
  });
  const roughed = roughings(aim, feature, able).flatMap((rough): Method[] => {
    if (rough === null) return isOpen ? [{ cuts: round, passes: passesIn(radius, bite) }] : [];
    if (rough.diameter < mill.diameter || rough === mill) return [];
    const passes = passesIn(radius - rough.diameter / 2, bite);
    return [{ cuts: [...straightDown(aim, feature, rough, { stage: 0, isLast: false }), ...round], passes }];
  });
  if (mill.centerCutting !== true) return roughed;
  const plunge = straightDown(aim, feature, mill, { stage: 0, isLast: false });
  return [...roughed, { cuts: [...plunge, ...round], passes: passesIn(radius - mill.diameter / 2, bite) }];
}
