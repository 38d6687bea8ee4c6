/*
 * Room: what the arguments of public functions must be.
 * In: a value from outside.
 * Out: null, or what is wrong with it, where in it, and what to do.
 */

import type { EdgebiteCode } from '../geometry/edgebite-error.js';

/** What is wrong with a value, and where in it. */
export interface Fault {
  /** As it is written after the name of the value: `.center.x`, `[0].outer`; empty for the value itself. */
  readonly at: string;
  /** What it is, and what it must be: the rest of a sentence that begins with its place. */
  readonly what: string;
  readonly remedy: string;
  readonly code?: EdgebiteCode;
}

/** Looks at a value; null if it will do. */
export type Check = (value: unknown) => Fault | null;

/**
 * What a value must be: as a check says; one of some words; undefined or; null or; a list; a record with these keys, of
 * which others may be refused. Plain data, so that a bundler leaves out what nobody asks for.
 */
export type Kind =
  | Check
  | readonly (string | number)[]
  | { readonly maybe: Kind }
  | { readonly orNull: Kind }
  | { readonly listOf: Kind }
  | { readonly has: Kinds }
  | { readonly only: Kinds };

/** What the values under some names must be. */
export type Kinds = Readonly<Record<string, Kind>>;

/** What is wrong with a value that must be of a kind; null if nothing. */
export function faultIn(kind: Kind, value: unknown): Fault | null {
  if (typeof kind === 'function') return kind(value);
  if (Array.isArray(kind)) return faultOfWord(kind, value);
  if ('maybe' in kind) return value === undefined ? null : faultIn(kind.maybe, value);
  if ('orNull' in kind) return value === null ? null : faultIn(kind.orNull, value);
  if ('listOf' in kind) return faultInList(kind.listOf, value);
  if ('has' in kind) return faultInRecord(kind.has, value);
  return 'only' in kind ? (faultInRecord(kind.only, value) ?? strangeKey(kind.only, value as object)) : null;
}

function faultOfWord(words: readonly (string | number)[], value: unknown): Fault | null {
  if (words.includes(value as string)) return null;
  return must(value, `be ${words.map((word) => JSON.stringify(word)).join(' or ')}`);
}

function faultInList(kind: Kind, value: unknown): Fault | null {
  if (!Array.isArray(value)) return must(value, 'be a list');
  for (let k = 0; k < value.length; k++) {
    const fault = faultIn(kind, value[k]);
    if (fault !== null) return within(`[${k}]`, fault);
  }
  return null;
}

function faultInRecord(kinds: Kinds, value: unknown): Fault | null {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return must(value, `be an object with ${Object.keys(kinds).join(', ')}`);
  for (const key in kinds) {
    const fault = faultIn(kinds[key] as Kind, (value as Record<string, unknown>)[key]);
    if (fault !== null) return within(`.${key}`, fault);
  }
  return null;
}

function strangeKey(kinds: Kinds, value: object): Fault | null {
  const key = Object.keys(value).find((one) => !Object.hasOwn(kinds, one));
  if (key === undefined) return null;
  const what = `is not read; these are: ${Object.keys(kinds).join(', ')}`;
  return { at: `.${key}`, what, remedy: 'leave it out, or write the name that is meant' };
}

/** A fault seen from outside. */
export function within(at: string, fault: Fault): Fault {
  return { ...fault, at: `${at}${fault.at}` };
}

/** The fault of a value that must be or do something. */
export function must(value: unknown, what: string, remedy = `it must ${what}`): Fault {
  return { at: '', what: `is ${shownValue(value)}; it must ${what}`, remedy };
}

/** A value for a sentence; long ones by what they are. */
function shownValue(value: unknown): string {
  if (typeof value === 'string') return value.length > 40 ? 'a long text' : JSON.stringify(value);
  if (typeof value === 'function') return 'a function';
  if (typeof value === 'symbol') return 'a symbol';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  return typeof value === 'object' && value !== null ? 'an object' : String(value);
}

/** A finite number. */
export const number: Check = (value) =>
  typeof value === 'number' && Number.isFinite(value) ? null : must(value, 'be a finite number');

/** A number, of which the function itself says how large it may be, and that it must be finite. */
export const num: Check = (value) => (typeof value === 'number' ? null : must(value, 'be a finite number'));

/** A number up to which something counts; infinite where all of it does. */
export const limit: Check = (value) =>
  typeof value === 'number' && !Number.isNaN(value) ? null : must(value, 'be a number, or Infinity for all');

/** A finite number over 0. */
export const overZero: Check = (value) =>
  number(value) === null && (value as number) > 0 ? null : must(value, 'be a finite number over 0');

/** A finite number, 0 or more. */
export const notNegative: Check = (value) =>
  number(value) === null && (value as number) >= 0 ? null : must(value, 'be a finite number, 0 or more');

/** A number over 0 and under 1. */
export const share: Check = (value) =>
  overZero(value) === null && (value as number) < 1 ? null : must(value, 'be a number over 0 and under 1');

/** A whole number, 0 or more. */
export const count: Check = (value) =>
  Number.isSafeInteger(value) && (value as number) >= 0 ? null : must(value, 'be a whole number, 0 or more');

export const text: Check = (value) => (typeof value === 'string' ? null : must(value, 'be a text'));

export const flag: Check = (value) => (typeof value === 'boolean' ? null : must(value, 'be true or false'));

export const callable: Check = (value) => (typeof value === 'function' ? null : must(value, 'be a function'));

/** Anything: the function itself says what is wrong with it. */
export const anything: Check = () => null;

/** A place in the plane. */
export const point: Check = (value) => {
  if (typeof value === 'object' && value !== null) {
    const { x, y } = value as { x: unknown; y: unknown };
    if (Number.isFinite(x) && Number.isFinite(y)) return null;
    if (typeof x === 'number' && typeof y === 'number') return badPlace(x, y);
  }
  return must(value, 'be a point { x, y } of finite numbers');
};

function badPlace(x: number, y: number): Fault {
  return {
    at: '',
    what: `is (${x}, ${y}); coordinates must be finite numbers`,
    remedy: 'coordinates must be finite numbers',
  };
}

/** A displacement. */
export const vector: Check = (value) => {
  if (typeof value === 'object' && value !== null) {
    const { dx, dy } = value as { dx: unknown; dy: unknown };
    if (Number.isFinite(dx) && Number.isFinite(dy)) return null;
  }
  return must(value, 'be a displacement { dx, dy } of finite numbers');
};

/** Two numbers, as JSON has a place. */
export const pair: Check = (value) =>
  Array.isArray(value) && value.length === 2 && value.every(Number.isFinite)
    ? null
    : must(value, 'be a list of two finite numbers');

/** A least and a most. */
export const range: Check = (value) => {
  const fault = pair(value);
  if (fault !== null) return fault;
  const [least, most] = value as [number, number];
  return least <= most ? null : must(value, 'be a least and a most, in this order');
};
