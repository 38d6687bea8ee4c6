import type { Report } from '@edgebite/core';
import { draw } from '@edgebite/svg';
import { describe, expect, it } from 'vitest';
import { sheetCsv } from '../../packages/previewer/src/sheet/csv.js';
import { sheetHtml } from '../../packages/previewer/src/sheet/html.js';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../packages/previewer/src/sheet/text.js';
import { textReport } from '../../packages/previewer/src/text/report.js';
import { bore, codes, finder, messageOf, reportOn, setup } from './setup-jobs.js';

/* A plate 80 by 40 and 10 thick. What bites a face in the first setup is not there any more in the second. */

const FACE = ['face-cut-away', 'face-bitten', 'face-not-flat', 'tip-in-metal'];
const faces = (report: Report) => codes(report).filter((code) => FACE.includes(code));

const mill = (path: string, diameter: number, over: object = {}) => ({
  id: 'mill',
  kind: 'swept',
  diameter,
  path: { svgPath: path },
  ...over,
});

const two = (cut: object, second: object, over: object = {}) =>
  reportOn(
    [cut as Record<string, unknown>, bore('eye', [40, 20], 6)],
    [setup([String((cut as { id: string }).id)]), setup(['eye'], { id: 't', ...second })],
    { keep: [40, 30], ...over },
  );

describe('a face that a zero is taken from', () => {
  it('is cut away before: nothing is there to touch', () => {
    // A path along x = 0 with a tool of 6 takes the whole left end, 3 deep.
    const gone = two(mill('M0 -5 V45', 6), {});
    expect(messageOf(gone, 'face-cut-away')).toBe(
      'In setup t, X is taken from the left end, but cut mill has taken that face away before: nothing stands there to touch. Take the zero from a face that stands.',
    );
    const found = gone.findings.find(({ code }) => code === 'face-cut-away');
    expect(found?.level).toBe('danger');
    expect(found?.about).toEqual(['setup:t', 'cut:mill', 'step:1']);
    expect(gone.steps[1]?.findings.map((k) => gone.findings[k]?.code)).toContain('face-cut-away');
  });

  it('is cut away before: then no target that is counted from it is printed', () => {
    const gone = two(mill('M0 -5 V45', 6), {});
    const standing = two(mill('M0 -5 V45', 6), { zero: { x: [finder('right')], y: [finder('front')] } });
    const [target] = gone.setups.find(({ id }) => id === 't')?.targets ?? [];
    const [x = '', y = ''] = (target?.readout ?? []).map((value) => value.toFixed(3));
    const ofStep = (text: string) => text.slice(text.lastIndexOf('\nSetup'));
    const sheets = (report: Report) => {
      const sheet = sheetOf(report);
      const only = { ...sheet, blocks: sheet.blocks.filter(({ setup }) => setup === 't') };
      return [sheetText(only), sheetHtml(only), sheetCsv(only)];
    };
    const told = [ofStep(textReport(gone)), ...sheets(gone)];
    expect(x).toMatch(/^-?\d+\.\d{3}$/);
    for (const text of told) expect(text).not.toContain(x);
    expect(told[0]).toContain('at X \u2014 Y \u2014');
    expect(textReport(gone, { all: true })).toContain(
      'No targets: the zero cannot be found so; see the findings.',
    );
    expect(draw(gone)).toContain('X \u2014 Y \u2014');
    // From a face that stands there are some.
    expect(textReport(standing)).toMatch(/at X -?\d+\.\d+ Y -?\d+\.\d+/);
    expect(sheets(standing)[0]).toContain(y);
    expect(draw(standing)).not.toContain('\u2014 Y');
  });

  it('is cut away under it as the part lies then, whichever way', () => {
    // The drawn left end is at the right when turned by 180, in front by 90, at the back by 270, at the right over y.
    const zero = (x: string, y: string) => ({ x: [finder(x)], y: [finder(y)] });
    const lies = [
      [{ turn: 180 }, 'right', 'back', 'X is taken from the right end'],
      [{ turn: 90 }, 'left', 'front', 'Y is taken from the front'],
      [{ turn: 270 }, 'left', 'back', 'Y is taken from the back'],
      [{ flip: 'y' }, 'right', 'front', 'X is taken from the right end'],
    ] as const;
    for (const [lie, x, y, words] of lies) {
      const report = two(mill('M0 -5 V45', 6), { ...lie, zero: zero(x, y) });
      expect(messageOf(report, 'face-cut-away')).toContain(words);
      expect(faces(report).filter((code) => code === 'face-cut-away')).toHaveLength(1);
    }
    expect(faces(two(mill('M0 -5 V45', 6), { turn: 180 }))).not.toContain('face-cut-away');
  });

  it('is bitten before: it says what stands, in readout numbers', () => {
    // A bore of 12 at the middle of the left end takes it from y = 14 to 26. In front, 5 is added to y.
    const report = two(bore('bite', [0, 20], 12), {});
    expect(messageOf(report, 'face-bitten')).toBe(
      'In setup t, X is taken from the left end, of which cut bite has taken a part before: over the whole thickness it stands from Y 5.000 to 19.000, and from Y 31.000 to 45.000. See that there is metal where you use it to touch.',
    );
    expect(report.findings.find(({ code }) => code === 'face-bitten')?.level).toBe('check');
    // In the setup that bites it the face is still whole, and at the other end it is.
    expect(faces(report)).toEqual(['face-bitten']);
    expect(faces(two(bore('bite', [80, 20], 12), {}))).toEqual([]);
  });

  it('is bitten in a part of its height only', () => {
    const report = two(mill('M0 -5 V45', 6, { depth: 4 }), {});
    expect(messageOf(report, 'face-bitten')).toContain('nowhere does it stand over the whole thickness');
  });

  it('is a corner as the part lies', () => {
    const report = reportOn([bore('eye', [40, 20], 6)], [setup(['eye'], { turn: 45 })]);
    expect(faces(report)).toEqual(['face-not-flat', 'face-not-flat']);
    // Turned by 45, the corner (0, 40) is furthest left; above the lowest one, (0, 0), it lies 40 sin 45, and 5 is added.
    expect(messageOf(report, 'face-not-flat')).toContain(`at Y ${(5 + 40 * Math.SQRT1_2).toFixed(3)}.`);
  });
});

