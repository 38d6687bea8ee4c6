import type { JobDocument } from '@edgebite/core';
import { type Draw, type Machine, seeded, type XY } from './drawn-errors.js';

/** A job with one figure that its setups can move, and that figure by a closed form for a draw of errors. */
export interface ErrorCase {
  readonly name: string;
  readonly job: JobDocument;
  readonly what: 'web' | 'knife edge' | 'bite';
  readonly between: readonly [string, string];
  readonly figure: (machine: Machine, draw: Draw) => number;
}

type Setup = NonNullable<JobDocument['setups']>[number];
type Cut = JobDocument['cuts'][number];

const away = (a: XY, b: XY): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const plus = (a: XY, b: XY): XY => [a[0] + b[0], a[1] + b[1]];

/** Random numbers of a family: lengths with many digits, so that targets are rounded. */
function randomOf(seed: number) {
  const next = seeded(seed);
  const between = (low: number, high: number) => low + (high - low) * next();
  return { between, tolerance: () => between(0.002, 0.03) };
}

const bore = (id: string, center: XY, diameter: number): Cut => ({
  id,
  kind: 'bore',
  center: [...center],
  diameter,
});

function setupOf(
  r: ReturnType<typeof randomOf>,
  id: string,
  cuts: string[],
  over: Partial<Setup> = {},
): Setup {
  const touch = (face: string) => ({
    touch: face,
    tip: r.between(4, 10),
    reads: 0,
    units: 'mm' as const,
    tolerance: r.tolerance(),
  });
  return {
    id,
    stops: [{ id: 'end stop', face: 'left' }],
    zero: {
      x: [
        // Each stop is touched anew, unless a case says otherwise.
        { ...touch('end stop'), name: `touch in ${id}` },
        {
          bears: 'left',
          on: 'end stop',
          block: [{ block: r.between(10, 30), tolerance: r.tolerance() }],
          tolerance: r.tolerance(),
          units: 'mm',
        },
      ],
      y: [touch('front')],
    },
    cuts,
    ...over,
  };
}

function jobOf(setups: Setup[], cuts: Cut[], over: Partial<JobDocument> = {}): JobDocument {
  return {
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [80, 50] }, thickness: 10 },
    limits: { web: 3, knifeEdge: 80 },
    setups,
    cuts,
    ...over,
  };
}

/** Two holes near each other, and what is left between them. */
function twoHoles(r: ReturnType<typeof randomOf>) {
  const [ra, rb] = [r.between(4, 7), r.between(4, 7)];
  const a: XY = [r.between(25, 35), r.between(18, 30)];
  const t = r.between(0, 2 * Math.PI);
  const d = ra + rb + r.between(0.8, 2.5);
  const b: XY = [a[0] + d * Math.cos(t), a[1] + d * Math.sin(t)];
  return { cuts: [bore('a', a, 2 * ra), bore('b', b, 2 * rb)], ra, rb };
}

const holeToHole =
  (ra: number, rb: number): ErrorCase['figure'] =>
  (machine, draw) => {
    const size = machine.sizeError(machine.datumOf('a'), machine.datumOf('b'), draw);
    return away(machine.centerOf('a', null, draw), plus(machine.centerOf('b', null, draw), size)) - ra - rb;
  };

function pair(
  name: string,
  seed: number,
  setups: (r: ReturnType<typeof randomOf>) => Setup[],
  part?: 'm' | 'f',
) {
  const r = randomOf(seed);
  const { cuts, ra, rb } = twoHoles(r);
  const job = jobOf(setups(r), cuts);
  return {
    name: `${name} ${seed}`,
    job: part === undefined ? job : { ...job, part: { ...job.part, tolerances: part } },
    what: 'web' as const,
    between: ['cut:a', 'cut:b'] as const,
    figure: holeToHole(ra, rb),
  };
}

