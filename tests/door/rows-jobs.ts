import {
  DOINGS,
  examine,
  laid,
  METALS,
  parseAim,
  parseJob,
  strengthOf,
  TOOL_KINDS,
  TOOL_MATERIALS,
} from '@edgebite/core';
import { POINT, type What } from './bad-values.js';
import { maybe, P, type Row, row } from './rows-geometry.js';

const NAMES = maybe({ list: { keys: { of: 'text', name: 'text' } } });
const OF_FRONT = [{ of: 'outline:0', name: 'front' }];

const N = 'number';
export const WATCHED = { signal: { aborted: false }, progress: () => {} };
export const WATCH: What = maybe({
  keys: { signal: maybe({ keys: { aborted: 'flag' } }), progress: maybe('function') },
});
const orNull = (what: What): What => ({ orNull: what });
export const JOB = parseJob({
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [120, 30] }, thickness: 12 },
  cuts: [
    { id: 'seat', kind: 'annular', center: [70, 14], diameter: 26, wall: 4.5 },
    { id: 'hole', kind: 'bore', center: [25, 15], diameter: 8 },
    { id: 'bite', kind: 'bore', center: [0, 15], diameter: 16 },
  ],
  setups: [
    {
      id: 'first',
      zero: {
        x: [{ touch: 'left', tool: 10 }],
        y: [{ touch: 'front', tool: 10 }],
      },
      cuts: ['seat', 'hole', 'bite'],
    },
  ],
});
export const REPORT = examine(JOB);
const AIM = {
  edgebite: 1,
  units: 'mm',
  blank: { rectangle: [60, 30] },
  finished: { rectangle: [60, 30], holes: [{ circle: 8, at: [20, 15] }] },
  pockets: [],
  keep: [5, 5],
  thickness: 10,
  material: 'mild steel',
  drawer: [{ id: 'drill', kind: 'drill', toolMaterial: 'HSS', diameter: 8, reach: 60 }],
};
const DRAWER = { edgebite: 1, units: AIM.units, drawer: AIM.drawer };
const SETUP = JOB.setups[0] as NonNullable<(typeof JOB.setups)[number]>;
const PART = { units: 'mm', tolerances: null, sizeTolerance: null } as const;
const LAY = laid(SETUP, PART);
const link = {
  kind: 'touch',
  action: 0,
  name: null,
  of: null,
  side: null,
  length: 10,
  by: 5,
  units: 'mm',
  way: 1,
  tolerance: null,
};
const range = [10, 20];
const drill = { kind: TOOL_KINDS[0], diameter: 8 };
const WORD_AND_WIDTH: What = { keys: { kind: 'word', diameter: 'over 0' } };
const EDGE_OF_REPORT = { kind: 'line', a: [0, 0], b: [1, 0] };