describe('a tip', () => {
  const window = (width: number, by: object) =>
    reportOn(
      [bore('eye', [60, 20], 6)],
      [setup(['eye'], { zero: { x: [by], y: [finder('front', { units: 'mm' })] } })],
      {
        part: {
          outline: { rectangle: [80, 40], holes: [{ rectangle: [width, 20], at: [20, 10] }] },
          thickness: 10,
        },
      },
    );

  it('has no room in a window narrower than itself, and has in one as wide', () => {
    const wall = finder('hole:0:3');
    expect(faces(window(9.9, wall))).toEqual(['tip-in-metal']);
    expect(messageOf(window(9.9, wall), 'tip-in-metal')).toContain('with a tip of 10.000 mm');
    expect(faces(window(10.1, wall))).toEqual([]);
    expect(faces(window(8, { ...wall, tip: 6 }))).toEqual([]);
    // A tip of 3/8 in is 9.525; the tool itself counts as a tip does.
    for (const key of ['tip', 'tool']) {
      const by = { touch: 'hole:0:3', [key]: 0.375, units: 'inch', reads: 0 };
      expect(messageOf(window(9.5, by), 'tip-in-metal')).toContain('with a tip of 9.525 mm');
      expect(faces(window(9.55, by))).toEqual([]);
    }
  });

  it('has no room where a jaw stands up to the face', () => {
    const jaw = (to: number, width = 100) => ({
      keepOut: [{ id: 'j', kind: 'jaw', shape: { rectangle: [width, 10], at: [-10, -10] }, from: -5, to }],
    });
    const report = (over: Record<string, unknown>) =>
      reportOn([bore('eye', [40, 20], 6)], [setup(['eye'])], over);
    expect(faces(report(jaw(10)))).toEqual(['tip-in-metal']);
    // A lower jaw leaves the upper part of the face; a shorter one its end.
    expect(faces(report(jaw(6)))).toEqual([]);
    expect(faces(report(jaw(10, 60)))).toEqual([]);
  });
});

