/*
 * Room: the job as written: places in it, names that refer to each other, rows that follow their members, its history.
 * In: JSON, and a change of it.
 * Out: the changed JSON, and what of the page goes with it.
 */

/** Plain data as JSON holds it. */
export type Json = null | boolean | number | string | readonly Json[] | JsonObject;

/** An object of plain data. */
export interface JsonObject {
  readonly [key: string]: Json;
}

/** Keys and indices that lead from a job to a value in it. */
export type Path = readonly (string | number)[];

/** Whether a value is an object with keys. */
export function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Whether a value is a list. */
export function isList(value: Json | undefined): value is readonly Json[] {
  return Array.isArray(value);
}

/** The value at a path, or undefined where there is none. */
export function valueAt(root: Json | undefined, path: Path): Json | undefined {
  return path.reduce<Json | undefined>((value, step) => {
    if (isList(value)) return typeof step === 'number' ? value[step] : undefined;
    return isObject(value) && Object.hasOwn(value, step) ? value[step] : undefined;
  }, root);
}

/**
 * The same data with another value at a path; undefined takes an object's key out. Objects that are missing on the
 * way are made. All that is not on the way is shared with the old data.
 */
export function withValue(root: Json | undefined, path: Path, value: Json | undefined): Json {
  const [step, ...rest] = path;
  if (step === undefined) return value ?? null;
  if (typeof step === 'number') {
    const list = isList(root) ? [...root] : [];
    list[step] = withValue(list[step], rest, value);
    return list;
  }
  const object = isObject(root) ? root : {};
  if (rest.length > 0 || value !== undefined) {
    return { ...object, [step]: withValue(object[step], rest, value) };
  }
  return Object.fromEntries(Object.entries(object).filter(([key]) => key !== step));
}

/** The list at a path without one of its members. */
export function withoutMember(root: Json, path: Path, index: number): Json {
  const list = valueAt(root, path);
  return isList(list)
    ? withValue(
        root,
        path,
        list.filter((_, k) => k !== index),
      )
    : root;
}

/** The list at a path with one of its members moved to another place. */
export function withMoved(root: Json, path: Path, from: number, to: number): Json {
  const list = valueAt(root, path);
  const member = isList(list) ? list[from] : undefined;
  if (!isList(list) || member === undefined || to < 0 || to >= list.length) return root;
  const others = list.filter((_, k) => k !== from);
  return withValue(root, path, [...others.slice(0, to), member, ...others.slice(to)]);
}

/** A path as a JSON Pointer (RFC 6901), the form in which faults name their place. */
export function pointerOf(path: Path): string {
  return path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}

/** The path that a JSON Pointer stands for; steps of digits alone are places in lists. */
export function pathOf(pointer: string): Path {
  return pointer
    .split('/')
    .slice(1)
    .map((step) => (/^\d+$/.test(step) ? Number(step) : step.replaceAll('~1', '/').replaceAll('~0', '~')));
}
