import type { Region } from '@edgebite/core';
import initGeos from 'geos-wasm';
import { polygonsOf } from './chords.js';

/** What GEOS says of whole regions whose arcs are chords of a given height, and of texts. */
export interface GeosFigures {
  readonly area: (region: Region, sagitta: number) => number;
  readonly hullArea: (region: Region, sagitta: number) => number;
  readonly boundingRadius: (region: Region, sagitta: number) => number;
  readonly width: (region: Region, sagitta: number) => number;
  readonly distance: (one: Region, other: Region, sagitta: number) => number;
  /** The area that two regions have in common, and that each has alone. */
  readonly shares: (
    one: Region,
    other: Region,
    sagitta: number,
  ) => { both: number; first: number; second: number };
  readonly areaOfWkt: (text: string) => number;
  readonly areaOfGeoJson: (text: string) => number;
}

/** Loads GEOS; its faults are thrown. */
export async function geosFigures(): Promise<GeosFigures> {
  const geos = await initGeos({
    errorHandler: (message: string) => {
      throw new Error(`GEOS: ${message}`);
    },
  });
  const { Module } = geos;
  const withText = <T>(text: string, use: (pointer: number) => T): T => {
    const pointer = Module._malloc(text.length + 1);
    Module.stringToUTF8(text, pointer, text.length + 1);
    try {
      return use(pointer);
    } finally {
      geos.GEOSFree(pointer);
    }
  };
  const number = (write: (place: number) => unknown): number => {
    const place = Module._malloc(8);
    write(place);
    const value = Module.getValue(place, 'double');
    geos.GEOSFree(place);
    return value;
  };
  const used = <T>(geometry: number, use: (geometry: number) => T): T => {
    try {
      return use(geometry);
    } finally {
      geos.GEOSGeom_destroy(geometry);
    }
  };
  const areaOf = (geometry: number) => number((place) => geos.GEOSArea(geometry, place));
  const lengthOf = (geometry: number) => number((place) => geos.GEOSLength(geometry, place));
  const read = (text: string) => withText(text, (pointer) => geos.GEOSGeomFromWKT(pointer));
  const of = <T>(region: Region, sagitta: number, use: (geometry: number) => T): T =>
    used(read(textOf(region, sagitta)), use);
  return {
    area: (region, sagitta) => of(region, sagitta, areaOf),
    hullArea: (region, sagitta) => of(region, sagitta, (g) => used(geos.GEOSConvexHull(g), areaOf)),
    boundingRadius: (region, sagitta) =>
      of(region, sagitta, (g) =>
        number((place) => {
          const center = Module._malloc(8);
          geos.GEOSGeom_destroy(geos.GEOSMinimumBoundingCircle(g, place, center));
          geos.GEOSFree(center);
        }),
      ),
    width: (region, sagitta) => of(region, sagitta, (g) => used(geos.GEOSMinimumWidth(g), lengthOf)),
    distance: (one, other, sagitta) =>
      of(one, sagitta, (a) => of(other, sagitta, (b) => number((place) => geos.GEOSDistance(a, b, place)))),
    shares: (one, other, sagitta) =>
      of(one, sagitta, (a) =>
        of(other, sagitta, (b) => ({
          both: used(geos.GEOSIntersection(a, b), areaOf),
          first: used(geos.GEOSDifference(a, b), areaOf),
          second: used(geos.GEOSDifference(b, a), areaOf),
        })),
      ),
    areaOfWkt: (text) => used(read(text), areaOf),
    areaOfGeoJson: (text) => {
      const reader = geos.GEOSGeoJSONReader_create();
      const geometry = withText(text, (pointer) => geos.GEOSGeoJSONReader_readGeometry(reader, pointer));
      geos.GEOSGeoJSONReader_destroy(reader);
      return used(geometry, areaOf);
    },
  };
}

function textOf(region: Region, sagitta: number): string {
  const ring = (points: readonly { x: number; y: number }[]) =>
    `(${[...points, points[0] as { x: number; y: number }].map(({ x, y }) => `${x} ${y}`).join(',')})`;
  const parts = polygonsOf(region, sagitta).map((loops) => `(${loops.map(ring).join(',')})`);
  return `MULTIPOLYGON(${parts.join(',')})`;
}
