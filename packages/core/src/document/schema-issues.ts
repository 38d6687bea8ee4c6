import type { z } from 'zod';
import { choices, described } from './described.js';
import { type JobIssue, pointer } from './errors.js';
import { isForbiddenKey } from './plain.js';
import { SHAPE_KEYS } from './schema.js';
import { choiceAt } from './union-choice.js';

type SchemaIssue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/**
 * How a document is parsed: without the code that zod writes for a schema when it first parses. Writing it takes up to half of the
 * first parse, and later ones are no faster for it.
 */
export const INTERPRETED = { jitless: true } as const;

/** What the schema found wrong with a job, in plain words. */
export function schemaIssues(root: unknown, issues: readonly SchemaIssue[], base: Path = []): JobIssue[] {
  return issues.flatMap((issue) => {
    const path = [...base, ...issue.path];
    if (issue.code === 'invalid_union') return unionIssues(root, issue, path);
    if (issue.code === 'unrecognized_keys') return unknownKeys(issue.keys, path);
    return [{ path: pointer(path), message: sentence(issue, valueAt(root, path)) }];
  });
}

function unknownKeys(keys: readonly string[], path: Path): JobIssue[] {
  return keys
    .filter((key) => !isForbiddenKey(key))
    .map((key) => ({
      path: pointer([...path, key]),
      message: 'is not a key that belongs here; check its spelling',
    }));
}

/** Of a value that could be one of several things: what is wrong with it as the one that it is meant to be. */
function unionIssues(root: unknown, issue: SchemaIssue & { code: 'invalid_union' }, path: Path): JobIssue[] {
  const value = valueAt(root, path);
  const say = (message: string): JobIssue[] => [{ path: pointer(path), message }];
  if ('options' in issue && issue.options !== undefined) {
    return say(
      `${value === undefined ? 'is missing; it must' : 'must'} be ${choices(issue.options)}${itIs(value)}`,
    );
  }
  if (path.at(-1) === 'depth') return say(`must be a length or "through"${itIs(value)}`);
  const choice = choiceAt(path);
  const isObject = typeof value === 'object' && value !== null && !Array.isArray(value);
  if (choice?.plain !== undefined && !(choice.keys !== undefined && isObject)) {
    if (choice.list !== undefined && Array.isArray(value)) {
      return schemaIssues(root, issue.errors[choice.list] ?? [], path);
    }
    return say(`must be ${choice.plain}${itIs(value)}`);
  }
  if (choice?.point === true && Array.isArray(value)) {
    return schemaIssues(root, issue.errors[0] ?? [], path);
  }
  const keys: readonly string[] = choice?.keys ?? SHAPE_KEYS;
  const rule = keys.length === 1 ? `the key ${choices(keys)}` : `exactly one of the keys ${choices(keys)}`;
  const place = choice?.point === true ? 'a place [x, y] or ' : '';
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return say(
      value === undefined
        ? `is missing; ${place}an object with ${rule} is needed`
        : `must be ${place}an object with ${rule}${itIs(value)}`,
    );
  }
  const present = keys.filter((key) => Object.hasOwn(value, key));
  const [key] = present;
  if (key === undefined || present.length > 1) {
    return say(
      `must have ${rule}; it has ${key === undefined ? 'none' : choices(present).replace(' or ', ' and ')}`,
    );
  }
  const branch = keys.indexOf(key) + (choice?.point === true || choice?.plain !== undefined ? 1 : 0);
  return schemaIssues(root, issue.errors[branch] ?? [], path);
}

function sentence(issue: SchemaIssue, value: unknown): string {
  switch (issue.code) {
    case 'invalid_type':
      return wrongType(issue.expected, value);
    case 'invalid_value':
      return `${value === undefined ? 'is missing; it must' : 'must'} be ${choices(issue.values)}${itIs(value)}`;
    case 'too_small':
      return tooSmall(issue, value);
    case 'too_big':
      return sized(value, 'at most', issue.maximum);
    default:
      return issue.message;
  }
}

const TYPE_NAMES: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'a text',
  boolean: 'true or false',
  object: 'an object',
  array: 'a list',
  tuple: 'a list',
};

function wrongType(expected: string, value: unknown): string {
  const type = TYPE_NAMES[expected] ?? expected;
  if (value === undefined) return `is missing; ${type} is needed`;
  return `must be ${typeof value === 'number' && expected === 'number' ? 'a finite number' : type}${itIs(value)}`;
}

function tooSmall(issue: SchemaIssue & { code: 'too_small' }, value: unknown): string {
  if (typeof value === 'number' && value <= 0 && issue.minimum >= 0) {
    const isZeroAllowed = issue.inclusive === true && Number(issue.minimum) === 0;
    return `must be ${isZeroAllowed ? '0 or more' : 'over 0'}${itIs(value + 0)}`;
  }
  if (value === '') return 'must not be empty';
  return sized(value, 'at least', issue.minimum);
}

/** A sentence about the size of a number, or the length of a text or list. */
function sized(value: unknown, rule: 'at least' | 'at most', limit: number | bigint): string {
  const one = Number(limit) === 1;
  if (typeof value === 'string') {
    return `must have ${rule} ${limit} ${one ? 'character' : 'characters'}; it has ${value.length}`;
  }
  if (Array.isArray(value)) {
    return `must have ${rule} ${limit} ${one ? 'entry' : 'entries'}; it has ${value.length}`;
  }
  return `must be ${rule} ${limit}${itIs(value)}`;
}

function itIs(value: unknown): string {
  return value === undefined ? '' : `; it is ${described(value)}`;
}

function valueAt(root: unknown, path: Path): unknown {
  let value = root;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}
