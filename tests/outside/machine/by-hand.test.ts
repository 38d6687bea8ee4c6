import { describe, expect, it } from 'vitest';
import { zeroByTouching } from './made/zero.js';
import { backingOff, someWayOff } from './sim/back-off.js';
import { inShape } from './sim/distance.js';
import type { CutDocument, JobDocument, SetupDocument } from './sim/job.js';
import { drawn, heading, inWords, laid } from './sim/lie.js';
import { loadIn } from './sim/load.js';
import { metalAt } from './sim/metal.js';
import { type Run, run } from './sim/run.js';
import { loopsOf, type ShapeDocument } from './sim/shapes.js';
import { stepsOf } from './sim/steps.js';

/* The simulation held against cases worked out by hand, each from the plate 80 by 30 by 12 unless it says otherwise. */

const PLATE: ShapeDocument = { rectangle: [80, 30] };

function job(cuts: CutDocument[], setups?: Omit<SetupDocument, 'zero'>[], outline = PLATE): JobDocument {
  return {
    edgebite: 1,
    units: 'mm',
    part: { outline, thickness: 12 },
    ...(setups === undefined ? {} : { setups: setups.map((one) => ({ ...one, zero: zeroByTouching() })) }),
    cuts,
  };
}

const done = (one: JobDocument, cells = 160): Run => run(one, stepsOf(one), cells);

/** Load of a step's tool in one slab, loose bodies lifted out. */
function load(of: Run, k: number, slab = 0) {
  const { step, before } = of.steps[k]!;
  const { tool } = step;
  if (tool.kind !== 'disc' && tool.kind !== 'ring') throw new Error('load: a path');
  const wall = tool.kind === 'ring' ? tool.wall : null;
  return loadIn(
    metalAt(of, before, slab, () => true),
    { ...tool, wall },
    step.lie,
  );
}

describe('signed distance in a shape', () => {
  it('is that of the nearest edge, on the right side', () => {
    const slot = inShape(loopsOf({ slot: [60, 20], at: [0, 0] }));
    // 3 above the middle of a slot 20 wide: 7 to its side. Beyond its round end of centre (20, 0): 5 outside.
    expect(slot(0, 3)).toBeCloseTo(7, 12);
    expect(slot(35, 0)).toBeCloseTo(-5, 12);
    // At 45 degrees 3 from the end's centre, 7 inside of its arc; further out 2 outside.
    expect(slot(20 + 3 * Math.SQRT1_2, 3 * Math.SQRT1_2)).toBeCloseTo(7, 12);
    expect(slot(20 + 12 * Math.SQRT1_2, -12 * Math.SQRT1_2)).toBeCloseTo(-2, 12);
    const ring = inShape(loopsOf({ circle: 40, holes: [{ circle: 10, at: [5, 0] }] }));
    expect(ring(5, 0)).toBeCloseTo(-5, 12);
    expect(ring(-10, 0)).toBeCloseTo(10, 12);
    expect(ring(12, 0)).toBeCloseTo(2, 12);
  });
});

describe('the part as it lies', () => {
  it('is turned over about the axis, then turned counter-clockwise', () => {
    // A place 10 to the right and 1 up. About x: 10, -1; then a quarter turn to the left: 1, 10.
    expect(laid({ flip: 'x', turn: 90 }, [10, 1])).toEqual([1, 10]);
    expect(laid({ flip: 'y', turn: 180 }, [10, 1])).toEqual([10, -1]);
    expect(drawn({ flip: 'x', turn: 90 }, [1, 10])).toEqual([10, 1]);
    expect(drawn({ flip: 'y', turn: 180 }, [10, -1])).toEqual([10, 1]);
  });

  it('has eight names for directions', () => {
    expect(inWords(heading(1, 0.1))).toBe('to the right');
    expect(inWords(heading(-1, -1))).toBe('to the left and towards you');
    expect(inWords(heading(0.1, -1))).toBe('towards you');
    expect(inWords(359)).toBe('to the right');
  });
});

