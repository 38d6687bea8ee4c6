export type { CheckDrawOptions } from './checks/check-draw.js';
export type { DrawOptions } from './draw/draw.js';
export type { ViewOptions } from './draw/view-draw.js';
export { angleText, dimensionText, fixed, numberText, type Units, unitText } from './pen/numbers.js';
export { clean } from './pen/text.js';
export { THEME_NAMES, THEMES, type Theme, type ThemeName } from './pen/theme.js';
export {
  betweenText,
  countText,
  depthsText,
  depthText,
  gravestFirst,
  LEVELS,
  lengthText,
  levelsText,
  roleText,
  sourceText,
} from './pen/words.js';
export { doneText, reachedText, type ZeroLink, type ZeroScale, zeroAxes } from './pen/zero-words.js';
export type { RangeDrawOptions } from './range/range-strip.js';
export { alongText, changesText, intervalText } from './range/range-words.js';
export { lostZeros, NO_TARGET } from './sheet/readouts.js';
export { SHEET_SIZES, type SheetSize } from './sheet/sheet.js';
export type { StepViewOptions } from './steps/step-view.js';
export type { ZeroDrawOptions } from './zero/zero-draw.js';
