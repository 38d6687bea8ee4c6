import { rangeOf } from '@edgebite/core';
import type { What } from './bad-values.js';
import { maybe, type Row, row } from './rows-geometry.js';
import { JOB, REPORT } from './rows-jobs.js';

const N = 'number';
const ANSWER = rangeOf(JOB, { cut: 'bite', along: 'diameter', from: 14, to: 18 });
const LISTS = [
  ...['outline', 'slabs', 'pieces', 'webs', 'knifeEdges', 'floors', 'steps', 'bodies', 'merges', 'cuts'],
  ...['checks', 'setups', 'keepOut', 'findings', 'cautions', 'names', 'seams'],
];

/** A list of rows, of which each is looked at by what names it and where it is. */
const ROWS: What = { list: 'made' };

const WHOLE: What = {
  keys: {
    units: 'word',
    name: 'text',
    resolution: 'over 0',
    thickness: N,
    material: { orNull: 'text' },
    ...Object.fromEntries(LISTS.filter((key) => key !== 'seams').map((key) => [key, ROWS])),
  },
};
const OPTIONS = { theme: maybe('word'), idPrefix: maybe('id') };
const RANGE: What = {
  keys: {
    cut: 'text',
    along: 'word',
    units: 'word',
    from: N,
    to: N,
    now: N,
    intervals: 'made or none',
    events: 'made or none',
  },
};
const NAMES = maybe({ list: { keys: { of: 'text', name: 'text' } } });
const OF_FRONT = [{ of: 'outline:0', name: 'front' }];
const SETUP = REPORT.setups[0];
const LINK = SETUP?.zero.x.links[0];
const SCALE = { words: 'the readout', resolution: 0.005 };
const FINDINGS: What = { keys: { findings: 'made or none' } };
const INTERVAL = ANSWER.intervals[0];
const CHANGES = [{ what: 'relation', from: 'grazes', to: 'breaks out' }];

/** Of `@edgebite/svg` and its trees. */
export const SVG: Readonly<Record<string, Row>> = {
  draw: row(
    [REPORT, { theme: 'mono', idPrefix: 'a-', sheet: 'A3', upright: true, range: ANSWER }],
    WHOLE,
    maybe({ keys: { ...OPTIONS, sheet: maybe('word'), upright: maybe('flag'), range: maybe(RANGE) } }),
  ),
  drawSheets: row(
    [REPORT, { theme: 'mono', idPrefix: 'a-', sheet: 'A3', upright: true, range: ANSWER }],
    WHOLE,
    maybe({ keys: { ...OPTIONS, sheet: maybe('word'), upright: maybe('flag'), range: maybe(RANGE) } }),
  ),
  drawView: row(
    [REPORT, { theme: 'dark', idPrefix: 'a-', size: [200, 100], dimensions: true, labels: false }],
    WHOLE,
    maybe({
      keys: { ...OPTIONS, size: maybe('made'), dimensions: maybe('flag'), labels: maybe('flag') },
    }),
  ),
  drawStep: row(
    [REPORT, 0, { theme: 'mono', idPrefix: 'a-', size: [200, 100] }],
    WHOLE,
    '0 or more',
    maybe({ keys: { ...OPTIONS, size: maybe('made') } }),
  ),
  drawZero: row(
    [REPORT, { theme: 'mono', idPrefix: 'a-', setup: 'first', width: 180 }],
    WHOLE,
    maybe({ keys: { ...OPTIONS, setup: maybe('id'), width: maybe('made') } }),
  ),
  drawCheck: row(
    [REPORT, 0, { theme: 'mono', idPrefix: 'a-', ways: [0], width: 180 }],
    WHOLE,
    '0 or more',
    maybe({ keys: { ...OPTIONS, ways: maybe({ list: '0 or more' }), width: maybe('made') } }),
  ),
  drawRange: row(
    [ANSWER, { idPrefix: 'a-', width: 180 }],
    RANGE,
    maybe({ keys: { idPrefix: maybe('id'), width: maybe('made') } }),
  ),
  angleText: row([12.5], N),
  dimensionText: row([12.5, 'mm'], N, 'word'),
  fixed: row([12.5, 3], N, '0 or more'),
  numberText: row([12.5, 'inch'], N, 'word'),
  unitText: row(['mm'], 'word'),
  lengthText: row([12.5, 'mm'], N, 'word'),
  clean: row(['a'], 'text'),
  countText: row([2, 'web', 'webs'], N, 'text', maybe('text')),
  depthsText: row(
    [REPORT, [0]],
    { keys: { slabs: ROWS, thickness: N, units: 'word' } },
    { list: '0 or more' },
  ),
  depthText: row(
    [{ through: false, depth: 4, from: 'top' }, 'mm'],
    { keys: { through: 'flag', depth: N, from: 'word' } },
    'word',
  ),
  gravestFirst: row([REPORT], FINDINGS),
  levelsText: row([REPORT], FINDINGS),
  roleText: row(['slug'], 'word'),
  doneText: row(
    [LINK, (value: number) => String(value), SCALE],
    {
      keys: {
        kind: 'word',
        of: { orNull: 'text' },
        name: { orNull: 'text' },
        side: { orNull: 'word' },
        length: { orNull: N },
        units: 'word',
      },
    },
    'function',
    { keys: { words: 'word', resolution: N } },
  ),
  reachedText: row(['left'], 'text'),
  zeroAxes: row([SETUP], { keys: { zero: 'made', readout: 'made', heights: 'made' } }),
  alongText: row([ANSWER], { keys: { along: 'word' } }),
  changesText: row([CHANGES, 'bite', OF_FRONT], { list: { keys: { what: 'word' } } }, 'text', NAMES),
  intervalText: row(
    [INTERVAL, 'bite', OF_FRONT],
    { keys: { outcome: { keys: { relation: 'text', pieces: 'made' } }, adds: 'made or none' } },
    'text',
    NAMES,
  ),
  lostZeros: row([REPORT], WHOLE),
};

/** Of `@edgebite/previewer`. */
export const PREVIEWER: Readonly<Record<string, Row>> = {
  textReport: row([REPORT, { all: true }], WHOLE, maybe({ keys: { all: maybe('flag') } })),
};