describe('bodies on the grid', () => {
  it('come off when the kerf is through, with the volume of the core', () => {
    const r = done(job([{ id: 'ring', kind: 'annular', center: [40, 15], diameter: 20, wall: 4 }]));
    // The core has a radius of 6: pi 36 times 12 high. The ring takes pi (100 - 36) 12.
    const [freed] = r.steps[0]!.frees;
    expect(r.doubts).toBe(0);
    expect(freed).toMatchObject({ depth: 12, isTold: true });
    expect(Math.abs(freed!.volume - Math.PI * 36 * 12)).toBeLessThan(freed!.slack);
    const taken = r.steps[0]!.takes.get(0)!;
    expect(Math.abs(taken.volume - Math.PI * 64 * 12)).toBeLessThan(taken.slack);
  });

  it('come off at the lower face of the slab that joined them last, and are cut into from there', () => {
    // From above a kerf 8 deep leaves a floor of 4. Turned over, a bore of radius 15 goes 5 deep: at 4 the floor is
    // gone, and the slug of radius 6 and height 8 comes off; the last of the bore takes 1 of its height.
    const r = done(
      job(
        [
          { id: 'ring', kind: 'annular', center: [40, 15], diameter: 20, wall: 4, reach: 8 },
          { id: 'pocket', kind: 'bore', center: [40, 15], diameter: 30, depth: 5, from: 'bottom' },
        ],
        [
          { id: 'up', cuts: ['ring'] },
          { id: 'over', flip: 'x', cuts: ['pocket'] },
        ],
      ),
    );
    expect(r.steps[0]!.frees).toEqual([]);
    const [freed] = r.steps[1]!.frees;
    expect(freed!.depth).toBe(4);
    expect(Math.abs(freed!.volume - Math.PI * 36 * 8)).toBeLessThan(freed!.slack);
    // A bore 30 wide in a part 30 wide: it touches both edges, which the grid leaves open.
    const left = r.end!.flood.bodies;
    const slug = [...left.values()].find((body) => Math.abs(body.volume - Math.PI * 36 * 7) < body.slack);
    expect(slug).toBeDefined();
  });
});

describe('the load of a tool', () => {
  const half: CutDocument = { id: 'half', kind: 'bore', center: [40, 0], diameter: 20 };

  it('of half a circle over the front edge is 2 / pi to the right', () => {
    // Metal lies behind the centre: teeth at a from 0 to pi move along (sin a, -cos a), which is (2 / pi, 0) on average.
    const one = load(done(job([half])), 0);
    expect(one.share).toBeCloseTo(0.5, 5);
    expect(one.strikes).toBe(1);
    expect(one.sideLoad).toBeCloseTo(2 / Math.PI, 5);
    expect(Math.min(one.push!, 360 - one.push!)).toBeLessThan(1e-3);
  });

  it('turns round with the part: by 180 to the left, and by a quarter to the left away from the person', () => {
    const pushed = (turn: number, flip?: 'x' | 'y') =>
      load(
        done(job([half], [{ id: 'lie', turn, ...(flip === undefined ? {} : { flip }), cuts: ['half'] }])),
        0,
      ).push;
    // Turned by 180 metal lies before the centre. By 90 to its left, where teeth, going clockwise, move away.
    expect(pushed(180)).toBeCloseTo(180, 3);
    expect(pushed(90)).toBeCloseTo(90, 3);
    // Turned over about x metal lies before the centre; about y it lies behind it, as it did.
    expect(pushed(0, 'x')).toBeCloseTo(180, 3);
    expect(Math.sin((pushed(0, 'y')! * Math.PI) / 180)).toBeCloseTo(0, 5);
    expect(Math.cos((pushed(0, 'y')! * Math.PI) / 180)).toBeCloseTo(1, 5);
  });

  it('of a ring counts its whole width', () => {
    // A round part of radius 8 in the middle of a ring from 6 to 10: its circle runs in air, its teeth never do.
    const round = job([{ id: 'ring', kind: 'annular', center: [0, 0], diameter: 20, wall: 4 }], undefined, {
      circle: 16,
    });
    const one = load(done(round), 0);
    expect(one.share).toBeCloseTo(1, 4);
    expect(one.strikes).toBe(0);
    expect(one.sideLoad).toBeLessThan(1e-3);
    // Over the front edge it is in metal for half of the turn, on all of its width: as a circle is.
    const front = load(
      done(job([{ id: 'ring', kind: 'annular', center: [40, 0], diameter: 20, wall: 4 }])),
      0,
    );
    expect(front.share).toBeCloseTo(0.5, 3);
    expect(front.sideLoad).toBeCloseTo(2 / Math.PI, 3);
    expect(front.strikes).toBe(1);
  });

  it('is weighted over the width', () => {
    // A ring from 6 to 10 over a strip 16 wide along x through its centre: |y| <= 8. At a the metal reaches
    // 8 / |sin a| out, so w is 4 where |sin a| <= 0.8, else 8 / |sin a| - 6 (at least 2). Balanced by symmetry.
    const strip = job([{ id: 'ring', kind: 'annular', center: [40, 8], diameter: 20, wall: 4 }], undefined, {
      rectangle: [80, 16],
    });
    expect(load(done(strip), 0)).toMatchObject({ strikes: 0, push: null });
    // Shifted so that the part ends at the centre's height, behind it 8: teeth are in metal over half a turn, and
    // integral of w sin a from 0 to pi over that of w: with b = asin 0.8, 2 [4 (1 - cos b) + 8 (pi/2 - b) - 6 cos b]
    // over 2 [4 b + 8 ln tan(pi/4 + (pi/2 - b)/2) - 6 (pi/2 - b)].
    const shifted = job(
      [{ id: 'ring', kind: 'annular', center: [40, 0], diameter: 20, wall: 4 }],
      undefined,
      {
        rectangle: [80, 8],
      },
    );
    const b = Math.asin(0.8);
    const rest = Math.PI / 2 - b;
    const top = 4 * (1 - Math.cos(b)) + 8 * rest - 6 * Math.cos(b);
    const bottom = 4 * b + 8 * Math.log(Math.tan(Math.PI / 4 + rest / 2)) - 6 * rest;
    expect(load(done(shifted), 0).sideLoad).toBeCloseTo(top / bottom, 3);
  });

  it('counts no wall that a circle only runs along, and no body that is loose', () => {
    const cuts: CutDocument[] = [
      { id: 'first', kind: 'bore', center: [40, 15], diameter: 20, depth: 6 },
      { id: 'again', kind: 'bore', center: [40, 15], diameter: 20 },
    ];
    const r = done(job(cuts));
    // Slab 1 is the upper one, which the first has taken: the second runs along its wall.
    expect(load(r, 1, 1).share).toBe(0);
    expect(load(r, 1, 0)).toMatchObject({ share: 1, strikes: 0 });
    // A ring leaves a loose core; a bore inside of that meets nothing once it is lifted out.
    const slug = done(
      job([
        { id: 'ring', kind: 'annular', center: [40, 15], diameter: 24, wall: 4 },
        { id: 'into', kind: 'bore', center: [40, 15], diameter: 8 },
      ]),
    );
    expect(load(slug, 1).share).toBe(0);
    const taken = slug.steps[1]!.takes.get(1)!;
    expect(Math.abs(taken.volume - Math.PI * 16 * 12)).toBeLessThan(taken.slack);
  });
});

