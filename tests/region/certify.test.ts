import { disc, offsetPath, type Point, type Region, ring } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { type Curves, gather } from '../../packages/core/src/noding/gather.js';
import { type Noding, node } from '../../packages/core/src/noding/node.js';
import { certify } from '../../packages/core/src/overlay/certify.js';
import { OFF_CURVE } from '../../packages/core/src/overlay/certify-edges.js';
import { regionFault } from '../../packages/core/src/overlay/certify-region.js';
import { borderOf } from '../../packages/core/src/overlay/keep.js';
import { type Subdivision, subdivide } from '../../packages/core/src/overlay/label.js';
import { type Graph, merge } from '../../packages/core/src/overlay/merge.js';
import { collect } from '../../packages/core/src/overlay/stitch.js';
import { windings } from '../../packages/core/src/overlay/windings.js';
import { loopsOf, partArea } from '../../packages/core/src/region/measure.js';
import { box, closed, p } from './shapes.js';

/*
 * The certificate, with every stage of an overlay made faulty on purpose, in every place where the fault can be made. A fault
 * is noticed if no order in a plane is left, or the certificate says what is wrong. Elementary, no source.
 */

const region = (...points: readonly Point[]): Region => [{ outer: closed(...points), holes: [] }];
const plate = (x: number, y: number, width: number, height: number): Region => [
  { outer: box(x, y, width, height), holes: [] },
];
const slot = offsetPath([{ kind: 'line', a: p(3, 3), b: p(17, 9) }], 2);

/** Overlays of several kinds, gaps down to a tolerance and below it. */
const scenes: Record<string, readonly Region[]> = {
  'bores that cross an edge and each other': [plate(0, 0, 20, 12), disc(p(2, 11), 3), disc(p(5, 12), 2.5)],
  'a ring, a bore in it, and a hole beside': [
    plate(0, 0, 20, 12),
    ring(p(8, 6), 4, 3),
    disc(p(8.5, 6), 1),
    disc(p(15, 6), 2),
  ],
  'a slot across polygons': [
    slot,
    region(p(0, 0), p(20, 1), p(18, 11), p(1, 12)),
    region(p(5, -2), p(9, 14), p(4, 13)),
  ],
  'discs that all but coincide': [
    disc(p(0, 0), 5),
    disc(p(3e-7, 1e-7), 5),
    disc(p(0, 2e-6), 5 + 1e-6),
    disc(p(4, 1), 3),
  ],
  'faces flush, and turned by next to nothing': [
    plate(0, 0, 10, 10),
    plate(10, 2, 5, 5),
    region(p(2, 10), p(8, 10 + 3e-7), p(5, 14)),
  ],
  'circles that touch from outside and from within': [
    disc(p(0, 0), 5),
    disc(p(8, 0), 3),
    disc(p(3, 0), 2),
    disc(p(0, 7), 2 + 4e-9),
  ],
  'circles through one point': [1, 2, 3, 4, 5].map((k) => disc(p(k * Math.cos(k), k * Math.sin(k)), k)),
};

const fresh = (given: Curves): Curves => {
  const { x, y, given: places, isSeam } = given.points;
  return { ...given, points: { x: x.slice(), y: y.slice(), given: places.slice(), isSeam: isSeam.slice() } };
};

/** Stages as they are, each to be put in the place of one that is faulty. */
interface Stages {
  readonly node: (curves: Curves) => Noding;
  readonly merge: (noding: Noding) => Graph;
  readonly subdivide: (graph: Graph) => Subdivision | null;
}
const SOUND: Stages = { node, merge, subdivide };

/** What is found wrong with an overlay made in these stages; null if nothing is. */
function verdict(operands: readonly Region[], stages: Stages): string | null {
  const given = gather(operands.map(loopsOf));
  const subdivision = stages.subdivide(stages.merge(stages.node(fresh(given))));
  return subdivision === null ? 'no order' : certify(subdivision, given);
}

/** Makes a fault in the given place; null where there is none to be made. */
type Fault<Made> = (made: Made, place: number) => Made | null;

const edges = (noding: Noding) => Array.from({ length: noding.count }, (_, k) => k);
const only = (noding: Noding, list: readonly number[]): Noding => ({
  ...noding,
  index: null,
  count: list.length,
  from: Int32Array.from(list, (k) => noding.from[k] as number),
  to: Int32Array.from(list, (k) => noding.to[k] as number),
  piece: Int32Array.from(list, (k) => noding.piece[k] as number),
});
const put = (list: Int32Array, at: number, value: number) => {
  const copy = list.slice();
  copy[at] = value;
  return copy;
};
const lengthOf = ({ curves: { points } }: { curves: Curves }, a: number, b: number) =>
  Math.hypot(
    (points.x[a] as number) - (points.x[b] as number),
    (points.y[a] as number) - (points.y[b] as number),
  );
