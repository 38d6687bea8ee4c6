/* Regions and edges in and out of other formats. Each checks its arguments; its own comment is at its definition. */

import * as rawGeojson from '../figure/geojson.js';
import * as rawSvgDocument from '../figure/svg-document.js';
import * as rawJson from '../format/json.js';
import * as rawPolyline from '../format/polyline.js';
import * as rawSvgPath from '../format/svg-path.js';
import * as rawSvgWrite from '../format/svg-write.js';
import * as rawWkt from '../format/wkt.js';
import * as rawWktWrite from '../format/wkt-write.js';
import { anything, flag, num, text } from '../kinds/kinds.js';
import { shape } from '../kinds/more-kinds.js';
import { edges, region } from '../kinds/region-kind.js';
import { loosePoint, pass } from '../kinds/shared-kinds.js';
import * as rawPathJson from '../path/path-json.js';
import { guarded } from './guarded.js';

/** @function */
export const parseSvgPath: typeof rawSvgPath.parseSvgPath = /* @__PURE__ */ guarded(
  rawSvgPath.parseSvgPath,
  'parseSvgPath',
  { text },
);
/** @function */
export const toSvgPath: typeof rawSvgWrite.toSvgPath = /* @__PURE__ */ guarded(
  rawSvgWrite.toSvgPath,
  'toSvgPath',
  { shape, options: { maybe: { only: { digits: { maybe: num } } } } },
);
/** @function */
export const openSvgPath: typeof rawSvgWrite.openSvgPath = /* @__PURE__ */ guarded(
  rawSvgWrite.openSvgPath,
  'openSvgPath',
  { edges, options: { maybe: { only: { digits: { maybe: num } } } } },
);
/** @function */
export const parseWkt: typeof rawWkt.parseWkt = /* @__PURE__ */ guarded(rawWkt.parseWkt, 'parseWkt', {
  text,
});
/** @function */
export const regionFromWkt: typeof rawWkt.regionFromWkt = /* @__PURE__ */ guarded(
  rawWkt.regionFromWkt,
  'regionFromWkt',
  { text },
  'regions',
);
/** @function */
export const toWkt: typeof rawWktWrite.toWkt = /* @__PURE__ */ guarded(rawWktWrite.toWkt, 'toWkt', {
  region,
});
/** @function */
export const regionFromJson: typeof rawJson.regionFromJson = /* @__PURE__ */ guarded(
  rawJson.regionFromJson,
  'regionFromJson',
  { json: anything },
  'regions',
);
/** @function */
export const regionToJson: typeof rawJson.regionToJson = /* @__PURE__ */ guarded(
  rawJson.regionToJson,
  'regionToJson',
  { region },
);
/** @function */
export const arcsFromPolyline: typeof rawPolyline.arcsFromPolyline = /* @__PURE__ */ guarded(
  rawPolyline.arcsFromPolyline,
  'arcsFromPolyline',
  {
    points: { listOf: loosePoint },
    tolerance: num,
    options: { maybe: { only: { closed: { maybe: flag } } } },
  },
);
/** @function */
export const edgesToJson: typeof rawPathJson.edgesToJson = /* @__PURE__ */ guarded(
  rawPathJson.edgesToJson,
  'edgesToJson',
  { edges },
);
/** @function */
export const passesToJson: typeof rawPathJson.passesToJson = /* @__PURE__ */ guarded(
  rawPathJson.passesToJson,
  'passesToJson',
  { passes: { listOf: pass } },
);
/** @function */
export const toGeoJson: typeof rawGeojson.toGeoJson = /* @__PURE__ */ guarded(
  rawGeojson.toGeoJson,
  'toGeoJson',
  { region, tolerance: num },
);
/** @function */
export const regionFromGeoJson: typeof rawGeojson.regionFromGeoJson = /* @__PURE__ */ guarded(
  rawGeojson.regionFromGeoJson,
  'regionFromGeoJson',
  { json: anything },
  'regions',
);
/** @function */
export const toSvgDocument: typeof rawSvgDocument.toSvgDocument = /* @__PURE__ */ guarded(
  rawSvgDocument.toSvgDocument,
  'toSvgDocument',
  {
    region,
    options: {
      maybe: {
        only: {
          margin: { maybe: num },
          fill: { maybe: text },
          unit: { maybe: ['mm', 'in'] },
          digits: { maybe: num },
        },
      },
    },
  },
);