/** A hole near the back face, y = 50. */
function atTheBack(seed: number, part?: 'm' | 'f'): ErrorCase {
  const r = randomOf(seed);
  const radius = r.between(4, 8);
  const job = jobOf(
    [setupOf(r, 's', ['a'])],
    [bore('a', [r.between(20, 60), 50 - radius - r.between(1, 2.5)], 2 * radius)],
  );
  return {
    name: `hole and far face ${part ?? 'as drawn'} ${seed}`,
    job: part === undefined ? job : { ...job, part: { ...job.part, tolerances: part } },
    what: 'web',
    between: ['cut:a', 'outline:2'],
    figure: (machine, draw) => {
      const center = machine.centerOf('a', null, draw);
      const [, size] = machine.sizeError(machine.datumOf('a'), [0, 50], draw);
      return 50 + size - center[1] - radius;
    },
  };
}

/** A hole off the middle of a round part of diameter 50. */
function inRound(seed: number): ErrorCase {
  const r = randomOf(seed);
  const radius = r.between(8, 12);
  const t = r.between(0, 2 * Math.PI);
  const off = 25 - radius - r.between(1, 2.5);
  const center: XY = [40 + off * Math.cos(t), 30 + off * Math.sin(t)];
  return {
    name: `hole in a round part ${seed}`,
    job: {
      ...jobOf([setupOf(r, 's', ['a'], { turn: r.between(-180, 180) })], [bore('a', center, 2 * radius)]),
      part: { outline: { circle: 50, at: [40, 30] }, thickness: 10 },
    },
    what: 'web',
    between: ['cut:a', 'outline'],
    figure: (machine, draw) => 25 - radius - away(machine.centerOf('a', null, draw), [40, 30]),
  };
}

/** A groove beside a hole, both in one setup. */
function groove(seed: number): ErrorCase {
  const r = randomOf(seed);
  const [radius, tool] = [r.between(4, 7), r.between(4, 8)];
  const y = r.between(15, 20);
  const center: XY = [r.between(30, 50), y + tool / 2 + radius + r.between(1, 2.5)];
  return {
    name: `groove and hole ${seed}`,
    job: jobOf(
      [setupOf(r, 's', ['a', 'g'], { turn: 90 })],
      [
        bore('a', center, 2 * radius),
        { id: 'g', kind: 'swept', diameter: tool, path: { svgPath: `M10 ${y}H70` } },
      ],
    ),
    what: 'web',
    between: ['cut:a', 'cut:g'],
    // A path is off by half a step of rounding too, as unknown as the step itself.
    figure: (machine, draw) => {
      const [, at] = machine.centerOf('a', null, draw);
      const shared = (cause: string) => (cause.startsWith('g ') ? 0 : draw(cause));
      const drift = machine.centerOf('g', 0, shared)[1] - machine.centerOf('g', 0, () => 0)[1];
      const step = 0.005 / 2;
      return at - (y + drift + step * (draw('g read') + draw('g round'))) - radius - tool / 2;
    },
  };
}

/** A hole that breaks out of the front face, y = 0: its knife edges and its bite. */
function breakingOut(seed: number, what: 'knife edge' | 'bite'): ErrorCase {
  const r = randomOf(seed);
  const radius = r.between(8, 12);
  const center: XY = [r.between(30, 50), radius * r.between(0.3, 0.8)];
  const inside = (machine: Machine, draw: Draw) => machine.centerOf('a', null, draw)[1];
  return {
    name: `${what} at the front ${seed}`,
    job: jobOf([setupOf(r, 's', ['a'], { turn: 180, flip: 'x' })], [bore('a', center, 2 * radius)]),
    what,
    between: ['cut:a', 'outline:0'],
    figure: (machine, draw) => {
      const h = inside(machine, draw);
      return what === 'bite' ? radius + h : (Math.acos(h / radius) * 180) / Math.PI;
    },
  };
}

