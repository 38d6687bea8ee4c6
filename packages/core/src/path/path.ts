/*
 * Room: paths of a tool's centre along an outline.
 * In: region, tool radius, side, leads.
 * Out: passes of lines and arcs; gouges, what the tool does not reach, ISO words.
 */

import { checkNotNegative, checkOverZero, checkPlace } from '../geometry/checks.js';
import type { Edge } from '../geometry/edge.js';
import { NearEdges } from '../geometry/edge-gap.js';
import type { Point } from '../geometry/point.js';
import { shownNumber } from '../geometry/shown.js';
import { loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import {
  type CenterLoop,
  centerLoops,
  directed,
  type Milling,
  runsBackwards,
  type ToolSide,
} from './path-curve.js';
import { type Lead, type LeadRoom, type Leads, leadsFor, noLead } from './path-lead.js';
import { begun, inOrder, type LoopOrder } from './path-order.js';
import { slackFor } from './path-slack.js';
import { chainsAlong, type OutlineStretch } from './path-stretch.js';
import { outlineEdgeOf, type Tagged, tagged, untagged } from './path-tags.js';

/** How a round tool is to follow an outline. Lengths in the unit of the outline. */
export interface CenterPathOptions {
  readonly side: ToolSide;
  /** Radius of the tool. */
  readonly radius: number;
  /** What is left on the outline for a later pass; none unless given. */
  readonly allowance?: number | undefined;
  /** `conventional` unless given: on a machine with play in its screws, climbing pulls the table along. */
  readonly milling?: Milling | undefined;
  /** The largest leads that make sense unless given. */
  readonly lead?: Lead | undefined;
  /** Every loop is begun at its place nearest to this one; in the middle of a long edge unless given. */
  readonly start?: Point | undefined;
  /** `inner first` unless given. */
  readonly order?: LoopOrder | undefined;
}

/** One go of the tool: down at the start of the first edge, up at the end of the last. */
export interface CenterPass {
  /** A tangent arc, or nothing. */
  readonly leadIn: readonly Edge[];
  /** Along the outline; edges have the source of the outline edge that they run beside, or round whose end. */
  readonly cut: readonly Edge[];
  readonly leadOut: readonly Edge[];
  /** Whether the cut ends where it starts. */
  readonly closed: boolean;
  /** Whether it runs along outer loops of the region; else along holes. */
  readonly outer: boolean;
  /** Whether it goes round its loop counter-clockwise, or that part of it. */
  readonly ccw: boolean;
}

/** Names a loop of a region. */
export interface OutlineLoop {
  readonly part: number;
  /** null for the outer loop. */
  readonly hole: number | null;
}

/** The paths of a tool's centre along an outline, in the order in which they are to be driven. */
export interface CenterPath {
  readonly passes: readonly CenterPass[];
  /** Loops of the region that no pass touches: the tool does not fit there. */
  readonly missed: readonly OutlineLoop[];
}

/**
 * The paths of the centre of a round tool along all loops of an outline, with tangent leads. Lines stay lines and
 * arcs stay arcs; the tool goes round outward corners on an arc, and leaves out what it does not fit into (see
 * `unreached`). Each place of a cut is exactly radius and allowance away from the outline.
 *
 * Which way round follows from side and milling: outside of the metal, climb milling goes clockwise round it and
 * counter-clockwise round inside its holes; inside a pocket, counter-clockwise along its wall and clockwise round
 * its islands. Conventional milling goes the other way.
 * @throws RangeError if a length is out of range, or the tool fits nowhere.
 * @throws LeadError if no lead fits at the start of a loop.
 */
export function centerPath(region: Region, options: CenterPathOptions): CenterPath {
  return centerPathOn(region, options, () => true);
}

/** The same along those loops only that are wanted, by an edge of each: what is not driven needs no room for a lead. */
export function centerPathOn(
  region: Region,
  options: CenterPathOptions,
  isWanted: (edge: Edge) => boolean,
): CenterPath {
  const plan = planFor('centerPath', region, options);
  const wanted = plan.loops.filter(({ edges }) => edges.some((edge) => isWanted(untagged(plan.tags, edge))));
  const found = wanted.map(({ edges, outer }) => {
    const starts = begun(directed(edges, plan.backwards), options.start, plan.room.slack);
    return passOf(plan, starts, true, outer);
  });
  const touched = new Set(plan.loops.flatMap(({ edges }) => edges.map((edge) => loopKey(plan.tags, edge))));
  const all = region.flatMap(({ holes }, part): OutlineLoop[] => [
    { part, hole: null },
    ...holes.map((_, hole) => ({ part, hole })),
  ]);
  return {
    passes: ordered(found, options),
    missed: all.filter(({ part, hole }) => !touched.has(`${part} ${hole}`)),
  };
}

/**
 * The paths of the centre of a round tool along part of one loop of an outline: one pass, or several where what the
 * tool does not fit into parts them. Each stops where the tool stands square to the end of the stretch, and has
 * tangent leads there.
 * @param stretch in the direction of the loop, however the tool runs: outer loops counter-clockwise, holes clockwise
 * @throws RangeError if a length is out of range, the stretch is not one of the outline, or the tool touches it
 *   nowhere.
 * @throws LeadError if no lead fits at an end.
 */
export function centerPathAlong(
  region: Region,
  stretch: OutlineStretch,
  options: Omit<CenterPathOptions, 'start' | 'order'>,
): readonly CenterPass[] {
  const plan = planFor('centerPathAlong', region, options);
  const chains = chainsAlong(plan.tags, plan.loops, stretch);
  if (chains.length === 0) {
    throw new RangeError(
      `centerPathAlong: a tool of radius ${shownNumber(options.radius)} touches no place of the stretch; ` +
        'see unreached for the largest that does',
    );
  }
  const along = plan.backwards ? chains.reverse() : chains;
  return along.map(({ edges, outer }) => passOf(plan, [directed(edges, plan.backwards)], false, outer));
}

/** All edges of a pass, one after the other. */
export function edgesOfPass({ leadIn, cut, leadOut }: CenterPass): Edge[] {
  return [...leadIn, ...cut, ...leadOut];
}

/** What all passes have in common. */
interface Plan {
  readonly where: string;
  readonly tags: Tagged;
  readonly loops: readonly CenterLoop[];
  readonly backwards: boolean;
  readonly lead: Lead;
  readonly room: LeadRoom;
}

function planFor(where: string, region: Region, options: CenterPathOptions): Plan {
  const { side, radius, allowance = 0, milling = 'conventional', lead = 'largest', start } = options;
  checkOverZero(where, 'radius', radius);
  checkNotNegative(where, 'allowance', allowance);
  if (typeof lead === 'number') checkOverZero(where, 'lead', lead);
  if (start !== undefined) checkPlace(where, 'start', start);
  const away = radius + allowance;
  const slack = slackFor(region, away);
  if (radius <= slack) {
    throw new RangeError(
      `${where}: radius is ${radius}; in an outline of that size all under ${shownNumber(slack)} is rounding`,
    );
  }
  const tags = tagged(region);
  const loops = centerLoops(tags, side, away);
  if (loops.length === 0) {
    throw new RangeError(
      `${where}: a tool of radius ${shownNumber(radius)} with an allowance of ${shownNumber(allowance)} fits ` +
        `nowhere ${side} of the outline; see unreached for the largest that does`,
    );
  }
  const outline = new NearEdges(loopsOf(tags.region).flat());
  // What stays is on the right in climb milling, so the left is free.
  const room = { outline, distance: away, toolRadius: radius, freeLeft: milling === 'climb', slack };
  return { where, tags, loops, backwards: runsBackwards(side, milling), lead, room };
}

/** The pass that begins at the best of some starts: the first one with full leads, or the one that comes away most. */
function passOf(
  plan: Plan,
  starts: readonly (readonly Edge[])[],
  closed: boolean,
  outer: boolean,
): CenterPass {
  const { tags, lead, room, backwards } = plan;
  const named = (edges: readonly Edge[]) => edges.map((edge) => untagged(tags, edge));
  const made = (cut: readonly Edge[], leads: Leads | null): CenterPass => ({
    leadIn: leads === null ? [] : [leads.leadIn],
    cut: named(cut),
    leadOut: leads === null ? [] : [leads.leadOut],
    closed,
    outer,
    ccw: outer !== backwards,
  });
  const [first] = starts as [readonly Edge[]];
  if (lead === 'none') return made(first, null);
  let best: { cut: readonly Edge[]; leads: Leads } | null = null;
  for (const cut of starts) {
    const leads = leadsFor(cut, lead, room);
    if (leads !== null && leads.away > (best?.leads.away ?? 0)) best = { cut, leads };
    if (leads?.full) break;
  }
  if (best === null) throw noLead(plan.where, named(first), lead, room);
  return made(best.cut, best.leads);
}

function ordered(
  passes: readonly CenterPass[],
  { order = 'inner first', start }: CenterPathOptions,
): CenterPass[] {
  const ends = passes.map((pass) => {
    const edges = edgesOfPass(pass);
    const [first, last] = [edges[0] as Edge, edges[edges.length - 1] as Edge];
    return { pass, outer: pass.outer, from: first.a, to: last.b };
  });
  return inOrder(ends, order, start).map(({ pass }) => pass);
}

function loopKey(tags: Tagged, edge: Edge): string {
  const beside = outlineEdgeOf(tags, edge);
  return beside === null ? '' : `${beside.part} ${beside.hole}`;
}