/** Rows of setups, cutting numbers, jobs and reports. */
export const JOBS: Readonly<Record<string, Row>> = {
  axesOf: row([{ flip: null, turn: 90 }], { keys: { flip: orNull('word'), turn: N } }),
  laid: row([SETUP, PART], 'made', {
    keys: { units: 'word', tolerances: orNull('word'), sizeTolerance: orNull(N) },
  }),
  placeUnder: row([LAY, [1, 2]], 'made', 'made'),
  readoutAt: row([LAY, P(1, 2)], 'made', POINT),
  targetAt: row([LAY, P(1, 2)], 'made', POINT),
  stackOf: row([[0.1, 0.2]], { list: '0 or more' }),
  toStep: row([1.234, 0.01], N, 'over 0'),
  sizeOfLink: row(
    [link, 'mm', null],
    { keys: { kind: 'word', length: orNull(N), by: N, units: 'word', way: 'sense', tolerance: orNull(N) } },
    'word',
    orNull('word'),
  ),
  generalTolerance: row([20, 'm'], '0 or more', 'word'),
  inUnit: row([20, 'mm', 'inch'], N, 'word', 'word'),
  breakOffOf: row([strengthOf('brass'), 5, 1, 'mm'], 'made', 'over 0', 'over 0', 'word'),
  breakingMoment: row([strengthOf('brass'), 5, 1], 'made', 'over 0', 'over 0'),
  elasticMoment: row([100, 5, 1], '0 or more', 'over 0', 'over 0'),
  plasticMoment: row([100, 5, 1], '0 or more', 'over 0', 'over 0'),
  shearForce: row([range, 5], 'made', '0 or more'),
  densityOf: row(['brass'], 'text'),
  massOf: row([10, 8, 'mm'], '0 or more', 'over 0', 'word'),
  doingOf: row([drill, { kind: 'bore', diameter: 8 }], WORD_AND_WIDTH, WORD_AND_WIDTH),
  travelOfPass: row([{ doing: 'drills', depth: 5, diameter: 8 }], {
    keys: { doing: 'word', depth: '0 or more', diameter: 'over 0' },
  }),
  feedOfDoing: row(
    [
      {
        doing: DOINGS[0],
        kind: TOOL_KINDS[0],
        metal: METALS[0],
        diameter: 8,
        teeth: 2,
        units: 'mm',
        spindle: range,
        own: null,
      },
    ],
    {
      keys: {
        doing: 'word',
        kind: 'word',
        metal: orNull('word'),
        diameter: 'over 0',
        teeth: orNull('over 0'),
        units: 'word',
        spindle: orNull('made'),
        own: orNull('made'),
      },
    },
  ),
  minutesOfPass: row([100, range], '0 or more', orNull('made')),
  feedFor: row(['drill', 'brass', 8, 'mm'], 'word', 'word', 'over 0', 'word'),
  metalOf: row(['brass'], 'text'),
  feedPerTurnOf: row([[0.1, 0.2], 4], 'made', 'over 0'),
  feedRate: row([range, [0.1, 0.2]], 'made', 'made'),
  minutesFor: row([100, range], '0 or more', 'made'),
  spindleSpeed: row([range, 8, 'mm'], 'made', 'over 0', 'word'),
  surfaceSpeedOf: row([range, 8, 'mm'], 'made', 'over 0', 'word'),
  surfaceSpeedUnit: row(['mm'], 'word'),
  speedEntry: row(['drill', TOOL_MATERIALS[0], 'brass'], 'word', 'word', 'word'),
  surfaceSpeedFor: row(['drill', TOOL_MATERIALS[0], 'brass', 'm/min'], 'word', 'word', 'word', 'word'),
  spindleSetting: row([range, { tool: 3000, slowest: 60, fastest: 2000, speeds: [100, 200] }], 'made', {
    keys: {
      tool: orNull('over 0'),
      slowest: orNull('over 0'),
      fastest: orNull('over 0'),
      speeds: orNull({ list: 'over 0' }),
    },
  }),
  strengthOf: row(['brass'], 'word'),
  parseJob: row([JOB.document], 'made'),
  examine: row([JOB, WATCHED], 'made', WATCH),
  measured: row(
    [
      JOB,
      {
        cut: 'bite',
        arc: 0,
        readings: [{ way: 0, value: REPORT.checks[0]?.ways[0]?.reading, tolerance: 0.1 }],
        dial: undefined,
      },
    ],
    'made',
    {
      keys: {
        cut: 'word',
        arc: maybe('0 or more'),
        readings: { some: { keys: { way: '0 or more', value: N, tolerance: 'over 0' } } },
        dial: maybe('made'),
      },
    },
  ),
  examiner: row([JOB], 'made'),
  rangeOf: row(
    [JOB, { cut: 'hole', along: 'x', from: 24, to: 26 }, () => false],
    'made',
    { keys: { cut: 'word', along: 'word', from: N, to: N } },
    'watch',
  ),
  cautionsOf: row([REPORT], 'made'),
  betweenText: row([['outline:0', 'cut:a'], OF_FRONT], 'made', NAMES),
  sourceText: row(['outline:0', OF_FRONT], 'text', NAMES),
  fromReport: row([REPORT], 'made'),
  edgeFromReport: row([EDGE_OF_REPORT], { keys: { kind: 'word', a: 'made', b: 'made' } }),
  pointFromReport: row([[1, 2]], 'made'),
  regionFromReport: row([[]], { list: 'made' }),
  webMarks: row([REPORT], 'made'),
  knifeMarks: row([REPORT], 'made'),
  pathStands: row([{ path: [EDGE_OF_REPORT], toolPath: { passes: [] } }], {
    keys: { path: orNull({ list: 'made' }) },
  }),
  twinOf: row([JOB], 'made'),
  compareJobs: row([JOB, JOB], 'made', 'made'),
  parseAim: row([AIM], 'made'),
  parseDrawer: row([DRAWER], 'made'),
  propose: row([parseAim(AIM), WATCHED], 'made', WATCH),
  wayRowOf: row([REPORT, { toolChange: 2, turning: 3, tolerances: new Map() }], 'made', {
    keys: {
      toolChange: '0 or more',
      turning: '0 or more',
      tolerances: 'made',
    },
  }),
  aimJsonSchema: row([]),
  drawerJsonSchema: row([]),
  jobJsonSchema: row([]),
  reportJsonSchema: row([]),
};
