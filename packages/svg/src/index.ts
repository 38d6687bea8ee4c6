// Functions that look at what they are given; types beside them.

export type { CheckDrawOptions } from './checks/check-draw.js';
export { draw, drawCheck, drawRange, drawSheets, drawStep, drawView, drawZero } from './door/draw.js';
export {
  alongText,
  angleText,
  changesText,
  clean,
  countText,
  depthsText,
  depthText,
  dimensionText,
  doneText,
  fixed,
  gravestFirst,
  intervalText,
  lengthText,
  levelsText,
  lostZeros,
  numberText,
  reachedText,
  roleText,
  unitText,
  zeroAxes,
} from './door/words.js';
export type { DrawOptions } from './draw/draw.js';
export type { ViewOptions } from './draw/view-draw.js';
export type { Units } from './pen/numbers.js';
export { THEME_NAMES, THEMES, type Theme, type ThemeName } from './pen/theme.js';
export { LEVELS } from './pen/words.js';
export type { ZeroLink, ZeroScale } from './pen/zero-words.js';
export type { RangeDrawOptions } from './range/range-strip.js';
export { NO_TARGET } from './sheet/readouts.js';
export { SHEET_SIZES, type SheetSize } from './sheet/sheet.js';
export type { StepViewOptions } from './steps/step-view.js';
export type { ZeroDrawOptions } from './zero/zero-draw.js';
