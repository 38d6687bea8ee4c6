import { intersect, union } from '../combine/boolean.js';
import { subtract } from '../combine/subtract.js';
import type { ToolDocument } from '../document/schema.js';
import { pointToJson } from '../format/json.js';
import { DEGREE } from '../geometry/angle.js';
import { moved, type Point, type Vector } from '../geometry/point.js';
import type { PassesPlan } from '../job/plan.js';
import { plainReason } from '../job/reason.js';
import { radiusStep } from '../measure/correction.js';
import { openOut, type Pass, type PassPlan, stepIn } from '../passes/passes.js';
import { area } from '../region/measure.js';
import { disc, type Region } from '../region/region.js';
import type { ReportPasses } from '../report/report-schema.js';
import { headingAlong, headingOf, loadJson } from './center-rows.js';
import type { MetalLayer, NearMetal, RoundCut } from './near-metal.js';

/** What a boring head can be set to. */
export type HeadLimits = Pick<ToolDocument, 'dial' | 'smallest'>;

/** Passes as they can be made, or why they cannot. */
export type MadePasses =
  | { readonly row: ReportPasses; readonly start: PassesStart | null }
  | { readonly fault: string };

/** From where the first pass comes: where a tool of a fixed size first touches, or what one that is opened out can be set to. */
export type PassesStart =
  | { readonly kind: 'step in'; readonly touch: Point; readonly approach: Vector }
  | { readonly kind: 'open out'; readonly smallest: number; readonly mark: number };

/**
 * The passes of a bore through the metal that is there at its turn, at any height: where an earlier cut has taken
 * metal from one layer and not from another, bites are those of the layer that has the most.
 * @param head the boring head that makes it: passes that open out keep to what it can be set to; null for other tools
 * @param clear the gap to have before the first pass, and what is in the way of standing there
 */
export function passesRow(
  cut: RoundCut,
  plan: PassesPlan,
  { layers }: NearMetal,
  head: HeadLimits | null,
  clear: { readonly gap: number; readonly avoid: readonly Region[] },
): MadePasses {
  const solid = layers.filter(({ plain }) => plain !== 'air');
  const [first, second] = solid;
  const metal = second === undefined ? (first?.metal ?? []) : union(solid.map((layer) => layer.metal));
  const { bite, finish, spring, feed } = plan;
  const options = {
    metal,
    center: cut.center,
    radius: cut.diameter / 2,
    bite,
    finish,
    spring,
    depth: cut.depth,
    ...(feed === null ? {} : { feed }),
  };
  try {
    // A bore that is too small for the head altogether is a finding of its own.
    const smallest = Math.max(plan.smallest, Math.min((head?.smallest ?? 0) / 2, options.radius));
    const mark = head?.dial === undefined ? undefined : radiusStep(head.dial);
    const approach = plan.approach === null ? undefined : directionOf(plan.approach);
    const made =
      plan.kind === 'step in'
        ? stepIn({ ...options, approach, clear })
        : openOut({ ...options, smallest, mark });
    return {
      row: rowOf(cut, plan, made, volumesOf(layers, made.passes)),
      start: startOf(plan, cut, made, { smallest, mark: mark ?? 0 }),
    };
  } catch (error) {
    return { fault: plainReason(error) };
  }
}

function startOf(
  { kind }: PassesPlan,
  { center }: RoundCut,
  { passes, approach, travel }: PassPlan,
  head: { readonly smallest: number; readonly mark: number },
): PassesStart | null {
  if (passes.length === 0) return null;
  if (kind === 'open out') return { kind, ...head };
  return approach === null ? null : { kind, approach, touch: moved(center, approach, -travel) };
}

/** A unit vector; exact along the axes, which is how tables move. */
function directionOf(degrees: number): Vector {
  const quarter = degrees / 90;
  if (Number.isInteger(quarter)) {
    const axes: readonly Vector[] = [
      { dx: 1, dy: 0 },
      { dx: 0, dy: 1 },
      { dx: -1, dy: 0 },
      { dx: 0, dy: -1 },
    ];
    return axes[((quarter % 4) + 4) % 4] as Vector;
  }
  return { dx: Math.cos(degrees * DEGREE), dy: Math.sin(degrees * DEGREE) };
}

function rowOf(
  { from }: RoundCut,
  { kind }: PassesPlan,
  { approach, travel, minutes, unevenness, passes }: PassPlan,
  volumes: readonly number[],
): ReportPasses {
  return {
    kind,
    approach: approach === null ? null : headingAlong(approach),
    travel,
    minutes,
    unevenness,
    list: passes.map((pass, k) => ({
      role: pass.role,
      center: pointToJson(pass.center),
      diameter: 2 * pass.radius,
      step: pass.step,
      area: pass.area,
      volume: volumes[k] as number,
      bite:
        pass.bite === null
          ? null
          : { size: pass.bite.size, angle: headingOf(pass.bite.angle), at: pointToJson(pass.bite.at) },
      load: loadJson(pass.engagement, from),
      longestCut: { angle: pass.longestCut.angle / DEGREE, length: pass.longestCut.length },
      minutes: pass.minutes,
    })),
  };
}

/** What each pass takes in all layers. */
function volumesOf(layers: readonly MetalLayer[], passes: readonly Pass[]): number[] {
  const solid = layers.filter(({ plain }) => plain !== 'air');
  const [only, second] = solid;
  if (only !== undefined && second === undefined)
    return passes.map((pass) => pass.area * (only.high - only.low));
  const left: Region[] = solid.map(({ metal }) => metal);
  return passes.map(({ role, center, radius }) => {
    if (role === 'spring') return 0;
    const tool = disc(center, radius);
    return solid.reduce((sum, { low, high }, k) => {
      const metal = left[k] as Region;
      left[k] = subtract(metal, [tool]);
      return sum + area(intersect([metal, tool])) * (high - low);
    }, 0);
  });
}
