import {
  axesOf,
  type Circle,
  examine,
  type Job,
  measured,
  type Point,
  parseJob,
  type Report,
  type ReportWay,
} from '@edgebite/core';
import { deepest, heightOver, pinsBelow, type SampledArc, widthAt } from './sampled.js';

/** Random numbers that come again: mulberry32 (public domain, T. Ettinger). */
export function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

type Roll = () => number;

const between = (roll: Roll, least: number, most: number): number => least + (most - least) * roll();

/** A bite in a face of a block, the block lying on the drawing in one of four ways, and in a setup in one of eight. */
export interface Bite {
  readonly job: Job;
  readonly report: Report;
  /** As drawn. */
  readonly drawn: Circle;
  /** Unit vector from the bitten face into the metal. */
  readonly into: Point;
  /** Corners of the block on the drawing. */
  readonly corners: readonly Point[];
  readonly lie: { readonly flip: 'x' | 'y' | null; readonly turn: number };
}

const [WIDE, DEEP] = [240, 130];

/** Quarter turns of the drawing. */
const QUARTERS = [
  ({ x, y }: Point): Point => ({ x, y }),
  ({ x, y }: Point): Point => ({ x: -y, y: x }),
  ({ x, y }: Point): Point => ({ x: -x, y: -y }),
  ({ x, y }: Point): Point => ({ x: y, y: -x }),
] as const;

/** A generated bite, bored with a head that has a dial; its face is the one that the block's upper edge is turned to. */
export function generatedBite(roll: Roll): Bite {
  const turned = QUARTERS[Math.floor(4 * roll())] as (typeof QUARTERS)[number];
  const radius = between(roll, 6, 40);
  const depth = 2 * radius * between(roll, 0.12, 0.7);
  const shift = { x: between(roll, -50, 50), y: between(roll, -50, 50) };
  const place = (x: number, y: number): Point => {
    const p = turned({ x, y });
    return { x: p.x + shift.x, y: p.y + shift.y };
  };
  const corners = [place(0, 0), place(WIDE, 0), place(WIDE, DEEP), place(0, DEEP)];
  const center = place(between(roll, 100, 140), DEEP + radius - depth);
  const flip = ([null, 'x', 'y'] as const)[Math.floor(3 * roll())] ?? null;
  const turn = 90 * Math.floor(4 * roll());
  const zero = { x: [{ touch: 'left', tip: 10, reads: 0 }], y: [{ touch: 'front', tip: 10, reads: 0 }] };
  const job = parseJob({
    edgebite: 1,
    units: 'mm',
    part: {
      outline: { svgPath: `M${corners.map(({ x, y }) => `${x} ${y}`).join(' L')} Z` },
      thickness: 10,
    },
    gauges: { pins: [3, 5, 8, 12, 18, 25, 36] },
    tools: [
      {
        id: 'head',
        kind: 'boring head',
        toolMaterial: 'HSS',
        maxSpeed: 500,
        dial: { step: 0.02, on: roll() < 0.5 ? 'diameter' : 'radius' },
        cuts: ['seat'],
      },
    ],
    setups: [
      {
        id: 'a',
        ...(flip === null ? {} : { flip }),
        turn,
        readout: { resolution: 0.001 },
        zero,
        cuts: ['seat'],
      },
    ],
    cuts: [
      {
        id: 'seat',
        kind: 'bore',
        center: [center.x, center.y],
        diameter: 2 * radius,
        from: flip === null ? 'top' : 'bottom',
      },
    ],
  });
  return {
    job,
    report: examine(job),
    drawn: { center, radius },
    into: turned({ x: 0, y: -1 }),
    corners,
    lie: { flip, turn },
  };
}

/** The points of an arc as made, from face to face, and what their steps may be off by. */
export function sampledSeat({ corners, into }: Bite, { center, radius }: Circle, count: number) {
  const face = corners[2] as Point;
  // How far the centre lies inside the bitten face, and half of the arc that is under it.
  const inside = (center.x - face.x) * into.x + (center.y - face.y) * into.y;
  const half = Math.acos(-inside / radius);
  const middle = Math.atan2(into.y, into.x);
  const points = Array.from({ length: count + 1 }, (_, k) => {
    const angle = middle - half + (2 * half * k) / count;
    return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
  });
  return { arc: { points }, slack: radius * ((2 * half) / count) ** 2 + 1e-9 };
}

/**
 * What a way reads of sampled points: turned so that pins are pushed straight down, then as tests/measure/sampled.ts does it,
 * from points alone. With it, how far the sampling may be off.
 */
