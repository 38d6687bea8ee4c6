import { toSvgPath } from '../format/svg-write.js';
import { checkNotNegative } from '../geometry/checks.js';
import { boundsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** How a bare drawing of a region is written. */
export interface SvgDocumentOptions {
  /** Empty room on all sides, in the unit of the region; a fiftieth of its longer side unless given. */
  readonly margin?: number | undefined;
  /** Any colour of CSS; `#000` unless given. */
  readonly fill?: string | undefined;
  /** What a unit is in the file, such as `mm` or `in`; without it the drawing has no size of its own. */
  readonly unit?: 'mm' | 'in' | undefined;
  /** Digits after the point, 0 to 20; all that a double needs unless given. */
  readonly digits?: number | undefined;
}

/** Room on all sides, as a share of the longer side. */
const MARGIN_SHARE = 1 / 50;

/**
 * A region as an SVG file: one filled path of lines and arcs, nothing else, with y up as in the part. Of an empty region,
 * an empty drawing.
 * Source: W3C SVG 2.
 * @throws RangeError if the margin is under 0 or not finite, or `digits` is not a whole number from 0 to 20.
 */
export function toSvgDocument(region: Region, options: SvgDocumentOptions = {}): string {
  const { fill = '#000', unit, digits } = options;
  const path = toSvgPath(region, { digits });
  const { minX, minY, maxX, maxY } = boundsOf(region) ?? { minX: 0, minY: 0, maxX: 1, maxY: 1 };
  const { margin = MARGIN_SHARE * Math.max(maxX - minX, maxY - minY) } = options;
  checkNotNegative('toSvgDocument', 'margin', margin);
  const [width, height] = [maxX - minX + 2 * margin, maxY - minY + 2 * margin];
  const size = unit === undefined ? '' : ` width="${width}${unit}" height="${height}${unit}"`;
  const view = `${minX - margin + 0} ${-(maxY + margin) + 0} ${width} ${height}`;
  const shape = path === '' ? '' : `<path transform="scale(1,-1)" fill="${escaped(fill)}" d="${path}"/>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${view}"${size}>${shape}</svg>\n`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;');
}
