import { type ArcEdge, type Edge, type Point, type Region, reversed } from '@edgebite/core';
import { edgesOf } from '@edgebite/core/testing';
import initGeos from 'geos-wasm';
import {
  chordCount,
  chordStarts,
  type LoopMeasure,
  measuredLoop,
  type PolygonAnswer,
  polygonsOf,
  totalOf,
} from './chords.js';

/** Ways to grow and shrink regions with GEOS, arcs as chords of a given height. */
export interface GeosOffsets {
  /** As `offset`. */
  readonly offset: (region: Region, distance: number, sagitta: number) => PolygonAnswer;
  /** As `offsetPath`. */
  readonly band: (path: readonly Edge[], distance: number, sagitta: number) => PolygonAnswer;
  /** What a disc can cover without leaving the region. */
  readonly opening: (region: Region, radius: number, sagitta: number) => PolygonAnswer;
}

type Ring = readonly Point[];

/**
 * GEOS's overlay, with the Minkowski sum done by hand: a disc on every joint, a rectangle along every line, a sector
 * of a ring along every arc, all united. Its own buffer is not used: that of finely flattened concave arcs was
 * measured to be wrong.
 * Each of the functions throws Error with GEOS's message where GEOS gives up.
 */
export async function geosOffsets(): Promise<GeosOffsets> {
  const geos = await initGeos({ errorHandler: raise });
  const { read, polygons, spent } = exchange(geos);
  const together = (polygonTexts: readonly string[]): number =>
    read(`GEOMETRYCOLLECTION ${polygonTexts.length === 0 ? 'EMPTY' : `(${polygonTexts.join(',')})`}`);
  const bandOf = (edges: readonly Edge[], distance: number, sagitta: number): number => {
    const rings = edges.flatMap((edge) => sumWithDisc(edge, distance, sagitta));
    return spent(together(rings.map((ring) => polygonText([ring]))), (all) => geos.GEOSUnaryUnion(all));
  };
  const regionOf = (region: Region, sagitta: number): number =>
    // Near a tip or a touching place chords may cross; the band covers what is mended there.
    spent(together(polygonsOf(region, sagitta).map(polygonText)), (all) =>
      spent(geos.GEOSMakeValid(all), (valid) => geos.GEOSUnaryUnion(valid)),
    );
  const moved = (region: Region, distance: number, sagitta: number): number =>
    spent(regionOf(region, sagitta), (whole) =>
      spent(bandOf(edgesOf(region), Math.abs(distance), sagitta), (band) =>
        distance > 0 ? geos.GEOSUnion(whole, band) : geos.GEOSDifference(whole, band),
      ),
    );
  const answer = (geometry: number): PolygonAnswer => {
    return totalOf(spent(geometry, polygons).flatMap(measured));
  };
  return {
    offset: (region, distance, sagitta) => answer(moved(region, distance, sagitta)),
    band: (path, distance, sagitta) => answer(bandOf(path, distance, sagitta)),
    opening: (region, radius, sagitta) =>
      answer(
        spent(moved(region, -radius, sagitta), (shrunk) => {
          const sides = polygons(shrunk).flat().flatMap(sidesOf);
          return spent(bandOf(sides, radius, sagitta), (band) => geos.GEOSUnion(shrunk, band));
        }),
      ),
  };
}

