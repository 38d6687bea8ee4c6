import type { JobDocument, Report } from '@edgebite/core';
import { type Draw, seeded, type XY } from '../datum/drawn-errors.js';
import type { TrueCut, TruePart } from './placed-part.js';

type Setup = NonNullable<JobDocument['setups']>[number];
type Cut = JobDocument['cuts'][number];
type Tool = NonNullable<JobDocument['tools']>[number];
type Interval = { readonly worst: readonly number[]; readonly rss: readonly number[] };

/** Makes a cut as one draw has it. */
export type Make = (cut: string) => TrueCut;

/** A job with one figure that its tolerances can move. */
export interface ToleranceCase {
  readonly name: string;
  readonly job: JobDocument;
  /** The figure as drawn, and between what the report says that it can lie. */
  readonly told: (
    report: Report,
  ) => { readonly drawn: number; readonly interval: Interval | null } | undefined;
  /** The same of the part as it comes out, measured on its shapes. */
  readonly figure: (make: Make, part: TruePart) => number;
}

/** A seam has a step in every direction. */
export interface SeamCase extends Pick<ToleranceCase, 'name' | 'job'> {
  readonly cuts: readonly [string, string];
}

const [WIDTH, HEIGHT, THICKNESS] = [120, 80, 16] as const;
const LIES = [0, 90, 180, 270].flatMap((turn) =>
  ([undefined, 'x', 'y'] as const).map((flip) => (flip === undefined ? { turn } : { turn, flip })),
);

type Random = ReturnType<typeof randomOf>;

function randomOf(seed: number) {
  const next = seeded(seed);
  const between = (low: number, high: number) => low + (high - low) * next();
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)] as T;
  return { between, pick, tolerance: () => between(0.003, 0.03), chance: (share: number) => next() < share };
}

const bore = (id: string, center: XY, diameter: number, over: object = {}): Cut =>
  ({ id, kind: 'bore', center: [...center], diameter, ...over }) as Cut;

/** A tool of a cut, off in one way or another. */
function toolOf(r: Random, id: string, cuts: string[]): Tool {
  const base = { id, toolMaterial: 'HSS' as const, cuts };
  return r.chance(0.3)
    ? { ...base, kind: 'boring head', settingTolerance: r.tolerance(), maxSpeed: 500 }
    : { ...base, kind: 'end mill', diameterTolerance: r.tolerance(), runOut: r.between(0, 0.04) };
}

/** A setup that touches two faces, some at a place, some anywhere, of a part that may lie turned. */
function setupOf(r: Random, id: string, cuts: string[], over: Partial<Setup> = {}): Setup {
  const touch = (face: string, at: XY) => ({
    touch: face,
    tip: r.between(4, 10),
    tolerance: r.tolerance(),
    ...(r.chance(0.6) ? { at: [...at] as [number, number] } : {}),
  });
  const middle: XY = [r.between(20, 100), r.between(20, 60)];
  return {
    id,
    angleTolerance: r.pick([0, 0.01, 0.03, 0.06]),
    ...r.pick(LIES),
    zero: { x: [touch(r.pick(['left', 'right']), middle)], y: [touch(r.pick(['front', 'back']), middle)] },
    cuts,
    ...over,
  };
}

function jobOf(r: Random, setups: Setup[], cuts: Cut[], tools: Tool[]): JobDocument {
  return {
    edgebite: 1,
    units: 'mm',
    part: {
      outline: { rectangle: [WIDTH, HEIGHT] },
      thickness: THICKNESS,
      thicknessTolerance: r.tolerance(),
      sizeTolerance: r.chance(0.5) ? r.tolerance() : 0,
    },
    limits: { web: 4, knifeEdge: 89 },
    setups,
    tools,
    cuts,
  };
}

const away = (a: XY, b: XY): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const degrees = (cosine: number) => (Math.acos(cosine) * 180) / Math.PI;

