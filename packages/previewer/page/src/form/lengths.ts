import { tidied } from '../board/snap.js';
import {
  isList,
  isObject,
  type Json,
  type JsonObject,
  type Path,
  pointerOf,
  withValue,
} from '../document/json.js';
import { INCH, unitIn } from '../document/place.js';
import { svgNumbers } from '../move/path-text.js';
import { type Reader, scaledText } from '../move/text-numbers.js';
import { wktNumbers } from '../move/wkt-text.js';
import { resolved, shapeOf, variantOf } from './shape.js';

/** A length of a job, or a text that holds some. */
export interface Length {
  readonly path: Path;
  readonly value: number | string;
}

/** The forms in which texts hold lengths, by their keys. */
const TEXTS: Readonly<Record<string, Reader>> = { svgPath: svgNumbers, wkt: wktNumbers };

/** All lengths of a job, as its schema marks them. */
export function lengthsOf(job: Json, root: JsonObject): readonly Length[] {
  return lengthsIn(job, root, root, []);
}

function lengthsIn(
  value: Json | undefined,
  schema: JsonObject,
  root: JsonObject,
  path: Path,
): readonly Length[] {
  const shape = shapeOf(schema, root);
  switch (shape.kind) {
    case 'entry':
      return isLength(value, shape.measure, path) ? [{ path, value }] : [];
    case 'row':
      return isList(value)
        ? shape.members.flatMap((member, k) => lengthsIn(value[k], member, root, [...path, k]))
        : [];
    case 'list':
      return isList(value)
        ? value.flatMap((member, k) => lengthsIn(member, shape.member, root, [...path, k]))
        : [];
    case 'object':
      return isObject(value)
        ? shape.fields.flatMap(({ key, schema: of }) => lengthsIn(value[key], of, root, [...path, key]))
        : [];
    case 'variants': {
      const variant = shape.variants[variantOf(value, shape.variants, root)];
      return variant === undefined ? [] : lengthsIn(value, resolved(variant.schema, root), root, path);
    }
    default:
      return [];
  }
}

function isLength(value: Json | undefined, measure: string | null, path: Path): value is number | string {
  if (typeof value === 'number') return measure === 'length';
  return typeof value === 'string' && Object.hasOwn(TEXTS, String(path.at(-1)));
}

/** The lengths that would be in another unit, once a value of `units` is put in a place. */
export function concerned(job: Json, next: Json, root: JsonObject): readonly Length[] {
  return lengthsOf(job, root).filter(({ path }) => {
    const pointer = pointerOf(path);
    return unitIn(job, pointer) !== unitIn(next, pointer);
  });
}

/** The next job with those lengths turned into the unit that they have there, to nine decimals. */
export function converted(next: Json, lengths: readonly Length[]): Json {
  return lengths.reduce<Json>((job, { path, value }) => {
    const factor = unitIn(next, pointerOf(path)) === 'mm' ? INCH : 1 / INCH;
    if (typeof value === 'number') return withValue(job, path, tidied(value * factor));
    const read = TEXTS[String(path.at(-1))];
    const text = read === undefined ? null : scaledText(value, factor, read);
    return text === null ? job : withValue(job, path, text);
  }, next);
}
