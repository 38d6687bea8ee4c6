import { describe, expect, it } from 'vitest';
import { bore, codes, finder, messageOf, reportOn, setup } from './setup-jobs.js';

const NEAR = { limits: { web: 1, knifeEdge: 60 } };

describe('what a setup lacks', () => {
  it('is told: any tolerance at all', () => {
    const { tolerance: _, ...plain } = finder('front');
    const report = reportOn(
      [bore('a', [40, 20], 8)],
      [setup(['a'], { zero: { x: [finder('left')], y: [plain] } })],
    );
    expect(messageOf(report, 'zero-without-tolerance')).toContain('in the chain of y:');
  });

  it('is told: a readout coarser than the zero', () => {
    const zero = { x: [finder('left', { tolerance: 0.001 })], y: [finder('front')] };
    const coarse = { readout: { resolution: 0.01 }, zero };
    const report = reportOn(
      [bore('a', [40.004, 20], 8), bore('b', [60, 20], 8)],
      [setup(['a', 'b'], coarse)],
    );
    expect(messageOf(report, 'rounding-over-tolerance')).toContain('rounding alone moves cut a by more');
    // 40.000 is a whole step, and 20.004 is off by less than the 0.02 of the chain in y.
    expect(codes(reportOn([bore('a', [40, 20.004], 8)], [setup(['a'], coarse)]))).toEqual([]);
  });

  it('is told: the order of the cuts', () => {
    const cuts = [bore('a', [20, 20], 8), bore('b', [60, 20], 8)];
    expect(() => reportOn(cuts, [setup(['b']), setup(['a'], { id: 't' })])).toThrow(
      '/setups: make the cuts in another order than the job lists them. The setups: b, a; the job: a, b.',
    );
    // Made once more in a later setup, a cut has its place in the first.
    expect(codes(reportOn(cuts, [setup(['a']), setup(['a', 'b'], { id: 't' })]))).not.toContain(
      'setup-order',
    );
    expect(codes(reportOn(cuts, [setup(['a']), setup(['b'], { id: 't' })]))).toEqual([]);
    expect(codes(reportOn(cuts, [setup(['b', 'a'])]))).toEqual([]);
  });
});

