import { isList, isObject, type Json, type JsonObject } from '../document/json.js';

/** What a field measures, as its schema says: `length`, `degree`, or the unit itself; null where it says nothing. */
export type Measure = string | null;

/** A named part of an object. */
export interface Field {
  readonly key: string;
  readonly schema: JsonObject;
  readonly optional: boolean;
}

/** A way in which a value can be given, out of several. */
export interface Variant {
  readonly name: string;
  readonly schema: JsonObject;
}

/** How a form shows a part of a schema. */
export type Shape =
  | { readonly kind: 'entry'; readonly measure: Measure; readonly numeric: boolean }
  | { readonly kind: 'choice'; readonly options: readonly Json[] }
  | { readonly kind: 'fixed'; readonly value: Json }
  | { readonly kind: 'yes-no' }
  | { readonly kind: 'object'; readonly fields: readonly Field[] }
  | { readonly kind: 'row'; readonly members: readonly JsonObject[] }
  | { readonly kind: 'list'; readonly member: JsonObject }
  | { readonly kind: 'variants'; readonly variants: readonly Variant[] };

const objectsOf = (value: Json | undefined): JsonObject[] => (isList(value) ? value.filter(isObject) : []);

// Schemas never change, and are asked at every key. A part of one belongs to no other.
const shapes = new WeakMap<JsonObject, Shape>();
const whole = new WeakMap<JsonObject, JsonObject>();
const known = new WeakMap<JsonObject, readonly Field[]>();

/** What a schema comes to: made once. */
function once<T>(made: WeakMap<JsonObject, T>, schema: JsonObject, make: () => T): T {
  const before = made.get(schema);
  if (before !== undefined) return before;
  const value = make();
  made.set(schema, value);
  return value;
}

/** The schema itself, with its references followed; what stands beside a reference is kept. */
export function resolved(schema: JsonObject, root: JsonObject): JsonObject {
  return typeof schema.$ref === 'string' ? once(whole, schema, () => followed(schema, root)) : schema;
}

function followed(schema: JsonObject, root: JsonObject): JsonObject {
  const { $ref, ...beside } = schema;
  if (typeof $ref !== 'string') return schema;
  const defs = isObject(root.$defs) ? root.$defs : {};
  const target = defs[$ref.replace('#/$defs/', '')];
  return isObject(target) ? { ...resolved(target, root), ...beside } : beside;
}

/** How a form shows a schema. Shapes are told by what the schema says, so that new keys need no new form. */
export function shapeOf(schema: JsonObject, root: JsonObject): Shape {
  return once(shapes, schema, () => readShape(schema, root));
}

function readShape(given: JsonObject, root: JsonObject): Shape {
  const schema = resolved(given, root);
  const branches = [...objectsOf(schema.oneOf), ...objectsOf(schema.anyOf)];
  if (branches.length > 0) return unionShape(branches, root);
  if (schema.const !== undefined) return { kind: 'fixed', value: schema.const };
  if (isList(schema.enum)) return { kind: 'choice', options: schema.enum };
  if (schema.type === 'boolean') return { kind: 'yes-no' };
  if (schema.type === 'object') return { kind: 'object', fields: fieldsOf(schema) };
  if (schema.type === 'array') {
    const members = objectsOf(schema.prefixItems);
    if (members.length > 0) return { kind: 'row', members };
    return { kind: 'list', member: isObject(schema.items) ? schema.items : {} };
  }
  const numeric = schema.type === 'number' || schema.type === 'integer';
  return { kind: 'entry', measure: measureOf(schema), numeric };
}

function unionShape(given: readonly JsonObject[], root: JsonObject): Shape {
  const branches = given.map((branch) => resolved(branch, root)).filter(({ type }) => type !== 'null');
  const scalar = branches.every(({ type }) => type !== 'object' && type !== 'array');
  if (scalar) {
    const options = branches.flatMap((branch) => (branch.const === undefined ? [] : [branch.const]));
    if (options.length === branches.length) return { kind: 'choice', options };
    const measure = branches.map(measureOf).find((found) => found !== null) ?? null;
    return { kind: 'entry', measure, numeric: false };
  }
  return {
    kind: 'variants',
    variants: branches.map((schema) => ({ name: nameOf(schema, branches, root), schema })),
  };
}

