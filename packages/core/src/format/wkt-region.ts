import { normalize, union } from '../combine/boolean.js';
import type { Region } from '../region/region.js';
import { TextError } from './text-error.js';
import { parseWkt } from './wkt.js';

/**
 * The region that well-known text describes: what `toWkt` writes, and any POLYGON, CURVEPOLYGON, MULTIPOLYGON,
 * MULTISURFACE, EMPTY, or curve that closes. Rings may run in any direction; what lies inside an odd number of those of
 * one polygon belongs to it, and polygons that overlap become one.
 * Source: ISO/IEC 13249-3 and OGC 06-103r4, well-known text.
 * @throws TextError with the position of what is wrong, or if a curve does not close.
 */
export function regionFromWkt(text: string): Region {
  const shape = parseWkt(text);
  if (shape.kind === 'curve' && !shape.chain.closed)
    throw new TextError(0, 'the curve does not close, so that it encloses nothing; end it where it starts');
  const polygons =
    shape.kind === 'curve' ? [[shape.chain]] : shape.kind === 'polygon' ? [shape.rings] : shape.polygons;
  const regions = polygons.map((rings) =>
    normalize(
      rings.map(({ edges }) => edges),
      'evenodd',
    ),
  );
  return regions.length === 1 ? (regions[0] as Region) : union(regions);
}