const SIDES = [
  { face: 'outline:0', inside: ([, y]: XY, _: TruePart) => y },
  { face: 'outline:1', inside: ([x]: XY, { width }: TruePart) => width - x },
  { face: 'outline:2', inside: ([, y]: XY, { height }: TruePart) => height - y },
  { face: 'outline:3', inside: ([x]: XY, _: TruePart) => x },
] as const;

/** A place so far inside a face of the drawn part. */
function placeAt(r: Random, side: number, inside: number): XY {
  const [x, y] = [r.between(30, WIDTH - 30), r.between(25, HEIGHT - 25)];
  return (
    [
      [x, inside],
      [WIDTH - inside, y],
      [x, HEIGHT - inside],
      [inside, y],
    ] as const
  )[side] as XY;
}

const webBetween = (one: string, other: string) => (report: Report) => {
  const web = report.webs.find(({ between }) => [...between].sort().join() === [one, other].sort().join());
  return web && { drawn: web.thickness, interval: web.interval };
};

function holeAtFace(seed: number): ToleranceCase {
  const r = randomOf(seed);
  const side = r.pick([0, 1, 2, 3]);
  const radius = r.between(4, 9);
  const { face, inside } = SIDES[side] as (typeof SIDES)[number];
  const cuts = [bore('a', placeAt(r, side, radius + r.between(1, 3)), 2 * radius)];
  return {
    name: `hole and face ${seed}`,
    job: jobOf(r, [setupOf(r, 's', ['a'])], cuts, [toolOf(r, 't', ['a'])]),
    told: webBetween('cut:a', face),
    figure: (make, part) => inside(make('a').center, part) - make('a').radius,
  };
}

/** Two holes, in one setup or two, of one tool or two. */
function twoHoles(seed: number, setups: 1 | 2): ToleranceCase {
  const r = randomOf(seed);
  const [ra, rb] = [r.between(4, 8), r.between(4, 8)];
  const a: XY = [r.between(45, 75), r.between(30, 50)];
  const t = r.between(0, 2 * Math.PI);
  const d = ra + rb + r.between(1, 3);
  const b: XY = [a[0] + d * Math.cos(t), a[1] + d * Math.sin(t)];
  const lays =
    setups === 1 ? [setupOf(r, 's', ['a', 'b'])] : [setupOf(r, 's', ['a']), setupOf(r, 'o', ['b'])];
  const tools = r.chance(0.5) ? [toolOf(r, 't', ['a']), toolOf(r, 'u', ['b'])] : [toolOf(r, 't', ['a', 'b'])];
  return {
    name: `two holes in ${setups} setups ${seed}`,
    job: jobOf(r, lays, [bore('a', a, 2 * ra), bore('b', b, 2 * rb)], tools),
    told: webBetween('cut:a', 'cut:b'),
    figure: (make) => away(make('a').center, make('b').center) - make('a').radius - make('b').radius,
  };
}

/** Two holes from one stop, touched once; the second setup is turned over, so that the same end bears. */
function oneStop(seed: number): ToleranceCase {
  const base = twoHoles(seed, 2);
  const r = randomOf(seed + 5000);
  const touch = { touch: 'end', tip: r.between(4, 10), tolerance: r.tolerance() };
  const bears = () => ({ bears: 'left', on: 'end', tolerance: r.tolerance(), block: r.between(5, 30) });
  const setups = (base.job.setups ?? []).map(
    (setup, k): Setup => ({
      ...setup,
      turn: 0,
      ...(k === 0 ? {} : { flip: 'x' as const }),
      stops: [{ id: 'end', face: 'left' }],
      zero: { ...setup.zero, x: [{ ...touch, name: 'touch of end' }, bears()] },
    }),
  );
  if (setups[0] !== undefined) delete (setups[0] as { flip?: string }).flip;
  return { ...base, name: `one stop for two ${seed}`, job: { ...base.job, setups } };
}

const knifeAt = (names: readonly string[]) => (report: Report) => {
  const edge = report.knifeEdges.find(
    ({ between }) => [...between].sort().join() === [...names].sort().join(),
  );
  return edge && { drawn: edge.angle, interval: edge.interval };
};

