import {
  arcEdge,
  circleLoop,
  type Edge,
  lineEdge,
  outlineRegion,
  type Point,
  type Region,
  rectangle,
} from '@edgebite/core';
import { toFlatten } from '@edgebite/core/flatten';
import { POINT, VECTOR, type What } from './bad-values.js';

/** Arguments that are right, and what each of them is. */
export interface Row {
  readonly good: readonly unknown[];
  readonly what: readonly What[];
}

export const P = (x: number, y: number): Point => ({ x, y });
export const PLATE: Region = outlineRegion(rectangle(80, 30, { corner: 3 }), [circleLoop(P(40, 15), 5)]);
export const CUT: Region = outlineRegion(rectangle(10, 10, { at: P(75, 10) }));
export const LINE = lineEdge(P(0, 0), P(10, 0), 'outline:0');
export const ARC = arcEdge(P(5, 0), P(0, 5), P(0, 0), true);
export const PATH: readonly Edge[] = [lineEdge(P(0, 10), P(30, 10)), lineEdge(P(30, 10), P(30, 20))];
const SQUARE = rectangle(10, 10);
const BOX = { minX: 0, minY: 0, maxX: 4, maxY: 3 };

export const maybe = (what: What): What => ({ maybe: what });
export const row = (good: readonly unknown[], ...what: What[]): Row => ({ good, what });

const N = 'number';
const SOURCE = maybe('text');
export const BOUNDS: What = { keys: { minX: N, minY: N, maxX: N, maxY: N } };
export const EDGE: What = { keys: { kind: 'word', a: POINT, b: POINT, source: SOURCE } };
export const ARC_EDGE: What = {
  keys: { kind: 'word', a: POINT, b: POINT, center: POINT, radius: 'over 0', ccw: 'flag' },
};
export const CHAIN: What = { some: EDGE };
const DRAWN: What = { list: { keys: { kind: 'word', a: 'made', b: 'made' } } };
const STANDING = { at: maybe(POINT), owner: maybe('text') };

