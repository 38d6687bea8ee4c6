import type { Metal, Range, ToolKind } from '@edgebite/core';
import { A, B, C, H, H_SIZES, M_CARBIDE, M_DRILLING, M_TURNING, P_SPEED, R, S } from './sheets.js';

/*
 * What the sheets come to for each tool in each metal: from the lowest figure of the sheets named to the highest. What no
 * sheet has is typed a second time and says `from memory`; that copy only tells of a slip of the hand.
 */

/** A range, and where it is from. */
export interface Figure {
  readonly range: Range;
  readonly unit: 'ft/min' | 'm/min';
  readonly from: 'sheets' | 'from memory';
}

/** From the lowest of some to the highest. */
export function hull(...ranges: readonly Range[]): Range {
  return [Math.min(...ranges.map(([low]) => low)), Math.max(...ranges.map(([, high]) => high))];
}

/** One figure as a range. */
const only = (value: number): Range => [value, value];

/** Low end where the sheets have the high one only, ft/min: from memory. */
const LOW_FROM_MEMORY: Range = only(30);

const times = ([low, high]: Range, factor: number): Range => [low * factor, high * factor];
const feet = (...ranges: readonly Range[]): Figure => ({
  range: hull(...ranges),
  unit: 'ft/min',
  from: 'sheets',
});
const metres = (...ranges: readonly Range[]): Figure => ({
  range: hull(...ranges),
  unit: 'm/min',
  from: 'sheets',
});
const memory = (low: number, high: number, unit: Figure['unit'] = 'ft/min'): Figure => ({
  range: [low, high],
  unit,
  from: 'from memory',
});

/** Of drilling C, milling takes half as much again. */
const milling = (metal: keyof typeof C): Range => times(C[metal], 1.5);

/** m/min as ft/min, to the nearest ten: as figures of a sheet are. */
const asFeet = (metres: number): number => Math.round(metres / 0.3048 / 10) * 10;

/** H: the surface speeds that its turns come to, v = pi D n / 12, in whole ft/min (F. D. Jones, Turning and Boring, 1914). */
export function sawSpeeds(metal: keyof typeof H): Range {
  const speeds = H[metal].map((turns, k) => (Math.PI * (H_SIZES[k] as number) * turns) / 12);
  return [Math.round(Math.min(...speeds)), Math.round(Math.max(...speeds))];
}

const drill: Readonly<Record<Metal, Figure>> = {
  'mild steel': metres(M_DRILLING['mild steel']),
  'alloy steel': feet(B['alloy steel'], A['alloy steel']),
  'tool steel': feet(C['tool steel'], B['tool steel']),
  'stainless steel': feet(C['stainless steel'], B['stainless steel']),
  'cast iron': feet(C['cast iron'], B['cast iron']),
  aluminium: feet(only(asFeet(M_DRILLING.aluminium[0])), C.aluminium),
  brass: feet(B.brass, C.brass),
  bronze: feet(C.bronze, B.bronze),
  titanium: feet(LOW_FROM_MEMORY, B.titanium),
};

/** HSS. */
export const HSS_FIGURES: Readonly<Record<ToolKind, Readonly<Record<Metal, Figure>>>> = {
  drill,
  'end mill': {
    'mild steel': feet(B['mild steel'], A['mild steel']),
    'alloy steel': feet(B['alloy steel'], A['alloy steel']),
    'tool steel': feet(milling('tool steel'), B['tool steel']),
    'stainless steel': feet(milling('stainless steel'), B['stainless steel']),
    'cast iron': feet(B['cast iron'], A['cast iron']),
    aluminium: feet(B.aluminium, milling('aluminium')),
    brass: feet(B.brass, milling('brass')),
    bronze: feet(C.bronze, B.bronze),
    titanium: feet(LOW_FROM_MEMORY, B.titanium),
  },
  'boring head': {
    ...drill,
    'mild steel': metres(M_TURNING['mild steel']),
    'stainless steel': metres(M_TURNING['stainless steel']),
    'cast iron': metres(M_DRILLING['cast iron'], M_TURNING['cast iron']),
    aluminium: metres(M_TURNING.aluminium),
    brass: metres(M_TURNING.brass),
  },
  'annular cutter': {
    'mild steel': memory(25, 30, 'm/min'),
    'alloy steel': memory(40, 50),
    'tool steel': feet(LOW_FROM_MEMORY, only(sawSpeeds('stainless steel')[1])),
    'stainless steel': memory(10, 18, 'm/min'),
    'cast iron': feet(sawSpeeds('cast iron')),
    brass: feet(sawSpeeds('brass')),
    bronze: memory(80, 116),
    aluminium: memory(40, 60, 'm/min'),
    titanium: memory(20, 40),
  },
};

