import type { Edge, Point, Region } from '@edgebite/core';
import initGeos from 'geos-wasm';
import { chordStarts, polygonsOf } from './chords.js';

/** What GEOS makes of regions and paths whose arcs are chords of a given height. */
export interface GeosMeasures {
  /** Distance of two regions. */
  readonly distance: (one: Region, other: Region, sagitta: number) => number;
  /** Area that two regions have in common. */
  readonly common: (one: Region, other: Region, sagitta: number) => number;
  /** Length of a path that lies in a region. */
  readonly inside: (path: readonly Edge[], region: Region, sagitta: number) => number;
  /** Length of a path. */
  readonly length: (path: readonly Edge[], sagitta: number) => number;
}

/** Loads GEOS. Each of the functions throws Error with GEOS's message where GEOS gives up. */
export async function geosMeasures(): Promise<GeosMeasures> {
  const geos = await initGeos({ errorHandler: raise });
  const { Module } = geos;
  const read = (wkt: string): number => {
    const pointer = Module._malloc(wkt.length + 1);
    Module.stringToUTF8(wkt, pointer, wkt.length + 1);
    const geometry = geos.GEOSGeomFromWKT(pointer);
    geos.GEOSFree(pointer);
    return geometry;
  };
  /** A number that GEOS writes to a place in its memory. */
  const number = (write: (place: number) => unknown): number => {
    const place = Module._malloc(8);
    write(place);
    const value = Module.getValue(place, 'double');
    geos.GEOSFree(place);
    return value;
  };
  const both = <T>(a: string, b: string, use: (a: number, b: number) => T): T => {
    const [one, other] = [read(a), read(b)];
    try {
      return use(one, other);
    } finally {
      geos.GEOSGeom_destroy(one);
      geos.GEOSGeom_destroy(other);
    }
  };
  const met = (a: string, b: string, measure: (geometry: number, place: number) => unknown): number =>
    both(a, b, (one, other) => {
      const geometry = geos.GEOSIntersection(one, other);
      const value = number((place) => measure(geometry, place));
      geos.GEOSGeom_destroy(geometry);
      return value;
    });
  return {
    distance: (one, other, sagitta) =>
      both(polygonText(one, sagitta), polygonText(other, sagitta), (a, b) =>
        number((place) => geos.GEOSDistance(a, b, place)),
      ),
    common: (one, other, sagitta) =>
      met(polygonText(one, sagitta), polygonText(other, sagitta), (g, place) => geos.GEOSArea(g, place)),
    inside: (path, region, sagitta) =>
      met(pathText(path, sagitta), polygonText(region, sagitta), (g, place) => geos.GEOSLength(g, place)),
    length: (path, sagitta) => {
      const geometry = read(pathText(path, sagitta));
      const value = number((place) => geos.GEOSLength(geometry, place));
      geos.GEOSGeom_destroy(geometry);
      return value;
    },
  };
}

function raise(message: string): never {
  throw new Error(`GEOS: ${message}`);
}

const pointText = ({ x, y }: Point): string => `${x} ${y}`;

function polygonText(region: Region, sagitta: number): string {
  const ring = (points: readonly Point[]) => `(${[...points, points[0] as Point].map(pointText).join(',')})`;
  const parts = polygonsOf(region, sagitta).map((loops) => `(${loops.map(ring).join(',')})`);
  return `MULTIPOLYGON(${parts.join(',')})`;
}

/** Edges that need not hang together. */
function pathText(path: readonly Edge[], sagitta: number): string {
  const lines = path.map((edge) => `(${[...chordStarts(edge, sagitta), edge.b].map(pointText).join(',')})`);
  return `MULTILINESTRING(${lines.join(',')})`;
}
