export type { DrawOptions } from './draw.js';
export { type KnifeMark, knifeMarks, type WebMark, webMarks } from './marks.js';
export { angleText, dimensionText, fixed, numberText, type Units, unitText } from './numbers.js';
export type { RangeDrawOptions } from './range-strip.js';
export { alongText, changesText, intervalText } from './range-words.js';
export { SHEET_SIZES, type SheetSize } from './sheet.js';
export { clean } from './text.js';
export { THEME_NAMES, THEMES, type Theme, type ThemeName } from './theme.js';
export type { ViewOptions } from './view-draw.js';
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
} from './words.js';
