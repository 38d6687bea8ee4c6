import { disc, measurableIn, subtract, waysFor } from '@edgebite/core';
import { POINT, VECTOR, type What } from './bad-values.js';
import { CHAIN, CUT, EDGE, LINE, maybe, P, PATH, PLATE, type Row, row } from './rows-geometry.js';

const N = 'number';
const orNull = (what: What): What => ({ orNull: what });
const FACE = { face: EDGE, along: N, radius: 'over 0' } as const;
const PASSES = {
  metal: 'region',
  center: POINT,
  radius: 'over 0',
  bite: 'over 0',
  finish: maybe('0 or more'),
  spring: maybe('flag'),
  depth: maybe('over 0'),
  feed: maybe({ keys: { perTurn: 'over 0', rpm: 'over 0' } }),
} as const;
const passes = {
  metal: PLATE,
  center: P(82, 15),
  radius: 6,
  bite: 1,
  finish: 0.2,
  spring: true,
  depth: 5,
  feed: { perTurn: 0.1, rpm: 500 },
};
const LAYERS: What = { list: { keys: { from: N, to: N, metal: 'region' } } };
const layers = [{ from: 0, to: 10, metal: PLATE }];
const TOOL: What = { keys: { kind: 'word', center: POINT, radius: 'over 0' } };
const tool = { kind: 'circle', center: P(80, 15), radius: 5 };
const names = { tool: 'a drill', cut: 'seat', length: (v: number) => `${v} mm`, thing: (id: string) => id };
const NAMES: What = { keys: { tool: 'text', cut: 'text', length: 'function', thing: 'function' } };
const PLACE: What = {
  keys: { part: '0 or more', hole: orNull('0 or more'), edge: '0 or more', share: '0 or more' },
};
const STRETCH: What = { keys: { from: PLACE, to: PLACE } };
const stretch = {
  from: { part: 0, hole: null, edge: 0, share: 0.2 },
  to: { part: 0, hole: null, edge: 0, share: 0.8 },
};
const PATHS = {
  side: 'word',
  radius: 'over 0',
  allowance: maybe('0 or more'),
  milling: maybe('word'),
  lead: maybe('word'),
} as const;
const paths = { side: 'outside', radius: 3, allowance: 0.1, milling: 'climb', lead: 'none' };
const SPAN: What = { list: { keys: { from: N, to: N } } };
const BITTEN = subtract(PLATE, [disc(P(80, 15), 8, 'cut:a')]);
const seated = measurableIn(BITTEN);
const seat = seated.seats[0] ?? { cut: 'cut:a', center: P(0, 0), radius: 5, spans: [{ from: 0, to: 2 }] };
const SEAT: What = { keys: { cut: 'text', center: POINT, radius: 'over 0', spans: SPAN } };
const SEAT_OF_PINS: What = { keys: { radius: 'over 0', spans: SPAN } };
const gauges = { pins: [3, 4], balls: [5], feet: [30], shortest: 1 };
const GAUGES: What = {
  keys: { pins: { list: 'over 0' }, balls: { list: 'over 0' }, feet: { list: 'over 0' }, shortest: N },
};
const way = { kind: 'height', chord: 4 };
const WAY: What = { keys: { kind: 'word', chord: 'over 0' } };
const circle = { center: P(0, 0), radius: 5 };
const CIRCLE: What = { keys: { center: POINT, radius: 'over 0' } };
const estimate = { value: 5, worst: [4.9, 5.1], rss: 0.1 };
const fit = { center: P(0, 0), radius: estimate, x: null, y: null, residuals: [], contradicted: [] };

