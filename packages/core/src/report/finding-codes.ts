import { LOAD_LEVELS } from '../load/load-words.js';

/** What a finding can be about, and how bad each kind is. Codes are for programs; sentences are for people. */
export const FINDING_LEVELS = {
  ...LOAD_LEVELS,
  'nothing-left': 'danger',
  'held-place-cut-away': 'danger',
  'loose-slug': 'danger',
  'loose-offcut': 'danger',
  'hanging-body': 'danger',
  'loose-in-the-way': 'danger',
  'held-slug': 'check',
  'cuts-merge': 'note',
  'cut-misses': 'check',
  'cut-grazes': 'check',
  'cut-in-air': 'note',
  'partial-hole': 'note',
  'interrupted-cut': 'note',
  'one-sided-load': 'note',
  'no-metal-under-centre': 'check',
  'reach-too-short': 'check',
  'thin-web': 'check',
  'knife-edge': 'check',
  'thin-floor': 'check',
  'web-may-go': 'check',
  'web-may-be-thin': 'check',
  'web-may-be-enough': 'note',
  'knife-edge-may-be': 'check',
  'knife-edge-may-be-enough': 'note',
  'may-break-out': 'check',
  'may-touch': 'check',
  'may-not-break-out': 'check',
  'passes-not-possible': 'check',
  gouge: 'check',
  'path-leaves-metal': 'check',
  'path-misses-loop': 'check',
  'opening-past-face': 'note',
  'speeds-unknown': 'check',
  'speed-limit-missing': 'check',
  'spindle-too-fast': 'check',
  'speed-under-range': 'note',
  'feed-unknown': 'note',
  'tool-does-not-fit': 'check',
  'head-does-not-reach-size': 'check',
  'bar-too-short': 'danger',
  'zero-without-tolerance': 'note',
  'rounding-over-tolerance': 'check',
  'wrong-side-up': 'check',
  'may-not-go-through': 'check',
  'cut-in-no-setup': 'note',
  'hits-jaw': 'danger',
  'hits-stop': 'danger',
  'hits-parallel': 'danger',
  'hits-clamp': 'danger',
  'may-hit-jaw': 'check',
  'may-hit-stop': 'check',
  'may-hit-parallel': 'check',
  'may-hit-clamp': 'check',
  'grip-lost': 'danger',
  'grip-bears-on-nothing': 'check',
  'stop-bears-on-nothing': 'check',
  'parallel-bears-on-nothing': 'check',
  'face-cut-away': 'danger',
  'face-bitten': 'check',
  'face-not-flat': 'check',
  'tip-in-metal': 'danger',
} as const satisfies Readonly<Record<string, 'danger' | 'check' | 'note'>>;

/** A code of a finding. */
export type FindingCode = keyof typeof FINDING_LEVELS;

/** All codes of findings. */
export const FINDING_CODES = Object.keys(FINDING_LEVELS) as [FindingCode, ...FindingCode[]];

/** All codes of cautions. */
export const CAUTION_CODES = [
  'part-not-held',
  'cutter-meets-clamp',
  'slug-unguarded',
  'offcut-loose',
  'slug-hot',
  'slug-can-break-out',
  'slug-stays',
  'speed-limit-unknown',
  'one-sided-cut',
  'feather-edges',
  'sharp-break-through',
  'stop-to-measure',
  'instructions-first',
] as const;

/** A code of a caution. */
export type CautionCode = (typeof CAUTION_CODES)[number];