/** A hole beside a face that stands at a slant, from (80, 20) to (50, 50), the part lying askew. */
function atASlant(seed: number): ErrorCase {
  const r = randomOf(seed);
  const radius = r.between(4, 8);
  const n: XY = [Math.SQRT1_2, Math.SQRT1_2];
  const off = radius + r.between(1, 2.5);
  const along = r.between(-8, 8);
  const center: XY = [65 - off * n[0] - along * n[1], 35 - off * n[1] + along * n[0]];
  return {
    name: `hole and slanted face ${seed}`,
    job: {
      ...jobOf([setupOf(r, 's', ['a'], { turn: r.between(10, 80) })], [bore('a', center, 2 * radius)]),
      part: { outline: { svgPath: 'M0 0H80V20L50 50H0Z' }, thickness: 10 },
    },
    what: 'web',
    between: ['cut:a', 'outline:2'],
    figure: (machine, draw) => {
      const [x, y] = machine.centerOf('a', null, draw);
      return (65 - x) * n[0] + (35 - y) * n[1] - radius;
    },
  };
}

/** Two holes that run into each other: the corners that they leave. */
function overlapping(seed: number): ErrorCase {
  const r = randomOf(seed);
  const [ra, rb] = [r.between(6, 10), r.between(6, 10)];
  const d = (ra + rb) * r.between(0.85, 0.93);
  const t = r.between(0, 2 * Math.PI);
  const a: XY = [40, 25];
  const b: XY = [a[0] + d * Math.cos(t), a[1] + d * Math.sin(t)];
  return {
    name: `corner between two holes ${seed}`,
    job: jobOf(
      [setupOf(r, 's', ['a']), setupOf(r, 't', ['b'], { turn: 90 })],
      [bore('a', a, 2 * ra), bore('b', b, 2 * rb)],
    ),
    what: 'knife edge',
    between: ['cut:a', 'cut:b'],
    // The radii to the corner make the angle of the law of cosines; the metal has what that leaves of a half turn.
    figure: (machine, draw) => {
      const apart = away(machine.centerOf('a', null, draw), machine.centerOf('b', null, draw));
      return 180 - (Math.acos((ra * ra + rb * rb - apart * apart) / (2 * ra * rb)) * 180) / Math.PI;
    },
  };
}

const shared = (r: ReturnType<typeof randomOf>): Setup[] => {
  const first = setupOf(r, 's', ['a']);
  const x = first.zero.x.map((action, k) =>
    'bears' in action && Array.isArray(action.block)
      ? { ...action, name: `thing ${k}`, block: action.block.map((one) => ({ ...one, name: 'the block' })) }
      : { ...action, name: `thing ${k}` },
  );
  const named: Setup = { ...first, zero: { ...first.zero, x } };
  return [
    named,
    { ...setupOf(r, 't', ['b'], { turn: 180 }), zero: { ...setupOf(r, 't', []).zero, x: named.zero.x } },
  ];
};

/** Jobs of all families, the same each time. */
export function errorCases(): ErrorCase[] {
  const seeds = [1, 2, 3];
  return seeds.flatMap((seed) => [
    pair('two holes, one setup', seed, (r) => [setupOf(r, 's', ['a', 'b'])]),
    pair('two holes, turned by a quarter', seed, (r) => [
      setupOf(r, 's', ['a']),
      setupOf(r, 't', ['b'], { turn: 90 }),
    ]),
    pair('two holes, turned over and askew', seed, (r) => [
      setupOf(r, 's', ['a'], { turn: r.between(0, 90) }),
      setupOf(r, 't', ['b'], { flip: 'y', turn: r.between(0, 90) }),
    ]),
    pair('two holes, the same stop', seed, shared),
    pair('two holes, the same stop, class m', seed, shared, 'm'),
    pair('two holes, a readout in inches', seed, (r) => [
      setupOf(r, 's', ['a', 'b'], { readout: { units: 'inch', resolution: 0.0005 } }),
    ]),
    atTheBack(seed),
    atTheBack(seed, 'f'),
    inRound(seed),
    atASlant(seed),
    overlapping(seed),
    groove(seed),
    breakingOut(seed, 'knife edge'),
    breakingOut(seed, 'bite'),
  ]);
}