/** Long enough that a fault in it is more than what welding moves. */
const isLong = (made: { curves: Curves }, a: number, b: number) =>
  lengthOf(made, a, b) > 1e4 * made.curves.tolerance;

const nodeFaults: Record<string, Fault<Noding>> = {
  'a crossing is left out of one piece': (noding, k) => {
    if (k + 1 >= noding.count || noding.piece[k] !== noding.piece[k + 1]) return null;
    if (!isLong(noding, noding.from[k] as number, noding.to[k] as number)) return null;
    if (!isLong(noding, noding.from[k + 1] as number, noding.to[k + 1] as number)) return null;
    return only(
      { ...noding, to: put(noding.to, k, noding.to[k + 1] as number) },
      edges(noding).filter((e) => e !== k + 1),
    );
  },
  'an edge is lost': (noding, k) =>
    isLong(noding, noding.from[k] as number, noding.to[k] as number)
      ? only(
          noding,
          edges(noding).filter((e) => e !== k),
        )
      : null,
  'an edge is there twice': (noding, k) => only(noding, [...edges(noding), k]),
  'an edge runs backwards': (noding, k) =>
    isLong(noding, noding.from[k] as number, noding.to[k] as number)
      ? {
          ...noding,
          from: put(noding.from, k, noding.to[k] as number),
          to: put(noding.to, k, noding.from[k] as number),
        }
      : null,
  'an edge is taken for one of another operand': (noding, k) => {
    const { operand } = noding.curves;
    const other = (noding.piece[k] as number) === 0 ? noding.curves.count - 1 : 0;
    return operand[noding.piece[k] as number] === operand[other]
      ? null
      : { ...noding, piece: put(noding.piece, k, other) };
  },
  'an edge ends at another vertex': (noding, k) => {
    const other = noding.from[(k + 3) % noding.count] as number;
    if (other === noding.to[k] || !isLong(noding, other, noding.to[k] as number)) return null;
    return other === noding.from[k] ? null : { ...noding, to: put(noding.to, k, other) };
  },
  'two vertices far apart are welded': (noding, k) => {
    const one = noding.from[k] as number;
    const other = noding.to[k] as number;
    // On all curves of the other one it takes its place by right: a seam, or next to another crossing of them.
    const atOther = edges(noding).filter((e) => noding.from[e] === other || noding.to[e] === other);
    const isOnAll = atOther.every((e) => offCurve(noding, e, one) <= OFF_CURVE * noding.curves.tolerance);
    if (!isLong(noding, one, other) || isOnAll) return null;
    const weld = (list: Int32Array) => list.map((v) => (v === other ? one : v));
    const welded = { ...noding, from: weld(noding.from), to: weld(noding.to) };
    return only(
      welded,
      edges(noding).filter((e) => welded.from[e] !== welded.to[e]),
    );
  },
  'a vertex is moved by twenty tolerances': (noding, k) => shifted(noding, k, 20 * noding.curves.tolerance),
  'a vertex is moved by a hundredth of the size': (noding, k) => shifted(noding, k, 0.1),
  'a whole loop is lost': (noding, k) => {
    const { operand } = noding.curves;
    const of = operand[noding.piece[k] as number];
    return only(
      noding,
      edges(noding).filter((e) => operand[noding.piece[e] as number] !== of),
    );
  },
};

/** How far a vertex is from the line or circle of an edge. */
function offCurve(noding: Noding, k: number, v: number): number {
  const { rows, points } = noding.curves;
  const row = (at: number) => rows[(noding.piece[k] as number) * 8 + at] as number;
  const [x, y] = [points.x[v] as number, points.y[v] as number];
  if (row(7) !== 0) return Math.abs(Math.hypot(x - row(4), y - row(5)) - row(6));
  const [dx, dy] = [row(2) - row(0), row(3) - row(1)];
  return Math.abs(dx * (y - row(1)) - dy * (x - row(0))) / Math.hypot(dx, dy);
}

/** Moves the start of an edge off the curve that the edge is of. */
function shifted(noding: Noding, k: number, by: number): Noding {
  const { rows, points } = noding.curves;
  const v = noding.from[k] as number;
  const o = (noding.piece[k] as number) * 8;
  const row = (at: number) => rows[o + at] as number;
  const isLine = row(7) === 0;
  const dx = isLine ? row(3) - row(1) : (points.x[v] as number) - row(4);
  const dy = isLine ? row(0) - row(2) : (points.y[v] as number) - row(5);
  const x = points.x.slice();
  x[v] = (x[v] as number) + (by * dx) / Math.hypot(dx, dy);
  const y = points.y.slice();
  y[v] = (y[v] as number) + (by * dy) / Math.hypot(dx, dy);
  return { ...noding, curves: { ...noding.curves, points: { ...points, x, y } } };
}