/** Rows of points, edges, loops, regions and forms. */
export const GEOMETRY: Readonly<Record<string, Row>> = {
  vector: row([P(1, 2), P(3, 5)], POINT, POINT),
  moved: row([P(1, 2), { dx: 3, dy: 4 }, 2], POINT, VECTOR, maybe(N)),
  distance: row([P(1, 2), P(3, 5)], POINT, POINT),
  midpoint: row([P(1, 2), P(3, 5)], POINT, POINT),
  samePoint: row([P(1, 2), P(3, 5)], POINT, POINT),
  joined: row([BOX, BOX], BOUNDS, BOUNDS),
  grown: row([BOX, 2], BOUNDS, N),
  boxAround: row([P(1, 2), 3], POINT, maybe(N)),
  boxesMeet: row([BOX, BOX], BOUNDS, BOUNDS),
  extentOf: row([BOX], BOUNDS),
  middleOf: row([BOX], BOUNDS),
  lineEdge: row([P(0, 0), P(3, 4), 'outline:1'], POINT, POINT, SOURCE),
  arcEdge: row([P(5, 0), P(0, 5), P(0, 0), true, 'outline:1'], POINT, POINT, POINT, 'flag', SOURCE),
  reversed: row([LINE], EDGE),
  edgeBounds: row([ARC], ARC_EDGE),
  edgeLength: row([ARC], ARC_EDGE),
  directionAtStart: row([ARC], ARC_EDGE),
  directionAtEnd: row([LINE], EDGE),
  curvature: row([ARC], ARC_EDGE),
  pointAlong: row([LINE, 0.3], EDGE, N),
  onArcSide: row([ARC, P(3, 3)], ARC_EDGE, POINT),
  sweep: row([ARC], ARC_EDGE),
  segmentArea: row([ARC], ARC_EDGE),
  sineExcess: row([1], N),
  nearestOnEdge: row([LINE, P(3, 3)], EDGE, POINT),
  meet: row([LINE, ARC, 1e-9], EDGE, ARC_EDGE, '0 or more'),
  weldTolerance: row([100, 100], '0 or more', maybe('0 or more')),
  segmentOfAngle: row([5, 1], 'over 0', 'over 0'),
  segmentOfDepth: row([5, 1], 'over 0', 'over 0'),
  segmentOfOpeningAndDepth: row([5, 1], 'over 0', 'over 0'),
  segmentsOfOpening: row([5, 4], 'over 0', 'over 0'),
  circleLoop: row([P(1, 2), 5, true, 'cut:a'], POINT, 'over 0', maybe('flag'), SOURCE),
  disc: row([P(1, 2), 5, 'cut:a'], POINT, 'over 0', SOURCE),
  ring: row([P(1, 2), 5, 3, 'cut:a'], POINT, 'over 0', 'over 0', SOURCE),
  rectangle: row(
    [10, 10, { at: P(0, 0), owner: 'outline', corner: 1 }],
    'over 0',
    'over 0',
    maybe({ keys: { ...STANDING, corner: maybe('0 or more') } }),
  ),
  circle: row([10, { at: P(0, 0), owner: 'outline' }], 'over 0', maybe({ keys: STANDING })),
  slot: row(
    [10, 4, { at: P(0, 0), owner: 'outline', angle: 1 }],
    'over 0',
    'over 0',
    maybe({ keys: { ...STANDING, angle: maybe(N) } }),
  ),
  checkOutline: row([SQUARE, [SQUARE]], DRAWN, maybe({ list: DRAWN })),
  outlineRegion: row([SQUARE, [circleLoop(P(5, 5), 1)]], { some: EDGE }, maybe({ list: { some: ARC_EDGE } })),
  area: row([PLATE], 'region'),
  perimeter: row([PLATE], 'region'),
  centroid: row([PLATE], 'region'),
  boundsOf: row([PLATE], 'region'),
  loopsOf: row([PLATE], 'region'),
  partArea: row([PLATE[0]], 'made'),
  loopArea: row([SQUARE], CHAIN),
  loopBounds: row([SQUARE], CHAIN),
  loopLength: row([SQUARE], CHAIN),
  contains: row([PLATE, P(3, 4), 1e-9], 'region', POINT, maybe('0 or more')),
  union: row([[PLATE, CUT]], { list: 'region' }),
  intersect: row([[PLATE, CUT]], { list: 'region' }),
  xor: row([[PLATE, CUT]], { list: 'region' }),
  normalize: row([[SQUARE], 'evenodd'], { list: CHAIN }, 'word'),
  subtract: row([PLATE, [CUT]], 'region', { list: 'region' }),
  offset: row([PLATE, 2], 'region', N),
  offsetPath: row([PATH, 2], { list: EDGE }, 'over 0'),
  footprint: row(
    [{ id: 'a', kind: 'bore', from: 'top', depth: 3, through: true, center: P(0, 0), diameter: 8 }],
    { keys: { id: 'text', kind: 'word', center: POINT, diameter: 'over 0' } },
  ),
  coreOf: row(
    [
      {
        id: 'a',
        kind: 'annular',
        from: 'top',
        depth: 3,
        through: true,
        center: P(0, 0),
        diameter: 8,
        wall: 2,
      },
    ],
    { keys: { id: 'text', kind: 'word', center: POINT, diameter: 'over 0', wall: 'over 0' } },
  ),
  sweptRegion: row([PATH, 2, 'cut:a'], CHAIN, 'over 0', SOURCE),
  checkRegion: row([PLATE], 'anything'),
  repairRegion: row([[]], { list: 'made' }),
  parseSvgPath: row(['M0 0 H4'], 'text'),
  toSvgPath: row([[], { digits: 3 }], { list: 'made' }, maybe({ keys: { digits: maybe('0 or more') } })),
  openSvgPath: row([PATH, { digits: 3 }], { list: EDGE }, maybe({ keys: { digits: maybe('0 or more') } })),
  parseWkt: row(['POLYGON EMPTY'], 'text'),
  regionFromWkt: row(['POLYGON EMPTY'], 'text'),
  toWkt: row([PLATE], 'region'),
  toFlatten: row([PLATE], 'region'),
  fromFlatten: row([toFlatten(PLATE)], 'made'),
  regionFromJson: row([[]], { list: 'made' }),
  regionToJson: row([PLATE], 'region'),
  toGeoJson: row([PLATE, 0.1], 'region', 'over 0'),
  regionFromGeoJson: row([{ type: 'MultiPolygon', coordinates: [[]] }], {
    keys: { type: 'word', coordinates: { list: { list: 'made' } } },
  }),
  toSvgDocument: row(
    [PLATE, { margin: 1, fill: '#123', unit: 'mm', digits: 3 }],
    'region',
    maybe({
      keys: {
        margin: maybe('0 or more'),
        fill: maybe('text'),
        unit: maybe('word'),
        digits: maybe('0 or more'),
      },
    }),
  ),
  movedRegion: row([PLATE, { dx: 3, dy: 4 }], 'region', VECTOR),
  turnedRegion: row([PLATE, 1, P(3, 4)], 'region', N, maybe(POINT)),
  mirroredRegion: row([PLATE, P(0, 0), P(3, 4)], 'region', POINT, POINT),
  scaledRegion: row([PLATE, 2, P(3, 4)], 'region', 'over 0', maybe(POINT)),
  polygonsOf: row([PLATE, 0.1], 'region', 'over 0'),
  secondMoments: row([PLATE, P(3, 4)], 'region', maybe(POINT)),
  nearestOnRegion: row([PLATE, P(3, 4)], 'region', POINT),
  gapBetweenRegions: row([PLATE, CUT], 'region', 'region'),
  relationOfRegions: row([PLATE, CUT], 'region', 'region'),
  splitByLine: row([PLATE, P(0, 0), P(3, 4), 'split'], 'region', POINT, POINT, SOURCE),
  convexHull: row([PLATE], 'region'),
  boundingCircle: row([PLATE], 'region'),
  smallestWidth: row([PLATE], 'region'),
  arcsFromPolyline: row(
    [[P(0, 0), P(1, 0), P(1, 1)], 0.1, { closed: true }],
    { some: POINT },
    'over 0',
    maybe({ keys: { closed: maybe('flag') } }),
  ),
  edgesToJson: row([PATH], { list: EDGE }),
  passesToJson: row([[{ leadIn: [], cut: PATH, leadOut: [], closed: false, outer: true, ccw: true }]], {
    list: { keys: { cut: CHAIN } },
  }),
};
