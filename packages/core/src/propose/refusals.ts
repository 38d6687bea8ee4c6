import { lengthWords, placeWords } from '../find/words.js';
import { pointToJson } from '../format/json.js';
import type { Point } from '../geometry/point.js';
import type { Aim } from './aim.js';
import type { Patch, RoundFeature } from './features.js';
import { fits, roundMethods } from './methods.js';

/** Why something cannot be made with the tools of a drawer. */
export type RefusalCode = 'shape' | 'no-size' | 'reach' | 'spindle' | 'no-way-in' | 'passes';

/** A place of the finished part that no tool of the drawer can make. */
export interface Refusal {
  readonly code: RefusalCode;
  /** id of the feature; null for a wall that no round tool makes as it stands. */
  readonly feature: string | null;
  readonly at: readonly [number, number];
  /** What it is, why it cannot be made, and which tool could. */
  readonly message: string;
}

/** A patch with a wall that the circles of its hollow arcs do not make. */
export function shapeRefusal({ job }: Aim, { bareAt, region }: Patch): Refusal {
  const at = pointToJson(bareAt ?? (region[0]?.outer[0]?.a as Point));
  const message = `The wall by ${placeWords(at, job.units)} is no full round: the circles of the hollow arcs beside it do not take all that is to go. Saw or mill it, or give it hollow arcs that a round tool leaves.`;
  return { code: 'shape', feature: null, at, message };
}

/** A round place that has no method, or none that can be made. */
export function roundRefusal(aim: Aim, feature: RoundFeature): Refusal {
  const code = codeOf(aim, feature);
  const { units, thickness } = aim.job;
  const size = lengthWords(2 * feature.radius, units);
  const at = pointToJson(feature.center);
  const what = `${feature.isOpen ? 'The arc' : 'The hole'} ${feature.id}, ${size} across round ${placeWords(at, units)},`;
  return {
    code,
    feature: feature.id,
    at,
    message: `${what} ${sentenceOf(code, size, lengthWords(thickness, units), feature)}`,
  };
}

function codeOf(aim: Aim, feature: RoundFeature): RefusalCode {
  if (!aim.drawer.some((tool) => fits(tool, feature))) return 'no-size';
  const has = (reach: boolean, spindle: boolean) => roundMethods(aim, feature, { reach, spindle }).length > 0;
  if (has(true, true)) return 'passes';
  if (has(false, true)) return 'reach';
  if (has(true, false)) return 'spindle';
  return has(false, false) ? 'reach' : 'no-way-in';
}

function sentenceOf(code: RefusalCode, size: string, thickness: string, { isOpen }: RoundFeature): string {
  switch (code) {
    case 'no-size':
      return `is no size of any tool of the drawer. ${isOpen ? 'A hollow cutter' : 'A drill or hollow cutter'} of ${size}, a boring head that can be set to it, or a smaller end mill could make it.`;
    case 'reach':
      return `is too deep for the tools that have its size. One that reaches ${thickness} could make it, or a hollow cutter that reaches half of that from both sides.`;
    case 'spindle':
      return 'has no tool that the spindle can turn at a speed for it. A tool of carbide in place of HSS, or the other way round, or of another size could make it.';
    case 'no-way-in':
      return 'cannot be begun: what could finish it cannot go down into whole metal. A drill or hollow cutter that leaves the allowance, or an end mill that cuts to its centre, could open it.';
    default:
      return 'cannot be made in passes as deep as they may be. A larger tool to rough it out, or a deeper bite, would do.';
  }
}
