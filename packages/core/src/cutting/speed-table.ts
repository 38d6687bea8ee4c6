import type { Metal } from './material.js';
import type { Range } from './range.js';
import { scaled } from './range.js';
import { inSpeedUnit, type SurfaceSpeedUnit } from './speed.js';
import type { ToolKind, ToolMaterial } from './tool.js';

/** A surface speed as its sources give it. */
export interface SpeedEntry {
  readonly range: Range;
  readonly unit: SurfaceSpeedUnit;
  /** Names of its sources, explained in docs/cutting-numbers.md, or `from memory`. */
  readonly source: string;
}

const ft = (least: number, most: number, source: string): SpeedEntry => ({
  range: [least, most],
  unit: 'ft/min',
  source,
});

const m = (least: number, most: number, source: string): SpeedEntry => ({
  range: [least, most],
  unit: 'm/min',
  source,
});

/** The sheets, as sentences name them. The letters are those of docs/cutting-numbers.md. */
const A = 'teaching table (A)';
const B = 'mill manual (B)';
const C = 'drilling table (C)';
const C_MILLING = 'drilling table plus its 50 % for milling (C)';
const M = 'metric drilling and turning table (M)';
const P = 'carbide end mill table (P)';
const H = 'hole saw table (H)';
const MEMORY = 'from memory';

const both = (...names: string[]): string => names.join(', ');

const DRILL: Readonly<Record<Metal, SpeedEntry>> = {
  'mild steel': m(20, 30, both(M, C)),
  'alloy steel': ft(40, 60, both(B, A)),
  'tool steel': ft(30, 50, both(C, B)),
  'stainless steel': ft(30, 60, both(C, B)),
  'cast iron': ft(50, 80, both(C, B)),
  aluminium: ft(100, 300, both(M, C)),
  brass: ft(150, 200, both(B, C)),
  bronze: ft(100, 150, both(C, B)),
  titanium: ft(30, 50, both(B, `low end ${MEMORY}`)),
};

const END_MILL: Readonly<Record<Metal, SpeedEntry>> = {
  'mild steel': ft(90, 120, both(B, A)),
  'alloy steel': ft(40, 60, both(B, A)),
  'tool steel': ft(45, 50, both(C_MILLING, B)),
  'stainless steel': ft(45, 60, both(C_MILLING, B)),
  'cast iron': ft(50, 80, both(B, A)),
  aluminium: ft(300, 450, both(B, C_MILLING)),
  brass: ft(150, 300, both(B, C_MILLING)),
  bronze: ft(100, 150, both(C, B)),
  titanium: ft(30, 50, both(B, `low end ${MEMORY}`)),
};

/** One edge cuts all the time, as in turning; where the turning table has no figure, the drilling row stands in. */
const BORING: Readonly<Record<Metal, SpeedEntry>> = {
  ...DRILL,
  'mild steel': m(20, 35, M),
  'stainless steel': m(20, 35, M),
  'cast iron': m(30, 35, M),
  brass: m(90, 105, M),
  aluminium: m(150, 180, M),
};

const ANNULAR: Readonly<Record<Metal, SpeedEntry>> = {
  'mild steel': m(25, 30, both(H, `range ${MEMORY}`)),
  'alloy steel': ft(40, 50, MEMORY),
  'tool steel': ft(30, 46, both(`low end ${MEMORY}`, H)),
  'stainless steel': m(10, 18, both(H, `range ${MEMORY}`)),
  'cast iron': ft(56, 62, H),
  brass: ft(116, 123, H),
  bronze: ft(80, 116, MEMORY),
  aluminium: m(40, 60, both(H, `high end ${MEMORY}`)),
  titanium: ft(20, 40, MEMORY),
};

/** Tables of carbide; what is missing here is twice the speed of HSS, as two of the sheets say. */
const CARBIDE: Readonly<Record<ToolKind, Partial<Record<Metal, SpeedEntry>>>> = {
  'end mill': {
    aluminium: ft(400, 1200, P),
    brass: ft(250, 500, P),
    bronze: ft(250, 500, P),
    'cast iron': ft(100, 500, P),
    'mild steel': ft(150, 400, P),
    'stainless steel': ft(200, 400, P),
  },
  'boring head': {
    'mild steel': m(90, 135, M),
    'stainless steel': m(70, 120, M),
    aluminium: m(335, 365, M),
  },
  drill: {},
  'annular cutter': {},
};

const HSS: Readonly<Record<ToolKind, Readonly<Record<Metal, SpeedEntry>>>> = {
  drill: DRILL,
  'end mill': END_MILL,
  'boring head': BORING,
  'annular cutter': ANNULAR,
};

const CARBIDE_FACTOR = 2;

/** The surface speed of a tool in a metal, in the unit of its sources. */
export function speedEntry(kind: ToolKind, toolMaterial: ToolMaterial, metal: Metal): SpeedEntry {
  const hss = HSS[kind][metal];
  if (toolMaterial === 'HSS') return hss;
  const own = CARBIDE[kind][metal];
  if (own !== undefined) return own;
  return {
    ...hss,
    range: scaled(hss.range, CARBIDE_FACTOR),
    source: `twice that of HSS: ${hss.source}`,
  };
}

/** The surface speed of a tool in a metal, in m/min or ft/min; sources in docs/cutting-numbers.md. */
export function surfaceSpeedFor(
  kind: ToolKind,
  toolMaterial: ToolMaterial,
  metal: Metal,
  unit: SurfaceSpeedUnit,
): { readonly range: Range; readonly source: string } {
  const entry = speedEntry(kind, toolMaterial, metal);
  return { range: inSpeedUnit(entry.range, entry.unit, unit), source: entry.source };
}
