/* What plain JavaScript may hand to a function, and what may come of it. */

/** Twelve values that are hardly ever what is wanted. */
export const BAD: Readonly<Record<string, unknown>> = {
  undefined,
  null: null,
  NaN: Number.NaN,
  Infinity: Number.POSITIVE_INFINITY,
  '-1': -1,
  '0': 0,
  "''": '',
  "'sideways'": 'sideways',
  true: true,
  '{}': {},
  '[]': [],
  '() => 0': () => 0,
};

/**
 * What an argument is, and so which of the values above are fine for it. A record is looked at key by key, a list by its
 * first item; a question mark lets undefined in, a bar null.
 */
export type What =
  | 'number'
  | 'limit'
  | 'sense'
  | 'over 0'
  | '0 or more'
  | 'text'
  | 'flag'
  | 'word'
  | 'function'
  | 'watch'
  | 'region'
  | 'made'
  | 'made or none'
  | 'id'
  | 'anything'
  | { readonly maybe: What }
  | { readonly orNull: What }
  | { readonly list: What }
  | { readonly some: What }
  | Record_;

/** Keys of a record; those that start with a capital letter are none. */
export interface Record_ {
  readonly keys: Readonly<Record<string, What>>;
}

export const POINT: What = { keys: { x: 'number', y: 'number' } };
export const VECTOR: What = { keys: { dx: 'number', dy: 'number' } };

/** The names of the values that are fine for an argument. */
export function fineFor(what: What): readonly string[] {
  if (typeof what === 'string') return FINE[what] ?? [];
  if ('maybe' in what) return [...fineFor(what.maybe), 'undefined'];
  if ('orNull' in what) return [...fineFor(what.orNull), 'null'];
  if ('list' in what) return ['[]'];
  if ('some' in what) return [];
  return Object.values(what.keys).every((one) => fineFor(one).includes('undefined')) ? ['{}'] : [];
}

const FINE: Readonly<Record<string, readonly string[]>> = {
  number: ['-1', '0'],
  limit: ['-1', '0', 'Infinity'],
  sense: ['-1'],
  'over 0': [],
  '0 or more': ['0'],
  text: ["''", "'sideways'"],
  flag: ['true'],
  word: [],
  function: ['() => 0'],
  watch: ['undefined', '{}', '() => 0'],
  region: ['[]'],
  made: [],
  'made or none': ['[]'],
  id: ["'sideways'"],
  anything: Object.keys(BAD),
};

/** A way to spoil an argument: what it is called, what is put in, and whether it may be fine. */
export interface Spoiled {
  readonly name: string;
  readonly value: unknown;
  readonly fine: boolean;
}

/** An argument with each of the values put in its place, and in that of each value inside of it. */
export function spoiled(what: What, good: unknown): Spoiled[] {
  const fine = fineFor(what);
  const whole = Object.entries(BAD).map(([name, value]) => ({
    name: ` = ${name}`,
    value,
    fine: fine.includes(name),
  }));
  return [...whole, ...inside(what, good)];
}

function inside(what: What, good: unknown): Spoiled[] {
  if (what === 'region') return badRegions(good as readonly Part[]);
  if (typeof what === 'string') return [];
  if ('maybe' in what) return good === undefined ? [] : inside(what.maybe, good);
  if ('orNull' in what) return good === null ? [] : inside(what.orNull, good);
  if ('list' in what || 'some' in what) {
    const [first, ...others] = good as readonly unknown[];
    const item = 'list' in what ? what.list : what.some;
    return spoiled(item, first).map((one) => ({
      ...one,
      name: `[0]${one.name}`,
      value: [one.value, ...others],
    }));
  }
  return Object.entries(what.keys).flatMap(([key, one]) => {
    const record = good as Readonly<Record<string, unknown>>;
    return spoiled(one, record[key]).map(({ name, value, fine }) => ({
      name: `.${key}${name}`,
      value: { ...record, [key]: value },
      fine,
    }));
  });
}

interface Part {
  readonly outer: readonly { readonly a: object; readonly b: object }[];
  readonly holes: readonly unknown[];
}

/** A region with one thing wrong each. */
function badRegions(good: readonly Part[]): Spoiled[] {
  const [part] = good as [Part];
  const [first, ...others] = part.outer as [Part['outer'][number], ...Part['outer'][number][]];
  const withOuter = (outer: readonly unknown[]) => [{ ...part, outer }];
  const back = [...part.outer].reverse().map((edge) => {
    const turned = { ...edge, a: edge.b, b: edge.a };
    return 'ccw' in turned ? { ...turned, ccw: !turned.ccw } : turned;
  });
  const asJson = part.outer.map((edge) =>
    Object.fromEntries(
      Object.entries(edge).map(([key, value]) => [
        key,
        typeof value === 'object' ? Object.values(value) : value,
      ]),
    ),
  );
  const cases: Readonly<Record<string, unknown>> = {
    'a clockwise outer loop': withOuter(back),
    'an open loop': withOuter(others),
    'a coordinate that is not a number': withOuter([{ ...first, a: { x: Number.NaN, y: 0 } }, ...others]),
    'an edge without length': withOuter([{ ...first, b: first.a }, { ...first }, ...others]),
    'an edge of no kind': withOuter([{ ...first, kind: 'spline' }, ...others]),
    'a region of JSON': withOuter(asJson),
    'a part without holes': [{ outer: part.outer }],
    'a bare loop': part.outer,
    'a hole that runs as outer loops do': [{ ...part, holes: [part.outer] }],
  };
  return Object.entries(cases).map(([name, value]) => ({ name: ` = ${name}`, value, fine: false }));
}
