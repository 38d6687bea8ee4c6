import type { Aim } from '../aim/aim.js';
import { type Feature, type Patch, smallestArc, wallPlace } from '../feature/features.js';
import { fits, methodsOf } from '../feature/methods.js';
import { pointToJson } from '../format/json.js';
import { pointAlong } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import { lengthWords, placeWords } from '../report/words.js';

/** Why something cannot be made with the tools of a drawer. */
export type RefusalCode = 'shape' | 'no-size' | 'reach' | 'spindle' | 'no-way-in' | 'arcs' | 'passes';

/** A place of the finished part that no tool of the drawer can make. */
export interface Refusal {
  readonly code: RefusalCode;
  /** id of the feature; null for a wall that no round tool makes as it stands. */
  readonly feature: string | null;
  readonly at: readonly [number, number];
  /** What it is, why it cannot be made, and which tool could. */
  readonly message: string;
}

/** How far away from being made, by the reason: what asks for other settings first, then for other tools, then for another part. */
const FAR: Readonly<Record<RefusalCode, number>> = {
  passes: 0,
  arcs: 1,
  spindle: 1,
  reach: 1,
  'no-way-in': 2,
  'no-size': 3,
  shape: 4,
};

/**
 * Why a patch cannot be made: one refusal for each round place and slot of it that cannot, or one for its walls. Of the ways
 * to see it that counts which is nearest to being made; of equally near ones rounds alone, since each has its size, and else
 * the one that lacks least.
 */
export function refusalsOf(aim: Aim, patch: Patch): Refusal[] {
  const lacking = patch.recipes.map((features) =>
    features.filter((feature) => methodsOf(aim, feature).length === 0),
  );
  // A way to see it of which nothing lacks a tool is nearest: what it has no passes or no order for is all of it.
  const whole = patch.recipes.find((_, k) => lacking[k]?.length === 0);
  const told =
    whole !== undefined
      ? withReasons(aim, patch, whole)
      : lacking
          .map((features) => withReasons(aim, patch, features))
          .reduce((nearest, one) => (isNearer(one, nearest) ? one : nearest));
  return told.map(({ feature, code }) => refusalOf(aim, patch, feature, code));
}

type Reasoned = readonly { readonly feature: Feature; readonly code: RefusalCode }[];

function withReasons(aim: Aim, patch: Patch, features: readonly Feature[]): Reasoned {
  return features.map((feature) => ({ feature, code: codeOf(aim, patch, feature) }));
}

function isNearer(one: Reasoned, other: Reasoned): boolean {
  const farOf = (all: Reasoned) => Math.max(...all.map(({ code }) => FAR[code]));
  const countOf = (all: Reasoned) => (all.every(({ feature }) => feature.kind === 'round') ? 0 : all.length);
  return (farOf(one) - farOf(other) || countOf(one) - countOf(other)) < 0;
}

function refusalOf(aim: Aim, patch: Patch, feature: Feature, code: RefusalCode): Refusal {
  const { units, thickness } = aim.job;
  const at = pointToJson(pointOfRefusal(patch, feature, code));
  const depth = lengthWords(feature.layer.depth ?? thickness, units);
  const size = lengthWords(widthOf(patch, feature), units);
  const what = `${nameOf(feature, size)} ${placeWords(at, units)}`;
  const stop = feature.kind === 'wall' ? '' : ',';
  const message = `${what}${stop} ${sentenceOf(code, size, depth, feature)}`;
  return { code, feature: feature.id, at, message };
}

function pointOfRefusal(patch: Patch, feature: Feature, code: RefusalCode): Point {
  if (feature.kind === 'round') return feature.center;
  if (code === 'shape' && patch.corner !== null) return patch.corner;
  return feature.kind === 'slot' ? pointAlong(feature.path[0], 1 / 2) : wallPlace(patch);
}

/** The size of a round place or slot; of walls the largest tool that their hollow arcs let in. */
function widthOf(patch: Patch, feature: Feature): number {
  switch (feature.kind) {
    case 'round':
      return 2 * feature.radius;
    case 'slot':
      return feature.width;
    case 'wall':
      return 2 * smallestArc(patch);
  }
}

function nameOf(feature: Feature, size: string): string {
  switch (feature.kind) {
    case 'round':
      return `${feature.isOpen ? 'The arc' : 'The hole'} ${feature.id}, ${size} across round`;
    case 'slot':
      return `The slot ${feature.id}, ${size} wide by`;
    case 'wall':
      return 'The wall by';
  }
}

function codeOf(aim: Aim, patch: Patch, feature: Feature): RefusalCode {
  const has = (reach: boolean, spindle: boolean, arcs: boolean) =>
    methodsOf(aim, feature, { reach, spindle, arcs }).length > 0;
  if (has(true, true, true)) return 'passes';
  if (has(true, true, false)) return 'arcs';
  if (has(false, true, false)) return 'reach';
  if (has(true, false, false)) return 'spindle';
  if (has(false, false, false)) return 'reach';
  if (feature.kind === 'round') {
    return aim.drawer.some((tool) => fits(tool, feature)) ? 'no-way-in' : 'no-size';
  }
  return patch.corner !== null ? 'shape' : 'no-size';
}

function sentenceOf(code: RefusalCode, size: string, depth: string, feature: Feature): string {
  const isThrough = feature.layer.depth === null;
  switch (code) {
    case 'shape':
      return 'has an inside corner that no round tool leaves. File or saw it, or give it a round.';
    case 'no-size':
      return `is no size of any tool of the drawer. ${whatWould(feature, size)} could make it.`;
    case 'reach':
      return `is too deep for the tools that have its size. One that reaches ${depth} could make it${isThrough ? ', or half of that, from both sides' : ''}.`;
    case 'spindle':
      return 'has no tool that the spindle can turn at a speed for it. A tool of carbide in place of HSS, or the other way round, or of another size could make it.';
    case 'no-way-in':
      return `cannot be begun: what could finish it cannot go down into whole metal. ${isThrough ? 'A drill or hollow cutter that leaves the allowance, or an' : 'An'} end mill that cuts to its centre could open it.`;
    case 'arcs':
      return `can only be made by leading an end mill along an arc, which hand wheels cannot. ${feature.kind === 'round' && isThrough ? `A tool that makes ${size} straight down, or a` : 'A'} rotary table, for which "arcs" is said in the aim, would do.`;
    case 'passes':
      return 'cannot be made in passes as deep as they may be, or in no order that leaves the part whole. A larger tool to rough it out, or a deeper bite, may do.';
  }
}

function whatWould(feature: Feature, size: string): string {
  if (feature.kind !== 'round') return `An end mill of ${size} or less`;
  if (feature.layer.depth !== null) return `An end mill of ${size} or less, which leaves a square floor,`;
  const straight = feature.isOpen ? 'A hollow cutter' : 'A drill or hollow cutter';
  return `${straight} of ${size}, a boring head that can be set to it, or a smaller end mill`;
}