describe('backing off', () => {
  const half: CutDocument = { id: 'half', kind: 'bore', center: [40, 0], diameter: 20 };

  it('clears half a circle straight back by the law of cosines, and not by less', () => {
    // The wall ends square to the way, at (30, 0) and (50, 0): sqrt(10^2 + s^2) - 10 = 0.2 at s = sqrt(0.2 * 20.2) = 2.01.
    const r = done(job([half]));
    const one = r.steps[0]!;
    expect(backingOff(r, one, [40, -2.01])).toBe('clear');
    expect(backingOff(r, one, [40, -1.5])).toBe('too near');
    expect(backingOff(r, one, [41, -1])).toBe('meets');
    expect(someWayOff(r, one)).toBeNull();
    // Half a turn is just what a way needs: the search asks for more than that. With the centre off the part it finds one.
    const off = done(job([{ ...half, center: [40, -2] }]));
    expect(someWayOff(off, off.steps[0]!)).not.toBeNull();
  });

  it('sees no way out of a full hole, nor past a wall that stands above', () => {
    const full = done(job([{ ...half, center: [40, 15] }]));
    expect(someWayOff(full, full.steps[0]!)).toBeNull();
    // From below a pocket of radius 18 over the edge has taken 6. From above a circle of radius 10, 6 inside of the
    // edge, has nothing beside it down there, and a wall round more than half of it above.
    const under = job(
      [
        { id: 'pocket', kind: 'bore', center: [40, 6], diameter: 36, depth: 6, from: 'bottom' },
        { id: 'seat', kind: 'bore', center: [40, 6], diameter: 20 },
      ],
      [
        { id: 'over', flip: 'y', cuts: ['pocket'] },
        { id: 'up', cuts: ['seat'] },
      ],
    );
    const r = done(under);
    expect(someWayOff(r, r.steps[1]!)).toBeNull();
    expect(backingOff(r, r.steps[1]!, [40, 5])).toBe('meets');
  });

  it('leaves a freed slug in the ring, which then cannot be moved', () => {
    const ring = done(job([{ id: 'ring', kind: 'annular', center: [40, -2], diameter: 24, wall: 4 }]));
    // Its core is 8 in radius and reaches 6 into the part: that piece stands in the ring.
    expect(ring.steps[0]!.frees.length).toBe(1);
    expect(someWayOff(ring, ring.steps[0]!)).toBeNull();
    expect(backingOff(ring, ring.steps[0]!, [40, -5])).toBe('meets');
  });
});