describe('a tip and a jaw at a face of which one half stands', () => {
  // The upper half of the left end is cut away, 5 deep; a jaw beside it stands 6 high. As drawn what stands is behind the
  // jaw; turned over about x it is the upper half, over it. Cut from below it is the other way round.
  const jaw = { id: 'j', kind: 'jaw', shape: { rectangle: [10, 100], at: [-10, -30] }, from: -5, to: 6 };
  const keepOut = [{ ...jaw, setup: 't' }];
  it.each([
    ['top', {}, true],
    ['top', { flip: 'x' }, false],
    ['bottom', {}, false],
    ['bottom', { flip: 'x' }, true],
  ] as const)('cut from the %s, %j', (from, lie, isBehind) => {
    const cut = mill('M0 -5 V45', 6, { depth: 5, from });
    const report = reportOn(
      [cut, bore('eye', [40, 20], 6)],
      [
        setup(
          ['mill'],
          from === 'top' ? {} : { flip: 'y', zero: { x: [finder('right')], y: [finder('front')] } },
        ),
        setup(['eye'], { id: 't', ...lie }),
      ],
      { keep: [40, 30], keepOut },
    );
    expect(codes(report).includes('tip-in-metal')).toBe(isBehind);
  });
});

describe('a middle', () => {
  const part = { outline: { rectangle: [80, 40], holes: [{ circle: 10, at: [20, 20] }] }, thickness: 10 };
  const dialled = { zero: { x: [{ 'dial in': 'hole:0' }], y: [{ 'dial in': 'hole:0' }] } };

  it('has its wall cut away, or a part of it', () => {
    expect(faces(two(bore('wide', [20, 20], 14), dialled, { part }))).toEqual([
      'face-cut-away',
      'face-cut-away',
    ]);
    expect(faces(two(bore('by', [26, 20], 6), dialled, { part }))).toEqual(['face-bitten', 'face-bitten']);
    expect(faces(two(bore('far', [60, 20], 6), dialled, { part }))).toEqual([]);
  });

  it('of a mark is in the air', () => {
    const mark = (at: readonly [number, number]) => ({
      zero: { x: [{ 'dial in': at }], y: [finder('front')] },
    });
    expect(faces(two(bore('hole', [20, 20], 10), mark([20, 20])))).toEqual(['face-cut-away']);
    expect(faces(two(bore('hole', [20, 20], 10), mark([60, 20])))).toEqual([]);
  });
});

describe('what a part lies on or against', () => {
  const thing = (kind: string, shape: object, from: number, to: number) => ({
    keepOut: [{ id: 'k', kind, shape, from, to, setup: 't' }],
  });
  const against = (block: object = {}) => ({
    stops: [{ id: 's', face: 'left' }],
    zero: { x: [finder('s'), { bears: 'left', on: 's', ...block }], y: [finder('front')] },
  });
  const reportWith = (over: object, second: object) => two(bore('bite', [0, 20], 12), second, over);
  const bitten = (over: object, second: object = against()) =>
    codes(reportWith(over, second)).filter((code) => /on-nothing|grip-lost/.test(code));

  it('bears on air, or where metal has been cut away before', () => {
    const stop = (y: number, x = -10) => thing('stop', { rectangle: [10, 4], at: [x, y] }, 2, 6);
    expect(bitten(stop(4))).toEqual([]);
    expect(bitten(stop(18))).toEqual(['stop-bears-on-nothing']);
    expect(bitten(stop(4, -12))).toEqual(['stop-bears-on-nothing']);
    expect(messageOf(reportWith(stop(18), against()), 'stop-bears-on-nothing')).toContain(
      'what it was to bear on has been cut away before',
    );
    const parallel = (y: number) => thing('parallel', { rectangle: [5, 4], at: [0, y] }, -20, 0);
    expect(bitten(parallel(2))).toEqual([]);
    expect(bitten(parallel(18))).toEqual(['parallel-bears-on-nothing']);
    const jaw = (y: number) => thing('jaw', { rectangle: [10, 4], at: [-10, y] }, -5, 6);
    expect(bitten(jaw(4))).toEqual([]);
    expect(bitten(jaw(18))).toEqual(['grip-lost']);
    expect(messageOf(reportWith(jaw(18), against()), 'grip-lost')).toContain('has been cut away before');
  });

  it('may stand off where a block lies between, and where nothing bears on it', () => {
    const stop = thing('stop', { rectangle: [10, 4], at: [-30, 4] }, 2, 6);
    expect(bitten(stop, against({ block: 20 }))).toEqual([]);
    expect(bitten(stop, {})).toEqual([]);
    expect(bitten(stop)).toEqual(['stop-bears-on-nothing']);
  });

  it('bears where metal stands, though the face is bitten elsewhere', () => {
    const stop = (y: number) => thing('stop', { rectangle: [10, 4], at: [-10, y] }, 2, 6);
    expect(faces(reportWith(stop(4), against()))).toEqual([]);
    expect(faces(reportWith({}, against()))).toEqual(['face-bitten']);
  });
});