/** Ways in and out of GEOS's memory. */
function exchange(geos: Awaited<ReturnType<typeof initGeos>>) {
  const { Module } = geos;
  return {
    read(wkt: string): number {
      const pointer = Module._malloc(wkt.length + 1);
      Module.stringToUTF8(wkt, pointer, wkt.length + 1);
      const geometry = geos.GEOSGeomFromWKT(pointer);
      geos.GEOSFree(pointer);
      return geometry;
    },
    /** What comes of a geometry, which is given back. */
    spent<T>(geometry: number, use: (geometry: number) => T): T {
      try {
        return use(geometry);
      } finally {
        geos.GEOSGeom_destroy(geometry);
      }
    },
    /** The rings of all polygons, first points repeated as last ones; the outer ring of a polygon comes first. */
    polygons(geometry: number): Ring[][] {
      const ring = (one: number): Ring => {
        const sequence = geos.GEOSGeom_getCoordSeq(one);
        const count = geos.GEOSGeomGetNumPoints(one);
        const pointer = Module._malloc(count * 16);
        geos.GEOSCoordSeq_copyToBuffer(sequence, pointer, 0, 0);
        const number = (k: number): number => Module.getValue(pointer + 8 * k, 'double');
        const points = Array.from({ length: count }, (_, k) => ({ x: number(2 * k), y: number(2 * k + 1) }));
        geos.GEOSFree(pointer);
        return points;
      };
      return Array.from({ length: geos.GEOSGetNumGeometries(geometry) }, (_, k) =>
        geos.GEOSGetGeometryN(geometry, k),
      )
        .filter((one) => geos.GEOSGeomTypeId(one) === POLYGON && geos.GEOSisEmpty(one) === 0)
        .map((one) => [
          ring(geos.GEOSGetExteriorRing(one)),
          ...Array.from({ length: geos.GEOSGetNumInteriorRings(one) }, (_, k) =>
            ring(geos.GEOSGetInteriorRingN(one, k)),
          ),
        ]);
    },
  };
}

/** GEOS's number for this kind of geometry. */
const POLYGON = 3;

function raise(message: string): never {
  throw new Error(`GEOS: ${message}`);
}

/** Polygons whose union is what lies within a distance of an edge; a disc on its start, one on its end. */
function sumWithDisc(edge: Edge, distance: number, sagitta: number): Ring[] {
  return [...[edge.a, edge.b].map((p) => discRing(p, distance, sagitta)), alongside(edge, distance, sagitta)];
}

function discRing(center: Point, radius: number, sagitta: number): Ring {
  const count = chordCount(radius, 2 * Math.PI, sagitta);
  return Array.from({ length: count }, (_, k) => {
    const angle = (2 * Math.PI * (k + 0.5)) / count;
    return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
  });
}

/** What lies within a distance of an edge at right angles to it. */
function alongside(edge: Edge, distance: number, sagitta: number): Ring {
  if (edge.kind === 'arc') return sector(edge, distance, sagitta);
  const length = Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y);
  const nx = ((edge.b.y - edge.a.y) / length) * distance;
  const ny = ((edge.a.x - edge.b.x) / length) * distance;
  const { a, b } = edge;
  return [
    { x: a.x + nx, y: a.y + ny },
    { x: b.x + nx, y: b.y + ny },
    { x: b.x - nx, y: b.y - ny },
    { x: a.x - nx, y: a.y - ny },
  ];
}

function sector(edge: ArcEdge, distance: number, sagitta: number): Ring {
  const outer = scaledArc(edge, edge.radius + distance);
  const inner = edge.radius - distance;
  // An inner arc smaller than the chords' height is as good as its centre.
  const back = inner > sagitta ? (reversed(scaledArc(edge, inner)) as ArcEdge) : null;
  return [
    ...chordStarts(outer, sagitta),
    outer.b,
    ...(back === null ? [edge.center] : [...chordStarts(back, sagitta), back.b]),
  ];
}

/** The same sweep of a concentric circle. */
function scaledArc(edge: ArcEdge, radius: number): ArcEdge {
  const at = (p: Point): Point => {
    const factor = radius / Math.hypot(p.x - edge.center.x, p.y - edge.center.y);
    return {
      x: edge.center.x + (p.x - edge.center.x) * factor,
      y: edge.center.y + (p.y - edge.center.y) * factor,
    };
  };
  return { ...edge, a: at(edge.a), b: at(edge.b), radius };
}

function sidesOf(ring: Ring): Edge[] {
  return ring.slice(1).map((b, k) => ({ kind: 'line', a: ring[k] as Point, b }));
}

function polygonText(rings: readonly Ring[]): string {
  return `POLYGON(${rings.map(ringText).join(',')})`;
}

function ringText(ring: Ring): string {
  return `(${[...ring, ring[0] as Point].map(({ x, y }) => `${x} ${y}`).join(',')})`;
}

/** The loops of a polygon, closing points left out: the first is the outer one. */
function measured(rings: readonly Ring[]): LoopMeasure[] {
  return rings.map((ring, k) => {
    const { signedArea, perimeter } = measuredLoop(ring.slice(1));
    return { signedArea: Math.abs(signedArea) * (k === 0 ? 1 : -1), perimeter };
  });
}