function knifeAtFace(seed: number): ToleranceCase {
  const r = randomOf(seed);
  const side = r.pick([0, 1, 2, 3]);
  const radius = r.between(8, 14);
  const { face, inside } = SIDES[side] as (typeof SIDES)[number];
  const cuts = [bore('a', placeAt(r, side, radius * r.between(0.3, 0.8)), 2 * radius)];
  return {
    name: `knife edge at a face ${seed}`,
    job: jobOf(r, [setupOf(r, 's', ['a'])], cuts, [toolOf(r, 't', ['a'])]),
    told: knifeAt(['cut:a', face]),
    // The circle bulges into the metal: between its tangent and the face the angle is that of the centre's distance.
    figure: (make, part) => degrees(inside(make('a').center, part) / make('a').radius),
  };
}

function knifeBetween(seed: number): ToleranceCase {
  const r = randomOf(seed);
  const [ra, rb] = [r.between(7, 12), r.between(7, 12)];
  const a: XY = [r.between(45, 75), r.between(30, 50)];
  const t = r.between(0, 2 * Math.PI);
  // Between circles the cusps are as sharp as where the centres lie well apart.
  const d = Math.sqrt(ra * ra + rb * rb + 2 * ra * rb * r.between(0.3, 0.8));
  const b: XY = [a[0] + d * Math.cos(t), a[1] + d * Math.sin(t)];
  const lays = r.chance(0.5)
    ? [setupOf(r, 's', ['a', 'b'])]
    : [setupOf(r, 's', ['a']), setupOf(r, 'o', ['b'])];
  const tools = r.chance(0.5) ? [toolOf(r, 't', ['a']), toolOf(r, 'u', ['b'])] : [toolOf(r, 't', ['a', 'b'])];
  return {
    name: `knife edge between two ${seed}`,
    job: jobOf(r, lays, [bore('a', a, 2 * ra), bore('b', b, 2 * rb)], tools),
    told: knifeAt(['cut:a', 'cut:b']),
    figure: (make) => {
      const [one, other] = [make('a'), make('b')];
      const gap = away(one.center, other.center);
      // Law of cosines: the radii meet at this angle, and so do the tangents.
      const cosine = (one.radius ** 2 + other.radius ** 2 - gap ** 2) / (2 * one.radius * other.radius);
      return 180 - degrees(cosine);
    },
  };
}

const floorUnder = (id: string) => (report: Report) => {
  const floor = report.floors.find(({ under }) => under === id);
  return floor && { drawn: floor.thickness, interval: floor.interval };
};

/** A floor over the bottom, or between a pocket from above and one from below. */
function floor(seed: number): ToleranceCase {
  const r = randomOf(seed);
  const isBetween = r.chance(0.5);
  const heights = (): Pick<Setup, 'quill'> & { z: NonNullable<Setup['zero']['z']> } => ({
    ...(r.chance(0.4) ? { quill: { graduation: r.pick([0.02, 0.05]) } } : {}),
    z: [
      {
        touch: r.pick(['top', 'bottom']),
        ...(r.chance(0.5) ? { feeler: r.between(0.05, 0.2) } : {}),
        tolerance: r.tolerance(),
        reads: r.pick([0, 20]),
      },
    ],
  });
  const withZ = (setup: Setup): Setup => {
    const { z, ...over } = heights();
    return { ...setup, ...over, zero: { ...setup.zero, z } };
  };
  const at: XY = [r.between(40, 80), r.between(30, 50)];
  const deep = r.between(6, 9);
  const upright = withZ(setupOf(r, 's', ['a']));
  delete (upright as { flip?: string }).flip;
  const over = withZ(setupOf(r, 'o', ['b'], { flip: 'x' }));
  const below = bore('b', at, r.between(30, 40), { depth: r.between(4, 6), from: 'bottom' });
  const cuts = [bore('a', at, r.between(10, 20), { depth: deep }), ...(isBetween ? [below] : [])];
  const tools = r.chance(0.5) && isBetween ? [toolOf(r, 't', ['a', 'b'])] : [toolOf(r, 't', ['a'])];
  return {
    name: `floor ${seed}`,
    job: jobOf(r, isBetween ? [upright, over] : [upright], cuts, tools),
    told: floorUnder('a'),
    figure: (make) => (make('a').end as number) - (isBetween ? (make('b').end as number) : 0),
  };
}