export function readBySampling(
  way: ReportWay,
  { points }: SampledArc,
  center: Point,
  slack: number,
): { readonly value: number; readonly off: number } {
  if (way.kind === 'height') return { value: heightOver({ points }, way.chord as number), off: 4 * slack };
  if (way.kind === 'across') {
    const [ax, ay] = way.along as NonNullable<ReportWay['along']>;
    const along = points.map(({ x, y }) => x * ax + y * ay);
    // The widest place lies on two points of the polygon only nearly: each is a step off at most.
    return { value: Math.max(...along) - Math.min(...along), off: 2 * slack };
  }
  const face = way.face as NonNullable<ReportWay['face']>;
  const sign = way.kind === 'left' || way.kind === 'over pins' ? -1 : 1;
  const [px, py] = [sign * face.into[0], sign * face.into[1]];
  const turned = ({ x, y }: Point): Point => ({ x: px * y - py * x, y: -(px * x + py * y) });
  const arc = { points: points.map(turned) };
  const line = turned({ x: face.at[0], y: face.at[1] }).y;
  const pins = () => pinsBelow(arc, line, turned(center), way.pin as number, way.pins as 1 | 2);
  switch (way.kind) {
    case 'depth':
      return { value: deepest(arc, line), off: slack };
    case 'left':
      return { value: -deepest(arc, line), off: slack };
    case 'to pins':
      return { value: pins(), off: 40 * slack };
    case 'pins out':
    case 'over pins':
      return { value: -pins(), off: 40 * slack };
    case 'opening':
      return { value: widthAt(arc, line, way.under as number), off: 20 * slack };
    default:
      throw new Error(`no sampling of ${way.kind}`);
  }
}

/** The arc as a head makes it: off in radius and in place. */
const madeOff = ({ center, radius }: Circle, dr: number, dx: number, dy: number): Circle => ({
  center: { x: center.x + dx, y: center.y + dy },
  radius: radius + dr,
});

/** Numbers of the ways of an arc that are not taken at the horns. */
const waysBeside = (report: Report): number[] =>
  (report.checks[0]?.ways ?? []).flatMap(({ horn }, k) => (horn === null ? [k] : []));

/** Bites measured by their points, and put back in. */
export interface RoundTrips {
  readonly cases: number;
  /** Readings taken, and cases that told the radius, and both coordinates of the centre. */
  readonly readings: number;
  readonly radius: number;
  readonly bothAxes: number;
  /** Cases in which something told lies further off than the sampling, or the readings contradict each other. */
  readonly off: number;
  /** Largest error of a radius, and of a coordinate of a centre. */
  readonly worst: readonly [radius: number, place: number];
}

/** Generated bites, measured by sampled contact in some of their ways; each reading is as good as its sampling. */
export function roundTrips(cases: number, seed: number, points = 1500): RoundTrips {
  const roll = dice(seed);
  let [readings, radius, bothAxes, off] = [0, 0, 0, 0];
  const worst: [number, number] = [0, 0];
  for (let k = 0; k < cases; k++) {
    const bite = generatedBite(roll);
    const by = 0.01 * bite.drawn.radius;
    const made = madeOff(bite.drawn, between(roll, -by, by), between(roll, -by, by), between(roll, -by, by));
    const { arc, slack } = sampledSeat(bite, made, 2 * Math.floor(points / 2));
    const all = waysBeside(bite.report);
    const some = all.filter(() => roll() < 0.6);
    const taken = (some.length >= 2 ? some : all).map((way) => {
      const row = bite.report.checks[0]?.ways[way] as ReportWay;
      const { value, off: tolerance } = readBySampling(row, arc, made.center, slack);
      return { way, value, tolerance };
    });
    readings += taken.length;
    const { fit } = measured(bite.job, { cut: 'seat', readings: taken });
    const told = [
      [fit.radius, made.radius],
      [fit.x, made.center.x],
      [fit.y, made.center.y],
    ] as const;
    const isOff = told.some(
      ([one, is]) => one !== null && !(one.worst[0] <= is + 1e-9 && is - 1e-9 <= one.worst[1]),
    );
    if (isOff || fit.contradicted.length > 0) off += 1;
    if (fit.radius !== null) radius += 1;
    if (fit.x !== null && fit.y !== null) bothAxes += 1;
    told.forEach(([one, is], n) => {
      const error = one === null ? 0 : Math.abs(one.value - is);
      worst[n === 0 ? 0 : 1] = Math.max(worst[n === 0 ? 0 : 1] as number, error);
    });
  }
  return { cases, readings, radius, bothAxes, off, worst };
}

/** How many cases a simulated head ended in which way. */
export interface Closings {
  readonly cases: number;
  /** Within one graduation of size, what the second readings leave open on top. */
  readonly onSize: number;
  readonly past: number;
  /** Most that a radius is short, in graduations, and most that a centre is off along an axis that was told. */
  readonly short: number;
  readonly place: number;
}

