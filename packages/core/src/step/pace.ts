import { type Doing, doingOf, travelOfPass } from '../cutting/doing.js';
import { feedOfDoing, minutesOfPass } from '../cutting/feed-of-doing.js';
import { metalOf } from '../cutting/material.js';
import type { Range } from '../cutting/range.js';
import type { ToolDocument } from '../document/schema.js';
import type { Edge } from '../geometry/edge.js';
import type { Job } from '../job/job.js';

/** What a tool does in a step, and how fast. */
export interface Pace {
  readonly doing: Doing;
  /** How far it goes at its feed, in the unit of the job. */
  readonly travel: number;
  /** In a turn, and in a minute; null where they are not known. */
  readonly perTurn: Range | null;
  readonly feed: Range | null;
  readonly minutes: Range | null;
}

/** One pass of a cut, by what its pace depends on. */
export interface PacedPass {
  readonly diameter: number;
  readonly path: readonly Edge[] | null;
}

/**
 * The pace of a tool in one pass: of that pass alone.
 * @param set turns in a minute; null where none are known
 */
export function paceOf(
  job: Job,
  cut: Job['cuts'][number],
  tool: ToolDocument,
  set: Range | null,
  { diameter, path }: PacedPass,
): Pace {
  const own = tool.diameter ?? diameter;
  const doing = doingOf({ kind: tool.kind, diameter: own }, { kind: cut.kind, diameter });
  const travel = travelOf(doing, cut.depth, own, diameter, path);
  const { perTurn, rate } = feedOfDoing({
    doing,
    kind: tool.kind,
    metal: job.material === null ? null : metalOf(job.material),
    diameter: own,
    teeth: tool.teeth ?? null,
    units: job.units,
    spindle: set,
    own: cut.plan?.passes?.feed ?? null,
  });
  return { doing, travel, perTurn, feed: rate, minutes: minutesOfPass(travel, rate) };
}

function travelOf(
  doing: Doing,
  depth: number,
  own: number,
  diameter: number,
  path: readonly Edge[] | null,
): number {
  switch (doing) {
    case 'drills':
      return travelOfPass({ doing, depth, diameter: own });
    case 'mills round':
      return travelOfPass({ doing, diameter, toolDiameter: own });
    case 'mills along':
      return travelOfPass({ doing, edges: path ?? [] });
    case 'rings':
    case 'bores':
    case 'plunges':
      return travelOfPass({ doing, depth });
  }
}
