import { describe, expect, it } from 'vitest';
import { bore, codes, finder, messageOf, reportOn, setup } from './setup-jobs.js';

type Plain = Record<string, unknown>;

/** A block of which the middle lies at (40, 20), 10 by 6, right in the way of a hole there. */
const block = (over: Plain = {}): Plain => ({
  id: 'k',
  kind: 'stop',
  shape: { rectangle: [10, 6], at: [35, 17] },
  from: 4,
  to: 20,
  ...over,
});

const near = (reach: number, over: Plain = {}): Plain =>
  block({ shape: { rectangle: [10, 6], at: [44 + reach, 17] }, ...over });

function found(
  cuts: readonly Plain[],
  keepOut: readonly Plain[],
  setups: readonly Plain[] | null = null,
  over: Plain = {},
) {
  return reportOn(cuts, setups, { keepOut, ...over });
}

const hole = bore('a', [40, 20], 8);
const pocket = bore('a', [40, 20], 8, { depth: 4 });

describe('a cutter in the way of something', () => {
  it.each([
    ['stop', 'hits-stop'],
    ['jaw', 'hits-jaw'],
    ['clamp', 'hits-clamp'],
    ['parallel', 'hits-parallel'],
  ])('%s is a danger', (kind, code) => {
    const report = found([hole], [block({ kind })]);
    expect(report.findings.find((finding) => finding.code === code)).toMatchObject({
      level: 'danger',
      at: [40, 20],
      about: ['cut:a', 'keepOut:k', 'step:0'],
    });
  });

  it('at its side counts, from the bottom of the cut upwards', () => {
    // The pocket goes down to 10 - 4 = 6. What ends at 6 is under the cutter, what ends above is beside it.
    expect(codes(found([pocket], [block({ to: 6 })]))).toEqual([]);
    expect(codes(found([pocket], [block({ to: 6.1 })]))).toEqual(['hits-stop']);
    expect(codes(found([pocket], [block({ from: 30, to: 40 })]))).toEqual(['hits-stop']);
  });

  it('in plan counts only where they share an area', () => {
    expect(codes(found([hole], [near(0.001)]))).toEqual([]);
    expect(codes(found([hole], [near(-0.001)]))).toEqual(['hits-stop']);
  });

  it.each(['x', 'y'] as const)('may be hit by as much as the zero is off along %s', (axis) => {
    // By hand: 0.5 along the one axis and 0.02 along the other, each with a step of 0.005: 0.5056 in all.
    const zero = { x: [finder('left')], y: [finder('front')] };
    zero[axis] = [finder(axis === 'x' ? 'left' : 'front', { tolerance: 0.5 })];
    const coarse = [setup(['a'], { zero })];
    expect(codes(found([pocket], [near(0.5)], coarse))).toContain('may-hit-stop');
    expect(codes(found([pocket], [near(0.51)], coarse))).not.toContain('may-hit-stop');
  });

  it('may be hit by the sum of what each thing in a chain is off, not by the root of its squares', () => {
    // By hand: 0.3 and 0.4 along x and a step, 0.705, 0.025 along y: 0.7054 in all. By root of squares it were 0.506.
    const chain = [finder('s', { tolerance: 0.3 }), { bears: 'left', on: 's', block: 20, tolerance: 0.4 }];
    const zero = { x: chain, y: [finder('front')] };
    const stopped = [setup(['a'], { stops: [{ id: 's', face: 'left' }], zero })];
    expect(codes(found([pocket], [near(0.7)], stopped))).toContain('may-hit-stop');
    expect(codes(found([pocket], [near(0.71)], stopped))).not.toContain('may-hit-stop');
  });

  it('tells in which passes it is hit, counted from 1', () => {
    // A hole of 8 is opened out from nothing to radii of 1, 2, 3 and 4; what is hit begins 2.5 from its middle.
    const opened = bore('a', [40, 20], 8, { depth: 4, passes: { kind: 'open out', bite: 1 } });
    const at = (reach: number) => messageOf(found([opened], [near(reach - 4)]), 'hits-stop');
    expect(at(2.5)).toContain('The cutter of a, passes 3, 4, runs into stop k');
    expect(at(3.5)).toContain('The cutter of a, pass 4, runs into stop k');
    expect(at(0.5)).toContain('The cutter of a runs into stop k');
  });

  it('below a hole that goes through counts as far as the point of a drill goes', () => {
    // 118 degrees: 8 / (2 tan 59) = 2.403 below the part.
    const parallel = (to: number) => block({ kind: 'parallel', from: -30, to });
    expect(messageOf(found([hole], [parallel(0)]), 'hits-parallel')).toContain(
      'goes through right over parallel k',
    );
    expect(codes(found([hole], [parallel(-2.3)]))).toEqual(['hits-parallel']);
    // And it wants 1 of room below that.
    expect(codes(found([hole], [parallel(-2.5)]))).toEqual(['near-underneath']);
    expect(codes(found([hole], [parallel(-3.5)]))).toEqual([]);
    expect(codes(found([pocket], [parallel(0)]))).toEqual([]);
  });

  it('an annular cutter takes up its core too, and goes as deep as it reaches', () => {
    const ring = (reach: number) => ({
      id: 'a',
      kind: 'annular',
      center: [40, 20],
      diameter: 20,
      wall: 4,
      reach,
    });
    const inside = (over: Plain) => block({ shape: { rectangle: [2, 2], at: [39, 19] }, ...over });
    expect(codes(found([ring(14)], [inside({ kind: 'clamp', from: 10, to: 12 })]))).toContain('hits-clamp');
    expect(codes(found([ring(14)], [inside({ from: -9, to: -3 })]))).toContain('hits-stop');
    expect(codes(found([ring(14)], [inside({ from: -9, to: -4.1 })]))).not.toContain('hits-stop');
  });

  it('a groove counts along all of its path', () => {
    const groove = { id: 'a', kind: 'swept', diameter: 6, depth: 3, path: { svgPath: 'M20 20 H60' } };
    const at = (y: number) => block({ shape: { rectangle: [2, 2], at: [50, y] }, from: 8, to: 12 });
    expect(codes(found([groove], [at(22.9)]))).toEqual(['hits-stop']);
    expect(codes(found([groove], [at(23.1)]))).toEqual([]);
  });

  it('counts in its own setup only', () => {
    const setups = [setup(['b']), setup(['a'], { id: 't' })];
    const cuts = [bore('b', [20, 20], 8), hole];
    expect(codes(found(cuts, [block({ setup: 's' })], setups))).toEqual([]);
    expect(messageOf(found(cuts, [block({ setup: 't' })], setups), 'hits-stop')).toContain('in setup t');
    expect(codes(found(cuts, [block()], setups))).toEqual(['hits-stop']);
  });

  it('counts for a cut that is in no setup if it is in the way in all of them', () => {
    const cuts = [bore('b', [20, 20], 8), hole];
    expect(codes(found(cuts, [block()], [setup(['b'])]))).toEqual(['hits-stop', 'cut-in-no-setup']);
    expect(codes(found(cuts, [block({ setup: 's' })], [setup(['b'])]))).toEqual(['cut-in-no-setup']);
  });

  it('turned over, heights are over the face that then lies down', () => {
    // From below 4 deep: turned over that is from above, down to 6 over the drawn top.
    const from = bore('a', [40, 20], 8, { depth: 4, from: 'bottom' });
    const setups = [setup(['a'], { flip: 'x' })];
    expect(codes(found([from], [block({ from: -3, to: 6 })], setups))).toEqual([]);
    expect(codes(found([from], [block({ from: -3, to: 6.1 })], setups))).toEqual(['hits-stop']);
  });

  it('is one to check where only the errors could do it', () => {
    // Each axis may be off by 0.02 and a step: hypot(0.025, 0.025) = 0.0354.
    expect(codes(found([hole], [near(0.03)], [setup(['a'])]))).toEqual(['may-hit-stop']);
    expect(codes(found([hole], [near(0.04)], [setup(['a'])]))).toEqual([]);
  });

  it('far away it is nothing, however far', () => {
    expect(codes(found([hole], [block({ shape: { rectangle: [10, 6], at: [9e6, 9e6] } })]))).toEqual([]);
  });
});

