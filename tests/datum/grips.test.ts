import { describe, expect, it } from 'vitest';
import { bore, codes, messageOf, reportOn, setup } from './setup-jobs.js';

type Plain = Record<string, unknown>;

/* A plate 80 by 40 and 10 thick. What clamps bear on while cuts part it, and what stands out beyond a vice. */

const clamp = (id: string, x: number, over: Plain = {}): Plain => ({
  ...{ id, kind: 'clamp', shape: { rectangle: [10, 10], at: [x, 15] }, from: 10, to: 18 },
  ...over,
});

/** Parts the plate at x = 40, 4 wide: 38 by 40 at each side; the left one is kept. */
const split = { id: 'split', kind: 'swept', diameter: 4, path: { svgPath: 'M40 -5 V45' } };
const hole = bore('hole', [20, 30], 6);

const found = (cuts: readonly Plain[], keepOut: readonly Plain[], setups: readonly Plain[] | null = null) =>
  reportOn(cuts, setups, { keepOut, keep: [10, 20] });

const finding = (report: ReturnType<typeof found>, code: string) =>
  report.findings.find((one) => one.code === code);

describe('a clamp on what comes loose', () => {
  it('says from which step on it holds nothing but that', () => {
    const report = found([hole, split], [clamp('far', 60), clamp('near', 5)]);
    const one = finding(report, 'grip-on-loose');
    expect(one?.about).toEqual(['keepOut:far', 'body:offcut-1', 'cut:split', 'step:1']);
    expect(one?.message).toContain('the part is clamped by clamp near alone');
    expect(codes(report)).not.toContain('grip-lost');
    expect(report.steps[1]?.findings.map((k) => report.findings[k]?.code)).toContain('grip-on-loose');
  });

  it('is a danger where nothing else clamps the part, turned over and in a later setup too', () => {
    expect(finding(found([hole, split], [clamp('far', 60)]), 'grip-lost')).toMatchObject({
      level: 'danger',
      about: ['keepOut:far', 'body:offcut-1', 'cut:split', 'step:1'],
    });
    const setups = [setup(['hole']), setup(['split'], { id: 't', flip: 'x', turn: 180 })];
    const later = found(
      [hole, split],
      [clamp('far', 60, { setup: 't' }), clamp('s', 5, { setup: 's' })],
      setups,
    );
    expect(finding(later, 'grip-lost')?.message).toContain('sets offcut-1 free in setup t');
    expect(finding(later, 'grip-lost')?.about).toContain('step:1');
    // In the setup before, the same clamp bears on the part.
    expect(
      codes(found([hole, split], [clamp('far', 60, { setup: 's' }), clamp('t', 5, { setup: 't' })], setups)),
    ).not.toContain('grip-lost');
  });

  it('says where it bears on both', () => {
    const report = found([split], [clamp('over', 35)]);
    expect(messageOf(report, 'grip-on-both')).toContain('clamp over bears on it as well as on the part');
    expect(codes(found([hole], [clamp('over', 35)]))).not.toContain('grip-on-both');
  });

  it('does not count what comes loose beside or below it', () => {
    // A slug of 12 in the middle of a ring, and clamps to both sides of it.
    const ring = { id: 'r', kind: 'annular', center: [40, 20], diameter: 20, wall: 4 };
    const report = found([ring], [clamp('a', 5), clamp('b', 60)]);
    expect(codes(report).filter((code) => code.startsWith('grip'))).toEqual([]);
    expect(codes(report)).toContain('loose-slug');
  });
});

describe('metal beyond a vice', () => {
  /** Two jaws that grip the front and the back from x = 0 to so far. */
  const vice = (to: number, from = 0): Plain[] =>
    [-20, 40].map((y, k) => ({
      ...{ id: `jaw-${k}`, kind: 'jaw', from: -20, to: 6 },
      shape: { rectangle: [to - from, 20], at: [from, y] },
    }));
  const about = (
    keepOut: readonly Plain[],
    cuts: readonly Plain[] = [hole],
    over: Plain = {},
    setups: readonly Plain[] | null = null,
  ) => reportOn(cuts, setups, { keepOut, keep: [10, 20], ...over });

  it('that outweighs the rest tips the part', () => {
    // Its middle lies at 40, less a hair for the hole; jaws to 30 leave 50 of 80 beyond.
    const report = about(vice(30), [bore('hole', [40, 20], 6)]);
    expect(finding(report, 'part-tips')).toMatchObject({ level: 'danger', about: ['step:0'] });
    expect(messageOf(report, 'part-tips')).toContain(
      'to the right, by 50.000 mm: its middle of weight lies 10.000 mm beyond the jaws',
    );
  });

  it('that is over a third of it wants a support', () => {
    // 32000 mm³ in all; beyond 50 there are 30 by 40 by 10.
    expect(messageOf(about(vice(50)), 'metal-beyond-vice')).toContain(
      "Of the part's 32000 mm³, 12000 mm³ stand out beyond the vice to the right, by 30.000 mm",
    );
    const codesAt = (to: number) => codes(about(vice(to))).filter((code) => /tips|beyond/.test(code));
    expect(codesAt(54)).toEqual([]);
    expect(codesAt(53)).toEqual(['metal-beyond-vice']);
    expect(codesAt(39)).toEqual(['part-tips']);
  });

  it('is told as the part lies, in grams where the metal is known', () => {
    const part = { outline: { rectangle: [80, 40] }, thickness: 10, material: 'steel' };
    const turned = about(vice(30), [hole], { part }, [setup(['hole'], { turn: 180 })]);
    // 32 cm³ of 7.85 g.
    expect(messageOf(turned, 'part-tips')).toContain(
      "Of the part's 251 g, 157 g stand out beyond the vice to the left in setup s",
    );
    const aside = about(vice(30), [hole], { part }, [setup(['hole'], { turn: 90 })]);
    expect(messageOf(aside, 'part-tips')).toContain('away from you');
  });

  it('that a parallel or a clamp carries does not tip', () => {
    const parallel = {
      id: 'p',
      kind: 'parallel',
      from: -10,
      to: 0,
      shape: { rectangle: [60, 6], at: [10, 17] },
    };
    expect(codes(about([...vice(30), parallel])).filter((code) => /tips|beyond/.test(code))).toEqual([]);
  });

  it('counts as it stands once the cuts are made, with the last of them', () => {
    // What is in the jaws goes: a pocket through nearly all of it.
    const mill = { id: 'mill', kind: 'swept', diameter: 20, path: { svgPath: 'M14 14 H36 V26 H14' } };
    const report = about(vice(50), [hole, mill]);
    expect(finding(about(vice(56), [hole, mill]), 'metal-beyond-vice')?.about).toEqual(['step:1']);
    expect(finding(report, 'metal-beyond-vice')?.about).toEqual(['step:0']);
  });
});
