/** Whole numbers from 0 to below `limit` that look random; the same seed gives the same ones. */
export type Dice = (limit: number) => number;

/** Dice after "mulberry32", a 32-bit mixer in the public domain (T. Ettinger 2017, from memory). */
export function dice(seed: number): Dice {
  let state = seed >>> 0;
  return (limit) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) % limit;
  };
}

type Json = unknown;

/** A value inside a document, and what holds it. */
interface Spot {
  readonly holder: Record<string | number, Json>;
  readonly key: string | number;
}

/** Numbers at which code goes wrong: zeros, edges of what doubles can hold, limits of the format, third parts. */
const NUMBERS = [
  0,
  -0,
  -1,
  1,
  2,
  0.1,
  1 / 3,
  1e-6,
  1e-7,
  1e-300,
  5e-324,
  1e7,
  1.0000001e7,
  1e9,
  1e154,
  1e308,
  -1e308,
  2 ** 53,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  90,
  360,
  -0.0005,
  12,
  100_001,
];

const TEXTS = [
  '',
  ' ',
  'through',
  'bottom',
  'bore',
  'mm',
  'inch',
  'zero',
  'left',
  'top',
  'front',
  'the stop',
  '__proto__',
  'constructor',
  'NaN',
  '1',
  'outline:0',
  'hole:0:0',
  'cut:cut-1',
  'M0 0H10',
  'M0 0 A5 5 0 0 1 5 5 Z',
  'M0 0 Q1 1 2 2',
  'MNaN 0 L1 1',
  'M1e999 0',
  'POLYGON ((0 0, 9 0, 9 9, 0 0))',
  'CIRCULARSTRING (0 0, 1 1, 2 0)',
  'CURVEPOLYGON EMPTY',
  '\u0000',
  '\ud800',
  'x'.repeat(300),
];

/** Values of the wrong kind, and such that careless code takes for plain data. */
const ODD: readonly (() => Json)[] = [
  () => null,
  () => undefined,
  () => true,
  () => [],
  () => ({}),
  () => [[[[]]]],
  () => JSON.parse('{"__proto__": {"polluted": 1}}'),
  () => JSON.parse('{"constructor": {"prototype": {"polluted": 1}}}'),
  () => Object.create({ polluted: 1 }),
  () => new Date(0),
  () => 10n,
  () => Symbol.iterator,
  () => () => 1,
  () => new Array(5),
  () => Number.MAX_VALUE,
];

/** Keys of other shapes and cuts, and such that reach a prototype. */
const KEYS = [
  'diameter',
  'wall',
  'depth',
  'center',
  'radius',
  'holes',
  'at',
  'corner',
  'angle',
  'svgPath',
  'wkt',
  'edges',
  'keep',
  'limits',
  'setups',
  'keepOut',
  'reach',
  'from',
  'toString',
  '__proto__',
  'prototype',
  'length',
  'near',
  'flip',
  'touch',
  'tip',
  'stops',
];

/** A document with one to four things in it changed. The document itself stays as it is. */
export function mutated(document: Json, roll: Dice): Json {
  const copy = { root: structuredClone(document) };
  for (let n = 1 + roll(roll(4) + 1); n > 0; n--) {
    const spots = spotsOf(copy);
    const spot = spots[roll(spots.length)];
    if (spot === undefined) break;
    CHANGES[roll(CHANGES.length)]?.(spot, roll, spots);
  }
  return copy.root;
}

/** Text of a document with some characters lost, doubled, swapped or replaced. */
export function garbled(text: string, roll: Dice): string {
  let out = text;
  for (let n = 1 + roll(4); n > 0; n--) {
    const at = roll(out.length + 1);
    const end = Math.min(out.length, at + 1 + roll(6));
    const put = [
      '',
      out.slice(at, end).repeat(2),
      String.fromCharCode(32 + roll(95)),
      '-',
      '9',
      'e',
      '"',
      '{',
      '[',
      ',',
      '\\',
    ];
    out = out.slice(0, at) + put[roll(put.length)] + out.slice(end);
  }
  return out;
}

type Change = (spot: Spot, roll: Dice, spots: readonly Spot[]) => void;

const put = ({ holder, key }: Spot, value: Json): void => {
  holder[key] = value;
};

const CHANGES: readonly Change[] = [
  (spot, roll) => put(spot, NUMBERS[roll(NUMBERS.length)]),
  (spot, roll) => put(spot, TEXTS[roll(TEXTS.length)]),
  (spot, roll) => put(spot, ODD[roll(ODD.length)]?.()),
  // A number near what it was: a part that is all but right.
  nudged,
  nudged,
  nudged,
  ({ holder, key }) => {
    if (Array.isArray(holder)) holder.splice(Number(key), 1);
    else delete holder[key];
  },
  ({ holder, key }) => {
    if (Array.isArray(holder)) holder.splice(Number(key), 0, structuredClone(plain(holder[key])));
  },
  (spot, roll, spots) => {
    const other = spots[roll(spots.length)] as Spot;
    put(spot, structuredClone(plain(other.holder[other.key])));
  },
  ({ holder }, roll) => {
    const key = KEYS[roll(KEYS.length)] as string;
    if (!Array.isArray(holder)) Object.defineProperty(holder, key, OWN(NUMBERS[roll(NUMBERS.length)]));
  },
  ({ holder, key }, roll) => {
    const text = holder[key];
    if (typeof text === 'string' && text !== '') holder[key] = garbled(text, roll);
  },
];

const OWN = (value: Json): PropertyDescriptor => ({
  value,
  enumerable: true,
  writable: true,
  configurable: true,
});

function nudged({ holder, key }: Spot, roll: Dice): void {
  const value = holder[key];
  if (typeof value !== 'number') return;
  const ways = [
    -value,
    value * 2,
    value / 2,
    value + 1,
    value - 1,
    value + 1e-6,
    value * (1 + 1e-9),
    value + roll(50),
  ];
  holder[key] = ways[roll(ways.length)] as number;
}

/** Functions and the like cannot be copied; they stay where they are. */
function plain(value: Json): Json {
  try {
    return structuredClone(value);
  } catch {
    return null;
  }
}

function spotsOf(holder: Record<string | number, Json>, depth = 0): Spot[] {
  return Object.keys(holder).flatMap((key) => {
    const value = holder[key];
    const inner =
      typeof value === 'object' && value !== null && depth < 12
        ? spotsOf(value as Record<string, Json>, depth + 1)
        : [];
    return [{ holder, key: Array.isArray(holder) ? Number(key) : key }, ...inner];
  });
}