/**
 * A head without backlash, up to 0.5 short in radius and 0.3 off in centre; two rounds of measuring and correcting: dial and readout
 * are moved as told, the readout in the axes of the machine. Each round bores a circle of its own.
 * @param good how far readings may be off
 */
export function closings(cases: number, seed: number, good: number): Closings {
  const roll = dice(seed);
  let [onSize, past, short, place] = [0, 0, 0, 0];
  for (let k = 0; k < cases; k++) {
    const bite = generatedBite(roll);
    const { job, report, drawn, lie } = bite;
    const dial = job.tools[0]?.dial as { step: number; on: 'diameter' | 'radius' };
    const each = dial.on === 'diameter' ? dial.step / 2 : dial.step;
    const [angle, far] = [between(roll, 0, 2 * Math.PI), 0.3 * Math.sqrt(roll())];
    let made = madeOff(drawn, -0.5 * roll(), far * Math.cos(angle), far * Math.sin(angle));
    const axes = axesOf(lie);
    let open = 0;
    let isPast = false;
    let off = 0;
    for (let round = 0; round < 2; round++) {
      const { arc } = sampledSeat(bite, made, 4000);
      const readings = waysBeside(report).map((way) => {
        const row = report.checks[0]?.ways[way] as ReportWay;
        // Read in the middle of what may be read, so that the sampling is far under what is told of it.
        const { value } = readBySampling(row, arc, made.center, 0);
        return { way, value: value + good * between(roll, -0.9, 0.9), tolerance: good };
      });
      const { fit, correction, targets } = measured(job, { cut: 'seat', readings });
      const [target] = targets;
      if (correction === null || target === undefined) throw new Error('nothing is told');
      open = fit.radius === null ? 0 : fit.radius.worst[1] - fit.radius.worst[0];
      const [mx, my] = [target.readout[0] - target.was[0], target.readout[1] - target.was[1]];
      made = {
        center: {
          x: made.center.x + axes.x.dx * mx + axes.y.dx * my,
          y: made.center.y + axes.x.dy * mx + axes.y.dy * my,
        },
        radius: made.radius + (correction.graduations ?? 0) * each,
      };
      isPast ||= made.radius > drawn.radius + 1e-9;
      off = Math.max(
        fit.x === null ? 0 : Math.abs(made.center.x - drawn.center.x),
        fit.y === null ? 0 : Math.abs(made.center.y - drawn.center.y),
      );
    }
    if (isPast) past += 1;
    const left = drawn.radius - made.radius;
    if (left < each + open) onSize += 1;
    short = Math.max(short, left / each);
    place = Math.max(place, off);
  }
  return { cases, onSize, past, short, place };
}

/** Draws of readings, and how often what is told of them holds. */
export interface Covered {
  readonly draws: number;
  /** Of all told radii and coordinates. */
  readonly byRoot: number;
  readonly byWorst: number;
  readonly told: number;
  /** Draws in which readings were said to contradict each other. */
  readonly contradicted: number;
}

/** Readings of generated bites, each off by anything within its tolerance with equal chance. */
export function coverage(draws: number, seed: number): Covered {
  const roll = dice(seed);
  let [byRoot, byWorst, told, contradicted] = [0, 0, 0, 0];
  const PER_BITE = 100;
  for (let k = 0; k < draws; ) {
    const bite = generatedBite(roll);
    const by = 0.01 * bite.drawn.radius;
    const made = madeOff(bite.drawn, between(roll, -by, by), between(roll, -by, by), between(roll, -by, by));
    const { arc } = sampledSeat(bite, made, 4000);
    const all = waysBeside(bite.report);
    const some = all.filter(() => roll() < 0.5);
    const taken = (some.length >= 2 ? some : all).map((way) => {
      const row = bite.report.checks[0]?.ways[way] as ReportWay;
      return { way, ...readBySampling(row, arc, made.center, 0), tolerance: between(roll, 0.005, 0.03) };
    });
    for (let n = 0; n < PER_BITE && k < draws; n++, k++) {
      const readings = taken.map((one) => ({
        ...one,
        value: one.value + one.tolerance * between(roll, -1, 1),
      }));
      const { fit } = measured(bite.job, { cut: 'seat', readings });
      if (fit.contradicted.length > 0) contradicted += 1;
      for (const [one, is] of [
        [fit.radius, made.radius],
        [fit.x, made.center.x],
        [fit.y, made.center.y],
      ] as const) {
        if (one === null) continue;
        told += 1;
        if (Math.abs(one.value - is) <= one.rss) byRoot += 1;
        if (one.worst[0] <= is + 1e-6 && is - 1e-6 <= one.worst[1]) byWorst += 1;
      }
    }
  }
  return { draws, byRoot, byWorst, told, contradicted };
}