describe('what holds the part', () => {
  /** Splits the plate at x = 40; the left part is kept. */
  const split = { id: 'split', kind: 'swept', diameter: 4, path: { svgPath: 'M40 -5 V45' } };
  const keep = { keep: [10, 20] };
  const strap = (x: number, over: Plain = {}): Plain =>
    block({
      id: 'strap',
      kind: 'clamp',
      shape: { rectangle: [10, 10], at: [x, 15] },
      from: 10,
      to: 18,
      ...over,
    });
  const jaw = (x: number): Plain =>
    block({ id: 'jaw', kind: 'jaw', shape: { rectangle: [10, 10], at: [x, -10] }, from: -20, to: 5 });

  it('is lost where a cut parts the clamped end from the kept one', () => {
    const report = found([split], [strap(60)], null, keep);
    expect(report.findings.find(({ code }) => code === 'grip-lost')).toMatchObject({
      level: 'danger',
      about: ['keepOut:strap', 'body:offcut-1', 'cut:split', 'step:0'],
    });
    expect(codes(found([split], [strap(10)], null, keep))).not.toContain('grip-lost');
    expect(codes(found([split], [jaw(60)], null, keep))).toContain('grip-lost');
    expect(codes(found([split], [jaw(10)], null, keep))).not.toContain('grip-lost');
  });

  it('is lost where a cut takes what it bears on, at its height', () => {
    // A pocket over all of the strap's foot, 3 deep: the strap at the top has nothing under it.
    const mill = { id: 'mill', kind: 'swept', diameter: 24, depth: 3, path: { svgPath: 'M15 20 H20' } };
    const report = found([mill], [strap(12)]);
    expect(codes(report)).toContain('grip-lost');
    expect(codes(report)).toContain('hits-clamp');
    expect(codes(found([mill], [strap(50)]))).not.toContain('grip-lost');
  });

  it('of an earlier setup may be cut away by a later one', () => {
    const setups = [setup(['hole']), setup(['split'], { id: 't' })];
    const early = bore('hole', [20, 20], 8);
    const cuts = [early, split];
    expect(codes(found(cuts, [strap(60, { setup: 's' })], setups, keep))).not.toContain('grip-lost');
    expect(messageOf(found(cuts, [strap(60, { setup: 't' })], setups, keep), 'grip-lost')).toContain(
      'in setup t',
    );
    // And the other way round it is gone before.
    const reversed = [setup(['split'], { id: 't' }), setup(['hole'])];
    expect(codes(found([split, early], [strap(60, { setup: 's' })], reversed, keep))).toContain('grip-lost');
  });

  it('must bear on something to begin with', () => {
    expect(messageOf(found([hole], [strap(100)]), 'grip-bears-on-nothing')).toMatch(
      /^Clamp strap bears on nothing/,
    );
    expect(codes(found([hole], [strap(10, { from: 10.5 })]))).toEqual(['grip-bears-on-nothing']);
    expect(codes(found([hole], [strap(10)]))).toEqual([]);
    // A stop or a parallel need not.
    expect(codes(found([hole], [strap(100, { kind: 'stop' })]))).toEqual([]);
  });

  it('bears on the face that lies up when the part is turned over', () => {
    const setups = [setup(['a'], { flip: 'y' })];
    expect(codes(found([hole], [strap(10)], setups))).toEqual([]);
    const below = bore('a', [15, 20], 16, { depth: 4, from: 'bottom' });
    expect(codes(found([below], [strap(10)], setups))).toContain('grip-lost');
  });
});
