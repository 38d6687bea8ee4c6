/*
 * Room: what dragging a handle does to the numbers of a job.
 * In: a handle and a place.
 * Out: a changed job.
 */

import { sourceText } from '@edgebite/core';
import { isList, isObject, type JsonObject } from '../document/json.js';
import type { Worked } from '../worker/worked.js';
import { distanceMoves } from './distances.js';
import { faceMoves } from './face.js';
import type { Moves } from './free.js';
import { isPlace, pathMoves, pointMoves, throughMoves } from './shifts.js';

/**
 * What of a cut is free to be moved by hand; null where that cannot be told, as it is at fault or was never worked out.
 * @param worked what came out for the cut; null if nothing did yet
 */
export function movesOf(cut: JsonObject, worked: Worked | null): Moves | null {
  const { center, path } = cut;
  if (isPlace(center)) return pointMoves(center);
  if (isObject(path)) return pathMoves(path) ?? stillPath(path, worked);
  if (!isObject(center) || worked === null || worked.center === null) return null;
  if ('through' in center) return throughMoves(center, worked.center);
  if ('tangent' in center) return tangentMoves(center, worked);
  if ('distances' in center) return distanceMoves(center, worked);
  const diameter = typeof cut.diameter === 'number' ? cut.diameter : worked.diameter;
  return faceMoves(center, diameter, worked);
}

function tangentMoves({ tangent }: JsonObject, { center, names }: Worked): Moves | null {
  if (center === null || !isList(tangent)) return null;
  const edges = tangent.map((name) => sourceText(String(name), names)).join(' and ');
  return {
    frees: [],
    at: center,
    why: `It touches ${edges}, and its size does the rest: no number of its place is free.`,
  };
}

function stillPath(path: JsonObject, worked: Worked | null): Moves | null {
  if (worked?.start == null) return null;
  const why =
    'along' in path
      ? 'Its path follows the outline: no number of its place is free. Change what it follows in its fields.'
      : 'Its path is given as text that cannot be moved here: change it in its field.';
  return { frees: [], at: worked.start, why };
}