describe('a verdict that errors can turn round', () => {
  // The setup's zero may be off by 0.02, and reading by 0.0025.
  it.each([
    ['a web just over the limit', 5.01, 'web-may-be-thin', 'check'],
    ['a web just under it', 4.99, 'web-may-be-enough', 'note'],
    ['a web that may go', 4.01, 'may-break-out', 'check'],
    ['a hole that breaks out by a hair', 3.99, 'may-not-break-out', 'check'],
    ['a hole that misses by a hair', -4.015, 'may-touch', 'check'],
  ])('%s', (_, y, code, level) => {
    const report = reportOn([bore('a', [40, y], 8)], [setup(['a'])], NEAR);
    expect(codes(report)).toContain(code);
    expect(report.findings.find((finding) => finding.code === code)?.level).toBe(level);
  });

  it.each([
    ['a web well over the limit', 5.03],
    ['a web well under it', 4.9],
    ['a hole that breaks out', 3.9],
    ['a hole that misses', -4.1],
  ])('is not %s', (_, y) => {
    const report = reportOn([bore('a', [40, y], 8)], [setup(['a'])], NEAR);
    expect(codes(report).filter((code) => code.startsWith('may-') || code.startsWith('web-may'))).toEqual([]);
  });

  it.each([
    ['may-touch', -4.1, 'Cut a misses the part as drawn, but can come out 0.103 mm deep in it'],
    ['may-not-break-out', 3.9, 'Cut a breaks out as drawn, but can come out 0.103 mm short of that'],
  ])('%s counts the worse of two setups, whichever comes first', (code, y, message) => {
    // Off by 0.203 in the one, of which 0.0025 are half a step, and 0.0225 in the other; 0.1 from the face as drawn.
    // By root of squares hypot(0.2005, 0.0025) = 0.2005, which leaves 0.1005.
    const zero = { x: [finder('left')], y: [finder('front', { tolerance: 0.2005 })] };
    const coarse = setup(['a'], { zero });
    const fine = setup(['a'], { id: 't' });
    for (const setups of [
      [coarse, fine],
      [
        { ...fine, id: 's' },
        { ...coarse, id: 't' },
      ],
    ]) {
      const told = messageOf(reportOn([bore('a', [40, y], 8)], setups, NEAR), code);
      expect(told).toBe(`${message} at worst, 0.101 mm by root of squares.`);
    }
    expect(codes(reportOn([bore('a', [40, y], 8)], [fine, { ...fine, id: 'u' }], NEAR))).not.toContain(code);
  });

  it('counts both ends of a web with the worse of two setups, whichever comes first', () => {
    // As there, 0.203 in the one: 1.1 drawn comes out at 0.897 to 1.303. By root of squares it is hypot(0.2005, 0.0025).
    const zero = { x: [finder('left')], y: [finder('front', { tolerance: 0.2005 })] };
    const coarse = setup(['a'], { zero });
    const fine = setup(['a'], { id: 't' });
    for (const setups of [
      [coarse, fine],
      [
        { ...fine, id: 's' },
        { ...coarse, id: 't' },
      ],
    ]) {
      const report = reportOn([bore('a', [40, 5.1], 8)], setups, { limits: { web: 1.2, knifeEdge: 60 } });
      const [web] = report.webs;
      const off = Math.hypot(0.2005, 0.0025);
      expect(web?.interval?.worst).toEqual([expect.closeTo(0.897, 9), expect.closeTo(1.303, 9)]);
      expect(web?.interval?.rss).toEqual([expect.closeTo(1.1 - off, 9), expect.closeTo(1.1 + off, 9)]);
    }
  });

  it('says by how much a hole can come out short of breaking out, or how deep in the part', () => {
    // As there, 0.023 either way. Drawn 0.010 past the face it can end 0.013 short of it; drawn 0.015 off, 0.008 in it.
    // By root of squares sqrt(0.0205² + 0.0025²) = 0.02065 either way: 0.01065 short, 0.00565 in it.
    const zero = { x: [finder('left')], y: [finder('front', { tolerance: 0.0205 })] };
    const at = (y: number) => reportOn([bore('a', [40, y], 8)], [setup(['a'], { zero })], NEAR);
    expect(messageOf(at(3.99), 'may-not-break-out')).toBe(
      'Cut a breaks out as drawn, but can come out 0.013 mm short of that at worst, 0.011 mm by root of squares.',
    );
    expect(messageOf(at(-4.015), 'may-touch')).toBe(
      'Cut a misses the part as drawn, but can come out 0.008 mm deep in it at worst, 0.006 mm by root of squares.',
    );
  });

  it('says between what the web can come out', () => {
    // 0.0205 of the finder and 0.0025 of reading; sqrt(0.0205² + 0.0025²) = 0.02065.
    const zero = { x: [finder('left')], y: [finder('front', { tolerance: 0.0205 })] };
    const report = reportOn([bore('a', [40, 5.01], 8)], [setup(['a'], { zero })], NEAR);
    expect(messageOf(report, 'web-may-be-thin')).toBe(
      'The web of 1.010 mm between cut a and the front as it lies can come out between 0.987 mm and 1.033 mm at worst, 0.989 mm and 1.031 mm by root of squares: it may be under the limit of 1.000 mm.',
    );
  });

  it('is a web between two holes that may run into each other', () => {
    const cuts = [bore('a', [30, 20], 8), bore('b', [38.002, 20], 8)];
    expect(messageOf(reportOn(cuts, [setup(['a', 'b'])]), 'web-may-go')).toContain(
      'the two may run into each other',
    );
  });

  it.each([
    // cos 60 = h / r: with r = 10 the corner has 60 degrees at h = 5, and turns by 1 / (10 sin 60) a millimetre.
    ['a corner just over the limit', 4.99, 'knife-edge-may-be', 'check'],
    ['a corner just under it', 5.01, 'knife-edge-may-be-enough', 'note'],
  ])('is %s', (_, y, code, level) => {
    const report = reportOn([bore('a', [40, y], 20)], [setup(['a'])], NEAR);
    expect(
      report.findings.filter((finding) => finding.code === code).map((finding) => finding.level),
    ).toEqual([level, level]);
  });

  it('is not a corner far from the limit', () => {
    for (const y of [4.9, 5.1]) {
      const report = reportOn([bore('a', [40, y], 20)], [setup(['a'])], NEAR);
      expect(codes(report).filter((code) => code.startsWith('knife-edge-may'))).toEqual([]);
    }
  });

  it('is told once for a web that goes through several slabs', () => {
    const pocket = bore('p', [70, 30], 6, { depth: 3 });
    const report = reportOn([bore('a', [40, 5.01], 8), pocket], [setup(['a', 'p'])], NEAR);
    expect(report.slabs.length).toBe(2);
    expect(codes(report).filter((code) => code === 'web-may-be-thin')).toHaveLength(1);
  });
});