/** A bite over a corner: how deep it goes from the one face, along the other. */
function cornerBite(seed: number): ToleranceCase {
  const r = randomOf(seed);
  const radius = r.between(15, 25);
  // Its centre lies outside of the front.
  const center: XY = [radius * r.between(0.3, 0.7), -radius * r.between(0.1, 0.5)];
  return {
    name: `bite over a corner ${seed}`,
    job: jobOf(r, [setupOf(r, 's', ['a'])], [bore('a', center, 2 * radius)], [toolOf(r, 't', ['a'])]),
    told: ({ cuts }) => {
      const bite = cuts[0]?.bites.find(({ face }) => face === 'outline:3');
      return bite && { drawn: bite.depth, interval: bite.depthInterval };
    },
    figure: (make) => {
      const {
        center: [x, y],
        radius: own,
      } = make('a');
      return x + Math.sqrt(own * own - y * y);
    },
  };
}

/** Depth, opening or what is left of a bite in one face. */
function bite(seed: number): ToleranceCase {
  const r = randomOf(seed);
  const side = r.pick([0, 1, 2, 3]);
  const radius = r.between(8, 14);
  const { face, inside } = SIDES[side] as (typeof SIDES)[number];
  const far = SIDES[(side + 2) % 4] as (typeof SIDES)[number];
  const what = r.pick(['depth', 'opening', 'left'] as const);
  const cuts = [bore('a', placeAt(r, side, radius * r.between(-0.8, 0.8)), 2 * radius)];
  return {
    name: `${what} of a bite ${seed}`,
    job: jobOf(r, [setupOf(r, 's', ['a'])], cuts, [toolOf(r, 't', ['a'])]),
    told: (report) => {
      const row = report.cuts[0]?.bites.find((one) => one.face === face);
      return row && { drawn: row[what] ?? Number.NaN, interval: row[`${what}Interval`] };
    },
    figure: (make, part) => {
      const { center, radius: own } = make('a');
      const h = inside(center, part);
      if (what === 'depth') return h + own;
      return what === 'opening' ? 2 * Math.sqrt(own * own - h * h) : far.inside(center, part) - own;
    },
  };
}

function seam(seed: number): SeamCase {
  const r = randomOf(seed);
  const at: XY = [r.between(40, 80), r.between(30, 50)];
  const upright = setupOf(r, 's', ['a']);
  delete (upright as { flip?: string }).flip;
  const diameter = r.between(12, 24);
  const cuts = [bore('a', at, diameter, { depth: 9 }), bore('b', at, diameter, { depth: 8, from: 'bottom' })];
  const tools = [toolOf(r, 't', ['a', 'b'])];
  return {
    name: `seam ${seed}`,
    job: jobOf(r, [upright, setupOf(r, 'o', ['b'], { flip: r.pick(['x', 'y']) })], cuts, tools),
    cuts: ['a', 'b'],
  };
}

const many = <T>(make: (seed: number) => T, first: number, count: number): T[] =>
  Array.from({ length: count }, (_, k) => make(first + k));

/** 56 jobs with one figure each. */
export function toleranceCases(): readonly ToleranceCase[] {
  return [
    ...many(holeAtFace, 100, 10),
    ...many((seed) => twoHoles(seed, 1), 200, 6),
    ...many((seed) => twoHoles(seed, 2), 300, 6),
    ...many(oneStop, 400, 4),
    ...many(knifeAtFace, 500, 8),
    ...many(knifeBetween, 600, 6),
    ...many(floor, 700, 8),
    ...many(cornerBite, 800, 4),
    ...many(bite, 900, 4),
  ];
}

/** 4 jobs with a seam. */
export function seamCases(): readonly SeamCase[] {
  return many(seam, 1000, 4);
}

export type { Draw };
