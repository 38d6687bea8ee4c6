import { type Check, callable, type Kind, must, num, number, overZero, pair, point, text } from './kinds.js';
import { region } from './region-kind.js';
import { cut, gauges, setup, UNITS } from './shared-kinds.js';

/* Jobs and reports: by what they must have at the top, for the rest the schema of each is there. */

const list: Kind = { listOf: () => null };

const jobHas: Kind = {
  has: {
    units: UNITS,
    outline: region,
    thickness: overZero,
    keep: { orNull: point },
    limits: { has: { web: number, hold: number, breakThrough: number, knifeEdge: number } },
    resolution: overZero,
    cuts: { listOf: cut },
    setups: { listOf: setup },
    keepOuts: { listOf: { has: { region } } },
    tools: list,
    gauges,
    machine: { has: {} },
    document: { has: {} },
  },
};

/** A job that was parsed. */
export const job: Kind = jobHas;

/** A report, by its lists. */
export const report: Kind = {
  has: {
    units: UNITS,
    resolution: overZero,
    outline: list,
    pieces: list,
    webs: list,
    knifeEdges: list,
    floors: list,
    cuts: list,
    steps: list,
    keepOut: list,
  },
};

export const found: Kind = { has: { cuts: list, bodies: list, findings: list, steps: list } };

export const webbed: Kind = { has: { webs: list, resolution: overZero } };

export const edged: Kind = { has: { knifeEdges: list, resolution: overZero } };

export const query: Kind = { has: { from: num, to: num } };

/** Lists and functions of the library's own making. */
export const measurable: Kind = { has: { seats: list, faces: list, beside: callable, near: number } };

export const anyList: Check = (value) =>
  Array.isArray(value) ? null : { at: '', what: 'is not a list', remedy: 'give a list' };

/** The edges of a report, by what is asked of them. */
export const reportEdges: Kind = { listOf: { has: { kind: ['line', 'arc'] } } };

/** What `parseAim` gives. */
export const aim: Kind = {
  has: {
    job,
    finished: region,
    pockets: list,
    layers: list,
    keep: pair,
    drawer: list,
    allowance: number,
    bite: number,
    toolChange: number,
    turning: number,
    ways: overZero,
    document: { has: {} },
  },
};

export const ranked: Kind = { has: { steps: list, findings: list, cuts: list } };

export const map: Check = (value) => (value instanceof Map ? null : must(value, 'be a Map'));

/** The two sources of what lies between. */
export const bothSources: Check = (value) =>
  Array.isArray(value) && value.length === 2 && value.every((one) => typeof one === 'string')
    ? null
    : must(value, 'be a list of two names of sources');

/** What the edges of a part are called. */
export const partNames: Kind = { maybe: { listOf: { has: { of: text, name: text } } } };
