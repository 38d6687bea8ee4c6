import type { Metal, Range } from '@edgebite/core';

/*
 * Figures of the sheets that the tables of speeds, feeds and strengths are made from, typed a second time from the sheets
 * and not from the tables. The letters are those of docs/cutting-numbers.md. ft/min unless said otherwise, for HSS.
 */

/** A, a teaching table of upper limits: cholla.mmto.arizona.edu/machining/speeds.html. */
export const A = {
  'mild steel': [120, 120],
  'alloy steel': [50, 60],
  'cast iron': [60, 80],
  aluminium: [300, 300],
  bronze: [150, 150],
} as const satisfies Partial<Record<Metal, Range>>;

/** B, manual of a milling machine, p. 26: brass and bronze share a row, hard steel stands for alloy steel. */
export const B = {
  'mild steel': [90, 90],
  'alloy steel': [40, 40],
  'tool steel': [50, 50],
  'stainless steel': [60, 60],
  'cast iron': [50, 80],
  aluminium: [300, 300],
  brass: [150, 150],
  bronze: [150, 150],
  titanium: [50, 50],
} as const satisfies Partial<Record<Metal, Range>>;

/** C, a drilling table; milling takes half as much again, carbide twice as much. */
export const C = {
  'mild steel': [70, 70],
  'tool steel': [30, 30],
  'stainless steel': [30, 30],
  'cast iron': [50, 50],
  aluminium: [300, 300],
  brass: [200, 200],
  bronze: [100, 100],
} as const satisfies Partial<Record<Metal, Range>>;

/** M, a metric table, m/min: drilling. */
export const M_DRILLING = {
  'mild steel': [20, 30],
  'stainless steel': [15, 25],
  'cast iron': [30, 30],
  aluminium: [30, 120],
  brass: [50, 55],
} as const satisfies Partial<Record<Metal, Range>>;

/** M, m/min: turning with HSS. */
export const M_TURNING = {
  'mild steel': [20, 35],
  'stainless steel': [20, 35],
  'cast iron': [35, 35],
  aluminium: [150, 180],
  brass: [90, 105],
} as const satisfies Partial<Record<Metal, Range>>;

/** M, m/min: turning with carbide. */
export const M_CARBIDE = {
  'mild steel': [90, 135],
  'stainless steel': [70, 120],
  aluminium: [335, 365],
} as const satisfies Partial<Record<Metal, Range>>;

/** P, a maker's table of carbide end mills. */
export const P_SPEED = {
  aluminium: [400, 1200],
  brass: [250, 500],
  bronze: [250, 500],
  'cast iron': [100, 500],
  'mild steel': [150, 400],
  'stainless steel': [200, 400],
} as const satisfies Partial<Record<Metal, Range>>;

/** P, the same page: inches a tooth at 1/8, 1/4, 1/2, 3/4 and 1 in. Its aluminium begins with a misprint, 0.005. */
export const P_FEED = {
  aluminium: [null, 0.002, 0.004, 0.006, 0.008],
  brass: [0.001, 0.002, 0.003, 0.004, 0.005],
  bronze: [0.001, 0.002, 0.003, 0.004, 0.005],
  'cast iron': [0.0005, 0.001, 0.003, 0.005, 0.007],
  'mild steel': [0.0005, 0.001, 0.003, 0.0045, 0.0065],
  'stainless steel': [0.0005, 0.001, 0.003, 0.004, 0.006],
} as const satisfies Partial<Record<Metal, readonly (number | null)[]>>;

/** Sizes of that table, inches. */
export const P_SIZES = [0.125, 0.25, 0.5, 0.75, 1] as const;

/** P, the same page: drills, inches a turn, up to each size in inches. */
export const P_DRILL = [
  { upTo: 0.125, feed: [0.001, 0.003] },
  { upTo: 0.25, feed: [0.002, 0.006] },
  { upTo: 0.5, feed: [0.004, 0.01] },
  { upTo: 1, feed: [0.007, 0.015] },
  { upTo: Number.POSITIVE_INFINITY, feed: [0.01, 0.025] },
] as const;

/** H, bi-metal hole saws: turns a minute by diameter in inches. */
export const H_SIZES = [9 / 16, 3 / 4, 1, 1.25, 1.5, 2, 2.5] as const;
export const H = {
  'mild steel': [580, 460, 350, 275, 230, 170, 135],
  'stainless steel': [300, 230, 175, 140, 115, 85, 65],
  'cast iron': [400, 300, 235, 180, 150, 115, 85],
  brass: [790, 600, 470, 360, 300, 230, 180],
  aluminium: [900, 690, 525, 410, 345, 255, 205],
} as const satisfies Partial<Record<Metal, readonly number[]>>;

/** MPa in a ksi (NIST SP 811, appendix B.8). */
const KSI = 6.894757;

/** S, strengths in MPa: sheets of single grades. */
export const S = {
  '1020 hot rolled': { tensile: 55 * KSI, yield: 30 * KSI, shear: 41.2 * KSI },
  '1020 cold drawn': { tensile: 61 * KSI, yield: 51 * KSI, shear: 43 * KSI },
  'A36, soft end': { tensile: 58 * KSI, yield: 33 * KSI, shear: 41 * KSI },
  'A36, hard end': { tensile: 80 * KSI, yield: 36 * KSI, shear: 56 * KSI },
  'Q235, soft end': { tensile: 375, yield: 235, shear: 310 },
  'Q235, hard end': { tensile: 460, yield: 235, shear: 380 },
  '6061-T6': { tensile: 310, yield: 276, shear: 207 },
  '304 annealed': { tensile: 515, yield: 205, shear: null },
  'like 304': { tensile: null, yield: null, shear: 550 },
  'C36000 half hard': { tensile: 380, yield: 170, shear: 234 },
} as const;

/** R, shear over tensile strength. Its page calls the one of copper alloys doubtful. */
export const R = { steel: 0.75, 'cast iron': 1.3, 'copper alloys': 0.65 } as const;