const mergeFaults: Record<string, Fault<Graph>> = {
  'a member counts the other way': (graph, k) => {
    const sign = graph.sign.slice();
    const m = graph.start[k] as number;
    sign[m] = -(sign[m] as number);
    return { ...graph, sign };
  },
  'an edge along which two operands run has lost one of them': (graph, k) => {
    const m = graph.start[k] as number;
    if ((graph.start[k + 1] as number) - m < 2) return null;
    const sign = graph.sign.slice();
    sign[m + 1] = 0;
    return { ...graph, sign };
  },
  'two edges with the same ends are taken for one': (graph, k) => {
    for (let e = k + 1; e < graph.count; e++) {
      if (graph.from[e] !== graph.from[k] || graph.to[e] !== graph.to[k]) continue;
      return without(graph, e);
    }
    return null;
  },
  'an edge is left out': (graph, k) =>
    isLong(graph, graph.from[k] as number, graph.to[k] as number) ? without(graph, k) : null,
};

function without(graph: Graph, gone: number): Graph {
  const list = Array.from({ length: graph.count }, (_, e) => e).filter((e) => e !== gone);
  const start = [0];
  const member: number[] = [];
  const sign: number[] = [];
  for (const e of list) {
    for (let m = graph.start[e] as number; m < (graph.start[e + 1] as number); m++) {
      member.push(graph.member[m] as number);
      sign.push(graph.sign[m] as number);
    }
    start.push(member.length);
  }
  return {
    ...graph,
    index: null,
    count: list.length,
    from: Int32Array.from(list, (e) => graph.from[e] as number),
    to: Int32Array.from(list, (e) => graph.to[e] as number),
    start: Int32Array.from(start),
    member: Int32Array.from(member),
    sign: Int8Array.from(sign),
  };
}

const labelFaults: Record<string, Fault<Subdivision>> = {
  'two neighbours round a vertex are swapped': (made, k) => {
    const { ccw, cw, anyAt } = made.rotation;
    const [a, b] = [k, ccw[k] as number];
    const c = ccw[b] as number;
    if (a === b || a === c) return null;
    const next = ccw.slice();
    const before = cw.slice();
    const first = before[a] as number;
    for (const [one, other] of [
      [first === c ? a : first, b],
      [b, a],
      [a, first === c ? b : c],
    ] as const) {
      next[one] = other;
      before[other] = one;
    }
    if (first === c) return null;
    return { ...made, rotation: { ccw: next, cw: before, anyAt } };
  },
  'the order round a vertex is the other way': (made, k) => {
    const { ccw, cw, anyAt } = made.rotation;
    if (ccw[k] === cw[k]) return null;
    const next = ccw.slice();
    const before = cw.slice();
    let half = k;
    do {
      next[half] = cw[half] as number;
      before[half] = ccw[half] as number;
      half = ccw[half] as number;
    } while (half !== k);
    return { ...made, rotation: { ccw: next, cw: before, anyAt } };
  },
  'a face is taken for another': (made, k) => {
    const { faceOf } = made;
    if (faceOf[k] === faceOf[k ^ 1]) return null;
    return { ...made, faceOf: faceOf.map((face) => (face === faceOf[k] ? (faceOf[k ^ 1] as number) : face)) };
  },
  'one side of an edge has the face of another edge': (made, k) => {
    const face = made.faceOf[(k + 5) % made.faceOf.length] as number;
    return face === made.faceOf[k] ? null : { ...made, faceOf: put(made.faceOf, k, face) };
  },
  'a face is reached over an edge of another': (made, k) => {
    const at = k % made.via.length;
    const via = (made.via[at] as number) ^ 1;
    return { ...made, via: put(made.via, at, via) };
  },
  'a hole lies in another face': (made, k) => {
    const of = made.graph.curves.operand[made.graph.member[made.graph.start[k >> 1] as number] as number];
    const outside = made.faceOf[k];
    const other = (outside as number) === 0 ? 1 : 0;
    const isOf = (half: number) =>
      made.graph.curves.operand[made.graph.member[made.graph.start[half >> 1] as number] as number] === of;
    return {
      ...made,
      faceOf: made.faceOf.map((face, half) => (face === outside && isOf(half) ? other : face)),
    };
  },
};

describe('an overlay that is sound', () => {
  it.each(Object.keys(scenes))('is proven: %s', (name) => {
    expect(verdict(scenes[name] as readonly Region[], SOUND)).toBeNull();
  });
});

