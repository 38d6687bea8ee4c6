import { snapped, tidied } from '../board/snap.js';
import {
  isList,
  isObject,
  type Json,
  type JsonObject,
  type Path,
  valueAt,
  withValue,
} from '../document/json.js';
import type { Place } from '../worker/sketch.js';
import { type Free, type Moves, plainFree } from './free.js';
import { svgNumbers } from './path-text.js';
import { movedText, type Reader, startOfText } from './text-numbers.js';
import { wktNumbers } from './wkt-text.js';

const AXES = [
  { name: 'x', grows: [1, 0] },
  { name: 'y', grows: [0, 1] },
] as const;

/** Whether a value is a place. */
export function isPlace(value: Json | undefined): value is readonly [number, number] {
  return isList(value) && value.length === 2 && value.every((number) => typeof number === 'number');
}

/** What is free of a centre that is given as a place: both coordinates. */
export function pointMoves(center: Place): Moves {
  const frees = AXES.map(({ name, grows }, axis) =>
    plainFree(name, ['center', axis], center[axis] ?? 0, grows, (place) => place[axis] ?? 0),
  );
  return { frees, at: center, why: null };
}

/** A shape of several places is moved as a whole, in steps from where it is. */
function shiftFrees(
  at: Place,
  shift: (cut: JsonObject, axis: 0 | 1, by: number) => JsonObject,
): readonly Free[] {
  return ([0, 1] as const).map((axis) => ({
    ...AXES[axis],
    value: at[axis],
    at: (place) => place[axis],
    put: (value, step) => {
      const by = snapped(value - at[axis], step);
      return (cut) => (by === 0 ? cut : shift(cut, axis, by));
    },
  }));
}

/** What is free of a centre that three places on its circle give: all three go together. */
export function throughMoves(center: JsonObject, worked: Place | null): Moves | null {
  const places = isList(center.through) ? center.through : [];
  if (worked === null || places.length !== 3 || !places.every(isPlace)) return null;
  const at = middleOf(places as readonly Place[]) ?? worked;
  const paths = places.map((_, k) => ['center', 'through', k]);
  return { frees: shiftFrees(at, (cut, axis, by) => shifted(cut, paths, axis, by)), at, why: null };
}

/** The centre of the circle through three places, source: MathWorld, "Circumcircle"; null where they lie in a row. */
function middleOf(places: readonly Place[]): Place | null {
  const [a, b, c] = places as [Place, Place, Place];
  const [bx, by, cx, cy] = [b[0] - a[0], b[1] - a[1], c[0] - a[0], c[1] - a[1]];
  const twice = 2 * (bx * cy - by * cx);
  if (twice === 0) return null;
  const [bb, cc] = [bx * bx + by * by, cx * cx + cy * cy];
  return [a[0] + (cy * bb - by * cc) / twice, a[1] + (bx * cc - cx * bb) / twice];
}

/** The forms in which the text of a path is given, by their keys. */
const FORMS: Readonly<Record<string, Reader>> = { svgPath: svgNumbers, wkt: wktNumbers };

/** What is free of a path that is drawn: it goes as a whole. A text keeps its form, and has other numbers in it. */
export function pathMoves(path: JsonObject): Moves | null {
  for (const [key, read] of Object.entries(FORMS)) {
    const text = path[key];
    if (typeof text === 'string') return textMoves(key, text, read);
  }
  return edgeMoves(path);
}

function textMoves(key: string, text: string, read: Reader): Moves | null {
  const at = startOfText(text, read);
  if (at === null) return null;
  const place = ['path', key];
  const frees = shiftFrees(at, (cut, axis, by) => {
    const old = valueAt(cut, place);
    const moved = typeof old === 'string' ? movedText(old, axis === 0 ? [by, 0] : [0, by], read) : null;
    return moved === null ? cut : (withValue(cut, place, moved) as JsonObject);
  });
  return { frees, at, why: null };
}

function edgeMoves({ edges }: JsonObject): Moves | null {
  const list = isList(edges) ? edges.filter(isObject) : [];
  const start = list[0]?.a;
  if (!isPlace(start)) return null;
  const places = list.flatMap((edge, k) =>
    ['a', 'b', 'center'].filter((key) => isPlace(edge[key])).map((key) => ['path', 'edges', k, key]),
  );
  return {
    frees: shiftFrees(start, (cut, axis, by) => shifted(cut, places, axis, by)),
    at: start,
    why: null,
  };
}

function shifted(cut: JsonObject, places: readonly Path[], axis: 0 | 1, by: number): JsonObject {
  return places.reduce((next, path) => {
    const value = valueAt(next, [...path, axis]);
    return typeof value === 'number'
      ? (withValue(next, [...path, axis], tidied(value + by)) as JsonObject)
      : next;
  }, cut);
}
