import { type Check, count, faultIn, type Kind, type Kinds, number, overZero, pair, text } from './kinds.js';
import { UNITS } from './shared-kinds.js';

/*
 * A report, as those who draw or print it go by it: every row of every list by what names it and where it is. Whoever has a report
 * from elsewhere has its schema for the rest.
 */

const list: Kind = { listOf: () => null };
const object: Kind = { has: {} };
const place: Kind = { orNull: pair };

export const ROLES = ['kept', 'slug', 'held slug', 'hanging', 'offcut'] as const;
export const LEVELS = ['danger', 'check', 'note'] as const;

const rows: Readonly<Record<string, Kinds>> = {
  outline: { outer: list, holes: list },
  slabs: { from: number, to: number },
  pieces: { id: text, role: ROLES, area: number, bounds: list, view: list, sections: list },
  webs: { thickness: number, at: pair, ends: list, between: list, slab: count },
  knifeEdges: { angle: number, at: pair, between: list },
  floors: { thickness: number, area: number, at: pair, slab: count },
  steps: { cut: text, diameter: number, center: place, findings: list, frees: list, targets: list },
  bodies: { id: text, role: text, step: count, pieces: list },
  merges: { step: count, cuts: list, at: place },
  cuts: { id: text, kind: text, diameter: overZero, depth: number, footprint: list, bites: list },
  checks: { cut: text, center: pair, radius: number, ways: list },
  setups: {
    id: text,
    turn: number,
    readout: object,
    heights: object,
    zero: object,
    cuts: list,
    targets: list,
  },
  keepOut: { id: text, kind: text, region: list },
  findings: { level: LEVELS, code: text, message: text, at: place, about: list },
  cautions: { code: text, message: text, about: list },
  names: { of: text, name: text },
  seams: {},
};

const head: Kinds = {
  units: UNITS,
  name: text,
  thickness: number,
  resolution: overZero,
  material: { orNull: text },
  massUnit: { orNull: ['g', 'lb'] },
  removedArea: number,
  removedVolume: number,
  limits: { has: { web: number, hold: number, knifeEdge: number, breakThrough: number } },
};

/** A whole report. */
export const wholeReport: Check = (value) => {
  const fault = faultIn({ has: head }, value);
  if (fault !== null) return fault;
  const report = value as Readonly<Record<string, unknown>>;
  for (const key in rows) {
    const inRows = faultIn({ has: { [key]: { listOf: { has: rows[key] as Kinds } } } }, report);
    if (inRows !== null) return inRows;
  }
  return null;
};