function fieldsOf(schema: JsonObject): readonly Field[] {
  return once(known, schema, () => readFields(schema));
}

function readFields(schema: JsonObject): readonly Field[] {
  const required = isList(schema.required) ? schema.required : [];
  const properties = isObject(schema.properties) ? Object.entries(schema.properties) : [];
  return properties.flatMap(([key, of]) =>
    isObject(of) ? [{ key, schema: of, optional: !required.includes(key) }] : [],
  );
}

function measureOf(schema: JsonObject): Measure {
  const { $comment } = schema;
  return typeof $comment === 'string' && $comment.startsWith(UNIT) ? $comment.slice(UNIT.length) : null;
}

/** How the schema says the unit of a number: JSON Schema has no word for it, and strict readers take no other. */
const UNIT = 'unit: ';

// An object is called by its kind, else by the needed key that sets it apart from the other branches.
function nameOf(schema: JsonObject, branches: readonly JsonObject[], root: JsonObject): string {
  if (schema.type === 'array') return 'point';
  if (schema.type !== 'object') return schema.type === 'string' ? 'words' : String(schema.type ?? 'value');
  const tag = fieldsOf(schema).find(
    (field) => resolved(field.schema, root).const !== undefined && !field.optional,
  );
  if (tag !== undefined) return String(resolved(tag.schema, root).const);
  const others = new Set(branches.filter((branch) => branch !== schema).flatMap(neededKeys));
  const needed = neededKeys(schema);
  return needed.find((key) => !others.has(key)) ?? needed[0] ?? 'other';
}

const neededKeys = (schema: JsonObject): string[] =>
  fieldsOf(schema).flatMap(({ key, optional }) => (optional ? [] : [key]));

/** Which of the variants a value is meant to be; the first where none fits better. */
export function variantOf(value: Json | undefined, variants: readonly Variant[], root: JsonObject): number {
  const fits = variants.map(({ schema }) => fit(value, schema, root));
  return Math.max(fits.indexOf(Math.max(...fits)), 0);
}

function fit(value: Json | undefined, schema: JsonObject, root: JsonObject): number {
  if (schema.type === 'array') return isList(value) ? 2 : -1;
  if (schema.type !== 'object') return isObject(value) || isList(value) ? -1 : 1;
  if (!isObject(value)) return -1;
  return fieldsOf(schema).reduce((sum, field) => {
    const held = value[field.key];
    const tag = resolved(field.schema, root).const;
    if (held === undefined) return sum - (field.optional ? 0 : tag === undefined ? 5 : 10);
    if (tag !== undefined) return sum + (held === tag ? 10 : -10);
    return sum + 1;
  }, 0);
}

/**
 * A value of a schema to begin with. What only its maker can know is left empty, and named as a fault until it is
 * filled in.
 */
export function blankOf(schema: JsonObject, root: JsonObject, like: Json | undefined = undefined): Json {
  const shape = shapeOf(schema, root);
  switch (shape.kind) {
    case 'fixed':
      return shape.value;
    case 'choice':
      return shape.options[0] ?? '';
    case 'yes-no':
      return false;
    case 'entry':
      return '';
    case 'list':
      return [];
    case 'row':
      return shape.members.map((member) => blankOf(member, root));
    case 'variants':
      return blankOf(shape.variants[0]?.schema ?? {}, root, like);
    case 'object':
      return blankObject(shape.fields, root, like);
  }
}

/** What is put where an optional part is begun: a list with its first member, so that there is something to fill in. */
export function begunOf(schema: JsonObject, root: JsonObject): Json {
  const shape = shapeOf(schema, root);
  return shape.kind === 'list' ? [blankOf(shape.member, root)] : blankOf(schema, root);
}

// What the old value has under the same key and of the same kind is carried over.
function blankObject(fields: readonly Field[], root: JsonObject, like: Json | undefined): JsonObject {
  return Object.fromEntries(
    fields.flatMap(({ key, schema, optional }) => {
      const old = isObject(like) ? like[key] : undefined;
      const tag = resolved(schema, root).const;
      if (old !== undefined && tag === undefined) return [[key, old]];
      return optional ? [] : [[key, blankOf(schema, root)]];
    }),
  );
}