/** Carbide where a sheet has it; all else is twice HSS (A and C). */
export const CARBIDE_FIGURES: Readonly<Partial<Record<ToolKind, Readonly<Partial<Record<Metal, Figure>>>>>> =
  {
    'end mill': {
      aluminium: feet(P_SPEED.aluminium),
      brass: feet(P_SPEED.brass),
      bronze: feet(P_SPEED.bronze),
      'cast iron': feet(P_SPEED['cast iron']),
      'mild steel': feet(P_SPEED['mild steel']),
      'stainless steel': feet(P_SPEED['stainless steel']),
    },
    'boring head': {
      'mild steel': metres(M_CARBIDE['mild steel']),
      'stainless steel': metres(M_CARBIDE['stainless steel']),
      aluminium: metres(M_CARBIDE.aluminium),
    },
  };

/** Densities in g/cm³, from memory, a second time. */
export const DENSITIES: Readonly<Record<string, number>> = {
  'mild steel': 7.85,
  steel: 7.85,
  'tool steel': 7.8,
  'stainless steel': 7.9,
  'cast iron': 7.2,
  aluminium: 2.7,
  aluminum: 2.7,
  brass: 8.5,
  bronze: 8.8,
  copper: 8.96,
  titanium: 4.5,
};

/** Strengths in MPa: of sheets S, by ratio R, or from memory (a second time). */
export const STRENGTHS: Readonly<
  Record<Metal, { readonly shear: Range; readonly yield: number | null; readonly tensile: Range }>
> = {
  'mild steel': {
    shear: [S['A36, soft end'].shear, S['A36, hard end'].shear],
    yield: S['1020 hot rolled'].yield,
    tensile: [S['Q235, soft end'].tensile, S['A36, hard end'].tensile],
  },
  // Tensile and yield from memory.
  'alloy steel': { shear: [600 * R.steel, 1000 * R.steel], yield: 400, tensile: [600, 1000] },
  'tool steel': { shear: [600 * R.steel, 850 * R.steel], yield: 350, tensile: [600, 850] },
  'stainless steel': {
    shear: [S['304 annealed'].tensile * R.steel, S['like 304'].shear],
    yield: S['304 annealed'].yield,
    tensile: [S['304 annealed'].tensile, S['like 304'].shear / R.steel],
  },
  // Tensile from memory.
  'cast iron': { shear: [140 * R['cast iron'], 300 * R['cast iron']], yield: null, tensile: [140, 300] },
  // The soft end, annealed 6061, from memory.
  aluminium: { shear: [83, S['6061-T6'].shear], yield: 55, tensile: [124, S['6061-T6'].tensile] },
  // The soft end from memory.
  brass: {
    shear: [207, S['C36000 half hard'].shear],
    yield: 124,
    tensile: [338, S['C36000 half hard'].tensile],
  },
  // Tensile and yield from memory.
  bronze: { shear: [240 * R['copper alloys'], 450 * R['copper alloys']], yield: 110, tensile: [240, 450] },
  // From memory.
  titanium: { shear: [240, 600], yield: 275, tensile: [345, 1000] },
};