/** In how many places the fault was made, and in which of them it was not noticed. */
function tried(make: (operands: readonly Region[], place: number) => string | null | undefined) {
  let made = 0;
  const missed: string[] = [];
  for (const [name, operands] of Object.entries(scenes)) {
    for (let place = 0; place < 60; place++) {
      const found = make(operands, place);
      if (found === undefined) continue;
      made++;
      if (found === null) missed.push(`${name}, place ${place}`);
    }
  }
  return { made, missed };
}

function withFault<Made, Stage extends keyof Stages>(
  stage: Stage,
  fault: Fault<Made>,
  count: (made: Made) => number,
) {
  return tried((operands, place) => {
    let isMade = false;
    const stages: Stages = {
      ...SOUND,
      [stage]: (input: never) => {
        const made = (SOUND[stage] as unknown as (input: never) => Made)(input);
        const faulty = place < count(made) ? fault(made, place) : null;
        isMade = faulty !== null;
        return faulty ?? made;
      },
    };
    const found = verdict(operands, stages);
    return isMade ? found : undefined;
  });
}

describe('a fault is noticed wherever it is made', () => {
  it.each(Object.entries(nodeFaults))('in nodes: %s', (_, fault) => {
    const { made, missed } = withFault('node', fault, ({ count }: Noding) => count);
    expect(made).toBeGreaterThan(20);
    expect(missed).toEqual([]);
  });

  it.each(Object.entries(mergeFaults))('in welding together: %s', (_, fault) => {
    const { made, missed } = withFault('merge', fault, ({ count }: Graph) => count);
    expect(made).toBeGreaterThan(0);
    expect(missed).toEqual([]);
  });

  it.each(Object.entries(labelFaults))('in order and faces: %s', (_, fault) => {
    const { made, missed } = withFault(
      'subdivide',
      fault,
      (made: Subdivision | null) => made?.faceOf.length ?? 0,
    );
    expect(made).toBeGreaterThan(20);
    expect(missed).toEqual([]);
  });
});

const stitchFaults: Record<string, (region: Region) => Region | null> = {
  'a part is lost': (region) => region.slice(1),
  'a part is there twice': (region) => [...region, ...region.slice(0, 1)],
  'an edge is left out': ([part, ...rest]) =>
    part ? [{ ...part, outer: part.outer.slice(1) }, ...rest] : null,
  'an arc is drawn straight': ([part, ...rest]) => {
    if (!part?.outer.some(({ kind }) => kind === 'arc')) return null;
    const outer = part.outer.map(({ a, b }): (typeof part.outer)[number] => ({ kind: 'line', a, b }));
    return [{ ...part, outer }, ...rest];
  },
  'an arc goes the other way round': ([part, ...rest]) => {
    if (!part?.outer.some(({ kind }) => kind === 'arc')) return null;
    const outer = part.outer.map((edge) => (edge.kind === 'arc' ? { ...edge, ccw: !edge.ccw } : edge));
    return [{ ...part, outer }, ...rest];
  },
  'a loop is run backwards': ([part, ...rest]) =>
    part
      ? [
          {
            ...part,
            outer: part.outer
              .map((e) => ({ ...e, a: e.b, b: e.a, ...(e.kind === 'arc' && { ccw: !e.ccw }) }))
              .reverse() as typeof part.outer,
          },
          ...rest,
        ]
      : null,
  'a hole is lost': (region) => {
    const at = region.findIndex(({ holes }) => holes.length > 0);
    return at < 0
      ? null
      : region.map((part, k) => (k === at ? { ...part, holes: part.holes.slice(1) } : part));
  },
};

const largestFirst = (region: Region): Region =>
  [...region].sort((one, other) => partArea(other) - partArea(one));

describe('a fault in a region made of faces', () => {
  const made = Object.values(scenes).map((operands) => {
    const given = gather(operands.map(loopsOf));
    const subdivision = subdivide(merge(node(fresh(given)))) as Subdivision;
    const count = windings(subdivision, () => true);
    const kept = Uint8Array.from(count, (times, face) => (face > 0 && times % 2 === 1 ? 1 : 0));
    return {
      subdivision,
      border: borderOf(subdivision, kept),
      region: largestFirst(collect(subdivision, kept)),
    };
  });

  it('is none where it is sound', () => {
    for (const { subdivision, border, region } of made)
      expect(regionFault(subdivision, border, region, 0)).toBeNull();
  });

  it.each(Object.entries(stitchFaults))('is noticed: %s', (_, fault) => {
    let count = 0;
    for (const { subdivision, border, region } of made) {
      const faulty = fault(region);
      if (faulty === null) continue;
      count++;
      expect(regionFault(subdivision, border, faulty, 0)).not.toBeNull();
    }
    expect(count).toBeGreaterThan(0);
  });
});
