import { DOINGS } from '../cutting/doing.js';
import { METALS } from '../cutting/material.js';
import { TOOL_KINDS } from '../cutting/tool.js';
import {
  type Check,
  callable,
  type Fault,
  faultIn,
  flag,
  type Kind,
  type Kinds,
  must,
  num,
  number,
  overZero,
  point,
  range,
  text,
  vector,
  within,
} from './kinds.js';
import { edge, edges, path, region } from './region-kind.js';

/* What arguments of several functions must be. */

export const UNITS = ['mm', 'inch'] as const;
export const SIDES = ['outside', 'inside'] as const;

/** Several regions. */
export const regions: Kind = { listOf: region };

/** A box along the axes. */
export const box: Kind = { has: { minX: number, minY: number, maxX: number, maxY: number } };

/** An arc. */
export const arc: Check = (value) =>
  edge(value) ??
  ((value as { kind: unknown }).kind === 'arc'
    ? null
    : within('.kind', must((value as { kind: unknown }).kind, 'be "arc"')));

/** A line. */
export const line: Check = (value) =>
  edge(value) ??
  ((value as { kind: unknown }).kind === 'line'
    ? null
    : within('.kind', must((value as { kind: unknown }).kind, 'be "line"')));

/** One of several kinds of record, told apart by the word under a key. */
export function byWord(key: string, records: Readonly<Record<string, Kinds>>): Check {
  return (value): Fault | null => {
    const head = faultIn({ has: { [key]: Object.keys(records) } }, value);
    if (head !== null) return head;
    const word = (value as Record<string, string>)[key] as string;
    return faultIn({ has: records[word] as Kinds }, value);
  };
}

/** A place of which the function itself says that it must be finite. */
export const loosePoint: Kind = { has: { x: num, y: num } };

/** Edges as they are drawn: of the right form, whatever is wrong with their places. */
export const drawn: Kind = {
  listOf: (value) =>
    byWord('kind', {
      line: { a: loosePoint, b: loosePoint, source: { maybe: text } },
      arc: {
        ...{ a: loosePoint, b: loosePoint, center: loosePoint },
        ...{ radius: number, ccw: flag, source: { maybe: text } },
      },
    })(value),
};

const everyCut: Kinds = { id: text, diameter: overZero };

/** A cut, as jobs that were parsed have it. */
export const cut: Check = (value) =>
  byWord('kind', {
    bore: { ...everyCut, center: point },
    annular: { ...everyCut, center: point, wall: overZero },
    swept: { ...everyCut, path },
  })(value);

export const annularCut: Kind = {
  has: { kind: ['annular'], id: text, center: point, diameter: overZero, wall: overZero },
};

/** A tool by the circles that it cuts within. */
export const roundTool: Check = (value) =>
  byWord('kind', {
    circle: { center: loosePoint, radius: num },
    ring: { center: loosePoint, radius: num, inner: num },
  })(value);

export const layers: Kind = { listOf: { has: { from: number, to: number, metal: region } } };

export const sections: Kind = { listOf: { has: { from: number, to: number, region } } };

export const circle: Kind = { has: { center: point, radius: overZero } };

const spans: Kind = { listOf: { has: { from: number, to: number } } };

export const seat: Kind = { has: { cut: text, center: point, radius: overZero, spans } };

/** Of a seat what pins need of it. */
export const seatOfPins: Kind = { has: { radius: overZero, spans } };

const face: Kinds = { face: { has: { source: text, at: point, into: vector } } };

/** A way to measure an arc. */
export const way: Check = (value) =>
  byWord('kind', {
    depth: face,
    left: face,
    'to pins': { ...face, pin: overZero, pins: [1, 2] },
    'pins out': { ...face, pin: overZero, pins: [1, 2] },
    'over pins': { ...face, pin: overZero, pins: [1, 2] },
    opening: { ...face, under: number },
    across: { along: vector },
    height: { chord: overZero },
    round: { source: text, center: point, radius: overZero },
    wall: { cut: text, center: point, radius: overZero },
  })(value);

export const gauges: Kind = {
  has: {
    pins: { listOf: overZero },
    balls: { listOf: overZero },
    feet: { listOf: overZero },
    shortest: number,
  },
};

export const dial: Kind = { has: { step: overZero, on: ['diameter', 'radius'] } };

export const outlinePlace: Kind = {
  has: { part: number, hole: { orNull: number }, edge: number, share: number },
};

export const stretch: Kind = { has: { from: outlinePlace, to: outlinePlace } };

export const metal: Kind = METALS;
export const toolKind: Kind = TOOL_KINDS;
export const doing: Kind = DOINGS;

export const strength: Kind = {
  has: { shear: range, yield: { orNull: number }, tensile: range },
};

export const link: Kind = {
  has: {
    kind: ['touch', 'dial in', 'set', 'move', 'block', 'measured', 'bears'],
    length: { orNull: number },
    by: number,
    units: UNITS,
    way: [1, -1],
    tolerance: { orNull: number },
  },
};

export const sizeTolerance: Kind = { orNull: number };

export const grade: Kind = { orNull: ['f', 'm', 'c', 'v'] };

const zero: Kind = { has: { at: number, links: { listOf: link } } };

export const lie: Kind = { has: { flip: { orNull: ['x', 'y'] }, turn: number } };

/** A setup, as jobs that were parsed have it. */
export const setup: Kind = {
  has: {
    lie,
    readout: { has: { units: UNITS, resolution: overZero } },
    zero: { has: { x: zero, y: zero, z: { orNull: zero } } },
  },
};

export const axes: Kind = { has: { x: vector, y: vector } };

const zeroSize: Kind = { has: { offset: number } };

/** What `laid` gives. */
export const lay: Kind = {
  has: { setup, part: { has: { units: UNITS } }, axes, x: zeroSize, y: zeroSize, z: { orNull: zeroSize } },
};

export const loadNames: Kind = { has: { tool: text, cut: text, length: callable, thing: callable } };

export const wordings: Kind = { has: { length: callable, thing: callable } };

export const keepOuts: Kind = { listOf: { has: { id: text, region, from: number, to: number } } };

/** A path with its leads. */
export const pass: Kind = { has: { leadIn: edges, cut: path, leadOut: edges } };