/** Rows of placing, loads, paths and measuring. */
export const TOOLS: Readonly<Record<string, Row>> = {
  placeByDistances: row(
    [
      PLATE,
      5,
      { from: 'edge', edge: 'outline:0', distance: 7, side: 'inside' },
      { from: 'edge', edge: 'outline:2', distance: 7, side: 'inside' },
    ],
    'region',
    'over 0',
    { keys: { from: 'word', edge: 'text', distance: N, side: 'word' } },
    { keys: { from: 'word', edge: 'text', distance: N, side: 'word' } },
  ),
  placeByDepth: row([{ face: LINE, along: 5, radius: 5, depth: 2 }], { keys: { ...FACE, depth: 'over 0' } }),
  placeByOpening: row([{ face: LINE, along: 5, radius: 5, opening: 4 }], {
    keys: { ...FACE, opening: 'over 0' },
  }),
  placementOn: row([LINE, P(5, 1), 4], EDGE, POINT, 'over 0'),
  bitesIn: row([PLATE, P(80, 15), 5], 'region', POINT, 'over 0'),
  placeThrough: row([P(0, 0), P(3, 3), P(6, 0)], POINT, POINT, POINT),
  placeTangent: row([2, LINE, PATH[1]], 'over 0', EDGE, EDGE),
  stepIn: row([{ ...passes, approach: { dx: -1, dy: 0 }, clear: { gap: 0.2, avoid: [PLATE] } }], {
    keys: {
      ...PASSES,
      approach: maybe(VECTOR),
      clear: maybe({ keys: { gap: 'over 0', avoid: maybe({ list: 'region' }) } }),
    },
  }),
  openOut: row([{ ...passes, center: P(40, 15), radius: 9, smallest: 1 }], {
    keys: { ...PASSES, smallest: maybe('0 or more') },
  }),
  knifeEdgesOf: row([PLATE, 30, 1], 'region', 'limit', 'limit'),
  websOf: row(
    [PLATE, 3, { signal: { aborted: false }, progress: () => {} }],
    'region',
    'limit',
    maybe({ keys: { signal: maybe({ keys: { aborted: 'flag' } }), progress: maybe('function') } }),
  ),
  interiorAngles: row([PLATE], 'region'),
  engagementOf: row([PLATE, P(80, 15), 5], 'region', POINT, 'over 0'),
  sideLoadOf: row([[{ start: 0, sweep: 1 }]], { list: { keys: { start: N, sweep: N } } }),
  ringEngagementOf: row([PLATE, P(80, 15), 5, 3], 'region', POINT, 'over 0', '0 or more'),
  biteAlong: row([PLATE, P(80, 15), 5, 2], 'region', POINT, 'over 0', N),
  largestBite: row([PLATE, P(80, 15), 5], 'region', POINT, 'over 0'),
  loadByHeight: row([tool, layers, 'top', true], TOOL, LAYERS, 'word', 'flag'),
  machineDirection: row(
    [
      { x: { dx: 1, dy: 0 }, y: { dx: 0, dy: 1 } },
      { dx: 1, dy: 1 },
    ],
    { keys: { x: VECTOR, y: VECTOR } },
    'number',
  ),
  placeFacts: row(
    [{ doing: 'plunges', cutsToCenter: false, center: P(80, 15), radius: 5, layers, metal: 'brass' }],
    {
      keys: {
        doing: 'word',
        cutsToCenter: orNull('flag'),
        center: POINT,
        radius: 'over 0',
        layers: LAYERS,
        metal: orNull('word'),
      },
    },
  ),
  placeRemark: row(
    [{ kind: 'plunges on its center', known: true, atDepth: 1 }, names],
    { keys: { kind: 'word', known: 'flag', atDepth: N } },
    NAMES,
  ),
  noWayWords: row(
    [{ reason: 'no room', within: 3, clearance: 1 }, 'bores', { length: names.length, thing: names.thing }],
    { keys: { reason: 'word', within: N, clearance: N } },
    orNull('word'),
    { keys: { length: 'function', thing: 'function' } },
  ),
  underneathRemark: row(
    [{ below: 3, over: 'jaw', margin: 1 }, 2, names],
    { keys: { below: N, over: orNull('text'), margin: orNull(N) } },
    N,
    NAMES,
  ),
  underneath: row(
    [
      { cut: 'bore', tool: 'drill', diameter: 8, depth: 12, through: true, reach: null },
      PLATE,
      12,
      [{ id: 'jaw', kind: 'jaw', setup: null, region: PLATE, from: -5, to: 0 }],
    ],
    {
      keys: {
        cut: 'word',
        tool: orNull('word'),
        diameter: 'over 0',
        depth: N,
        through: 'flag',
        reach: orNull(N),
      },
    },
    'region',
    'over 0',
    { list: { keys: { id: 'text', region: 'region', from: N, to: N } } },
  ),
  wayOff: row([{ tool, layers, clearance: 0.5, keepOuts: [{ id: 'jaw', region: CUT }] }], {
    keys: {
      tool: TOOL,
      layers: LAYERS,
      clearance: N,
      keepOuts: { list: { keys: { id: 'text', region: 'region' } } },
    },
  }),
  furthestOff: row([5, 1], 'over 0', '0 or more'),
  metalReach: row([5, 1], 'over 0', '0 or more'),
  centerPath: row([PLATE, { ...paths, start: P(0, 0), order: 'nearest' }], 'region', {
    keys: { ...PATHS, start: maybe(POINT), order: maybe('word') },
  }),
  centerPathAlong: row([PLATE, stretch, paths], 'region', STRETCH, { keys: PATHS }),
  edgesOfPass: row([{ leadIn: [], cut: PATH, leadOut: [] }], {
    keys: { leadIn: { list: 'made' }, cut: CHAIN, leadOut: { list: 'made' } },
  }),
  isOnStretch: row([PLATE, stretch, P(10, 0)], 'region', STRETCH, POINT),
  placeNear: row([PLATE, P(10, 3)], 'region', POINT),
  placeOfSource: row([PLATE, 'outline:0', 'end'], 'region', 'text', 'word'),
  gouges: row(
    [PATH, 3, PLATE, { side: 'inside', tolerance: 0.1 }],
    { list: EDGE },
    'over 0',
    'region',
    maybe({
      keys: { side: maybe('word'), tolerance: maybe('0 or more') },
    }),
  ),
  unreached: row(
    [PLATE, 4, { side: 'inside', allowance: 0.1, tolerance: 0.1 }],
    'region',
    'over 0',
    maybe({
      keys: { side: maybe('word'), allowance: maybe('0 or more'), tolerance: maybe('0 or more') },
    }),
  ),
  isoWords: row(
    [
      [PATH],
      {
        units: 'mm',
        unitWords: 'G20/G21',
        coordinates: 'absolute',
        decimals: 3,
        alwaysPoint: true,
        splitOverHalfTurn: true,
        tolerance: 0.01,
        feed: 100,
        heights: { clear: 5, cut: -1 },
      },
    ],
    { list: CHAIN },
    {
      keys: {
        units: 'word',
        unitWords: maybe('word'),
        coordinates: maybe('word'),
        decimals: maybe('0 or more'),
        alwaysPoint: maybe('flag'),
        splitOverHalfTurn: maybe('flag'),
        tolerance: maybe('over 0'),
        feed: maybe('over 0'),
        heights: maybe({ keys: { clear: N, cut: N } }),
      },
    },
  ),
  checksIn: row(
    [[{ from: 0, to: 5, region: PLATE }], gauges],
    {
      list: { keys: { from: N, to: N, region: 'region' } },
    },
    GAUGES,
  ),
  correctionOf: row(
    [circle, [{ from: 0, to: 2 }], fit, { step: 0.02, on: 'diameter' }],
    CIRCLE,
    SPAN,
    { keys: { center: POINT } },
    { keys: { step: 'over 0', on: 'word' } },
  ),
  fitCircle: row([circle, [{ way, value: 1, tolerance: 0.1 }]], CIRCLE, {
    some: { keys: { way: WAY, value: N, tolerance: 'over 0' } },
  }),
  measurableIn: row([PLATE], 'region'),
  readingOf: row([way, circle], WAY, CIRCLE),
  slopesOf: row([way, circle], WAY, CIRCLE),
  pairsFor: row([seat, { dx: 0, dy: 1 }], SEAT_OF_PINS, VECTOR),
  pinFault: row([seat, { dx: 0, dy: 1 }, 2, 1], SEAT_OF_PINS, VECTOR, 'over 0', 'word'),
  coverageOf: row([[0.1, 0.2], 0.95], { list: '0 or more' }, 'over 0'),
  trialOf: row(
    [
      seat,
      waysFor(seat, seated, gauges),
      { dial: { step: 0.02, on: 'diameter' }, leaves: 0.5, good: 0.01, place: 0.02 },
    ],
    SEAT,
    { list: 'made' },
    {
      keys: {
        dial: { keys: { step: 'over 0', on: 'word' } },
        leaves: 'over 0',
        good: 'over 0',
        place: '0 or more',
      },
    },
  ),
  waysFor: row([seat, seated, gauges], SEAT, 'made', GAUGES),
};
