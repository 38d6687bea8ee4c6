export type { DrawOptions } from './draw.js';
export { type KnifeMark, knifeMarks, type WebMark, webMarks } from './marks.js';
export { angleText, dimensionText, fixed, numberText, type Units, unitText } from './numbers.js';
export { SHEET_SIZES, type SheetSize } from './sheet.js';
export { clean } from './text.js';
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
