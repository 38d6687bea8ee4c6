import type { Metal } from './material.js';
import type { Range } from './range.js';

/** How strong a metal is, MPa (N/mm²). */
export interface Strength {
  /** Stress at which it shears off. */
  readonly shear: Range;
  /** Least stress at which it starts to bend for good; null for a metal that breaks before it bends. */
  readonly yield: number | null;
  /** Tensile strength. */
  readonly tensile: Range;
  /** Names of its sources, explained in docs/cutting-numbers.md, or `from memory`. */
  readonly source: string;
}

/** MPa in a ksi: a pound-force is 4.4482216152605 N, a square inch 645.16 mm² (both exact). */
export const MPA_PER_KSI = 4448.2216152605 / 645.16;

const ksi = (value: number): number => value * MPA_PER_KSI;

const ratio = ([least, most]: Range, factor: number): Range => [least * factor, most * factor];

/**
 * Shear strength as a share of tensile strength (after Deutschman and others, Machine Design, 1975). The page that
 * hands it on calls the share of copper alloys doubtful.
 */
const SHEAR_SHARE = { steel: 0.75, 'cast iron': 1.3, 'copper alloy': 0.65 } as const;

const TOOL_STEEL: Range = [600, 850];
const ALLOY_STEEL: Range = [600, 1000];
const CAST_IRON: Range = [140, 300];
const BRONZE: Range = [240, 450];

const STRENGTH: Readonly<Record<Metal, Strength>> = {
  'mild steel': {
    shear: [ksi(41), ksi(56)],
    yield: ksi(30),
    tensile: [375, ksi(80)],
    source: 'SAE 1020, A36 and Q235 (S)',
  },
  'alloy steel': {
    shear: ratio(ALLOY_STEEL, SHEAR_SHARE.steel),
    yield: 400,
    tensile: ALLOY_STEEL,
    source: 'tensile and yield from memory, shear by ratio (R)',
  },
  'tool steel': {
    shear: ratio(TOOL_STEEL, SHEAR_SHARE.steel),
    yield: 350,
    tensile: TOOL_STEEL,
    source: 'tensile and yield from memory, shear by ratio (R)',
  },
  'stainless steel': {
    shear: [515 * SHEAR_SHARE.steel, 550],
    yield: 205,
    tensile: [515, 550 / SHEAR_SHARE.steel],
    source: '304 annealed and a like grade (S), shear by ratio (R)',
  },
  'cast iron': {
    shear: ratio(CAST_IRON, SHEAR_SHARE['cast iron']),
    yield: null,
    tensile: CAST_IRON,
    source: 'tensile from memory, shear by ratio (R)',
  },
  aluminium: {
    shear: [83, 207],
    yield: 55,
    tensile: [124, 310],
    source: 'strong end 6061-T6 (S), soft end annealed 6061 from memory',
  },
  brass: {
    shear: [207, 234],
    yield: 124,
    tensile: [338, 380],
    source: 'strong end C36000 half hard (S), soft end from memory',
  },
  bronze: {
    shear: ratio(BRONZE, SHEAR_SHARE['copper alloy']),
    yield: 110,
    tensile: BRONZE,
    source: 'tensile and yield from memory, shear by a doubtful ratio (R)',
  },
  titanium: {
    shear: [240, 600],
    yield: 275,
    tensile: [345, 1000],
    source: 'from memory',
  },
};

/** How strong a metal is, MPa, from the softest usual grade to the hardest; sources in docs/cutting-numbers.md. */
export function strengthOf(metal: Metal): Strength {
  return STRENGTH[metal];
}
