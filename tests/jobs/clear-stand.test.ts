import { examine, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { toldOf } from '../../packages/previewer/src/step/told.js';
import { dice } from '../measure/counting.js';
import type { CutDocument, JobDocument } from '../outside/machine/sim/job.js';
import { plate, setup } from './steps-cases/told.js';

/* A plate of 80 by 30, 12 thick, its corner on the zero of the drawing. The bore of radius 10 about (40, 2) comes in from the
   front: straight back from there it touches the front face at y = -10, so that 0.2 clear of it is y = -10.2. */

const seat = (more: object = {}, passes: object = {}): CutDocument => ({
  id: 'seat',
  kind: 'bore',
  center: [40, 2],
  diameter: 20,
  passes: { kind: 'step in', bite: 4, ...passes } as never,
  ...more,
});

const told = (job: JobDocument): Report => examine(parseJob(job));

const clearOf = (report: Report, step = 0) => report.steps[step]?.clear ?? null;

describe('the stand before the first pass of a step in', () => {
  it('is behind first touch by the clearance, in the numbers of each setup', () => {
    // Left and front face are touched with half a tip of 5, and read 0: x is 5 more, y too. Turned by 180 degrees the right end
    // and the back touch: 80 - 40 + 5 and 30 + 10.2 + 5. Turned over about the y axis the right end lies left: 45, -10.2 + 5.
    const lies: [object, [number, number]][] = [
      [{}, [45, -5.2]],
      [{ turn: 180 }, [45, 45.2]],
      // A quarter turn counter-clockwise: the front lies right, and x is 30 - y.
      [{ turn: 90 }, [30 + 10.2 + 5, 45]],
      [{ flip: 'y' }, [45, -5.2]],
      [{ flip: 'x' }, [45, 45.2]],
    ];
    for (const [lie, readout] of lies) {
      const report = told(
        plate([seat({}, { approach: 90 })], { setups: [{ ...setup('one', ['seat']), ...lie }] }),
      );
      const clear = clearOf(report);
      expect(clear?.at?.[0]).toBeCloseTo(40, 12);
      expect(clear?.at?.[1]).toBeCloseTo(-10.2, 12);
      expect(clear?.readout).toEqual(readout);
      expect(clear?.gap).toBeCloseTo(0.2, 12);
      expect(clear?.diameter).toBe(20);
      // Only before the first pass.
      expect(report.steps.slice(1).map((step) => step.clear)).toEqual([null, null]);
    }
  });

  it('is said first of all, with the spindle stopped', () => {
    const report = told(plate([seat({}, { approach: 90 })], { setups: [setup('one', ['seat'])] }));
    expect(toldOf(report, 0).before).toEqual([
      'Before the first pass stand at X 45.000 Y -5.200, 0.200 mm clear of all metal: lower it there with the spindle stopped, and see that it touches nothing.',
    ]);
    expect(toldOf(report, 1).before).toEqual([]);
  });

  it('asks at all heights that the tool goes through', () => {
    // A pocket of radius 40 about (40, -35) from above, 5 deep, is open at the front: it takes y under 5 there. Under it the
    // plate still stands out to y = 0; and a blind seat in the pocket's depth alone touches at y = 5 - 10 = -5.
    const pocket: CutDocument = { id: 'pocket', kind: 'bore', center: [40, -35], diameter: 80, depth: 5 };
    const deep = told(plate([pocket, seat({}, { approach: 90 })]));
    expect(clearOf(deep, 1)?.at?.[1]).toBeCloseTo(-10.2, 9);
    const blind = told(plate([pocket, seat({ depth: 5 }, { approach: 90 })]));
    // Circle against circle from inside: the centre lies 40 - 10 under the pocket's far place at most, on x = 40: y = 5 - 10.
    expect(clearOf(blind, 1)?.at?.[1]).toBeCloseTo(5 - 10 - 0.2, 9);
  });

  it('tells what is in the way of it', () => {
    const jaw = { id: 'vice', kind: 'jaw', shape: { rectangle: [60, 16], at: [10, -30] }, from: -20, to: 10 };
    const report = told(plate([seat({}, { approach: 90 })], { keepOut: [jaw] }));
    expect(clearOf(report)).toMatchObject({ at: null, readout: null, gap: null });
    expect(clearOf(report)?.why).toBe(
      'The tool cannot stand clear before its first pass: it would meet jaw vice. Move what is in the way, or come from another side.',
    );
    // A jaw that lies below all that the seat cuts is in nobody's way.
    const low = told(plate([seat({ depth: 3 }, { approach: 90 })], { keepOut: [{ ...jaw, to: 8 }] }));
    expect(clearOf(low)?.why).toBeNull();
  });

  it('chooses a way in that has one, where there is such a way', () => {
    // Its centre 4 in front of the face, straight ahead is the shortest way, and others are open to 23 degrees beside it: there
    // the mouth grows faster than the circle goes aside (sqrt(100 - 16) = 9.17 a side, and 4 / 9.17 = tan 23.6). Straight
    // back the tool stands at (40, -10.2), and would meet a clamp about (42, -23.9): 13.84 away, 10 + 4 are asked.
    const shallow = seat({ center: [40, -4] });
    const straight = clearOf(told(plate([shallow])))?.at;
    expect(straight?.[0]).toBeCloseTo(40, 9);
    expect(straight?.[1]).toBeCloseTo(-10.2, 9);
    const clamp = { id: 'c', kind: 'clamp', shape: { circle: 8, at: [42, -23.9] }, from: 0, to: 20 };
    const round = told(plate([shallow], { keepOut: [clamp] }));
    const clear = clearOf(round);
    expect(clear?.why).toBeNull();
    const [x, y] = clear?.at ?? [Number.NaN, Number.NaN];
    expect(Math.hypot(x - 42, y + 23.9)).toBeGreaterThanOrEqual(10 + 4);
    expect(round.findings.map(({ code }) => code)).not.toContain('hits-clamp');
  });
});

describe('the setting before the first pass of an opening out', () => {
  const ring: CutDocument = { id: 'hole', kind: 'bore', center: [40, 15], diameter: 14 };
  const opened = (passes: object, more: object = {}): CutDocument =>
    seat({ center: [40, 15], diameter: 20, ...more }, { kind: 'open out', bite: 1, ...passes });

  it('is less than the hole that is there by the clearance on each side', () => {
    const report = told(plate([ring, opened({})]));
    expect(clearOf(report, 1)).toMatchObject({ at: [40, 15], why: null });
    expect(clearOf(report, 1)?.diameter).toBeCloseTo(14 - 0.4, 12);
    expect(toldOf(report, 1).before[0]).toContain('set the tool to 13.600 mm, 0.200 mm clear of all metal');
  });

  it('falls on a mark of the dial, counted from the last pass', () => {
    // Marks of 0.25 on diameter: 20, 19.75, ... 13.5, the first under 13.6.
    const head = {
      id: 'head',
      kind: 'boring head',
      toolMaterial: 'HSS',
      dial: { step: 0.25, on: 'diameter' },
      cuts: ['seat'],
    };
    const report = told(plate([ring, opened({})], { tools: [head] }));
    expect(clearOf(report, 1)?.diameter).toBeCloseTo(13.5, 12);
  });

  it('is told not to be where the tool cannot be set so small', () => {
    const report = told(plate([ring, opened({ smallest: 13.8 })]));
    expect(clearOf(report, 1)).toMatchObject({ at: null, diameter: null });
    expect(clearOf(report, 1)?.why).toBe(
      'The tool cannot be set so small that it goes down clear of all metal: it cuts as soon as it is down. Rough the hole wider if it is to be tried clear first.',
    );
  });
});

describe('many stands', () => {
  /** How far a place is from what is left of the plate at the heights of a through cut, by the definitions of its cuts. */
  const clearances = (holes: readonly { x: number; y: number; r: number }[], x: number, y: number) => {
    let least = Number.POSITIVE_INFINITY;
    // Metal on a raster of 0.25, as far as the tool could meet it.
    for (let mx = 0; mx <= 80; mx += 0.25) {
      for (let my = 0; my <= 30; my += 0.25) {
        if (holes.some((hole) => Math.hypot(mx - hole.x, my - hole.y) < hole.r)) continue;
        least = Math.min(least, Math.hypot(mx - x, my - y));
      }
    }
    return least;
  };

  it('are as clear as told, and none nearer to first touch is (metal on a raster)', () => {
    const roll = dice(20261);
    let tried = 0;
    for (let k = 0; k < 60; k++) {
      const [x, y, r] = [20 + 40 * roll(), -4 + 5 * roll(), 5 + 6 * roll()];
      const holes = Array.from({ length: 3 }, () => ({ x: 80 * roll(), y: 14 * roll(), r: 3 + 6 * roll() }));
      const drilled = holes.map(
        (hole, n): CutDocument => ({
          id: `hole-${n}`,
          kind: 'bore',
          center: [hole.x, hole.y],
          diameter: 2 * hole.r,
        }),
      );
      const own = seat({ center: [x, y], diameter: 2 * r }, { approach: 70 + 40 * roll(), bite: 50 });
      const report = told(plate([...drilled, own]));
      const step = report.steps.find(({ cut }) => cut === 'seat');
      // What comes loose is lifted out, and not on the raster.
      if (step?.clear == null || report.steps.some(({ frees }) => frees.length > 0)) continue;
      tried += 1;
      const { at, gap } = step.clear;
      if (at === null) continue;
      const slack = 0.25 * Math.SQRT1_2;
      const there = clearances(holes, at[0], at[1]) - r;
      expect(there).toBeGreaterThan(0.2 - 1e-9);
      if (gap !== null) expect(Math.abs(there - gap)).toBeLessThan(slack);
      // A little nearer it is not as clear.
      const approach = ((report.cuts.at(-1)?.passes?.approach ?? 0) * Math.PI) / 180;
      const nearer =
        clearances(holes, at[0] + 0.3 * Math.cos(approach), at[1] + 0.3 * Math.sin(approach)) - r;
      expect(nearer).toBeLessThan(0.2 + slack);
    }
    expect(tried).toBeGreaterThan(40);
  });
});
