import { type Edge, type Job, type JobDocument, type Loop, type Point, reversed } from '@edgebite/core';
import { placed, type Similarity, UNMOVED } from '@edgebite/core/testing';

/** A job written down in another way, and how its report has to compare. */
export interface JobWay {
  readonly name: string;
  readonly document: JobDocument;
  /** Where places of the plain job are in this one. */
  readonly by: Similarity;
  /** What an edge of the plain job is called in this one; null if edges have been split and names do not match. */
  readonly rename: ((source: string) => string) | null;
  /** Whether that changes any number. */
  readonly renumbered: boolean;
  /** Whether bottom and top are exchanged. */
  readonly flipped: boolean;
  /** Whether the cuts come in another order, so that turns, and what each sets free, differ. */
  readonly reordered: boolean;
}

interface Change {
  readonly by: Similarity;
  readonly loop: (edges: Loop) => Loop;
  readonly flipped: boolean;
  readonly reordered: boolean;
}

const PLAIN: Change = { by: UNMOVED, loop: (edges) => edges, flipped: false, reordered: false };

/** The job with all shapes written as edges, in the order in which its own names count them. */
export function plainDocument(job: Job): JobDocument {
  return written(job, PLAIN);
}

/** The ways in which a job must come to the same. */
export function jobWays(job: Job, extent: number): JobWay[] {
  const way = (name: string, change: Partial<Change>, rename: JobWay['rename'] = unchanged): JobWay => {
    const all = { ...PLAIN, ...change };
    return { name, document: written(job, all), rename, renumbered: rename !== unchanged, ...all };
  };
  const moved = (name: string, by: Partial<Similarity>): JobWay => way(name, { by: { ...UNMOVED, ...by } });
  const far = 1e3 * extent;
  return [
    moved('turned by a 3-4-5 triangle', { turn: [0.6, 0.8] }),
    moved('turned by one radian and moved', { turn: [Math.cos(1), Math.sin(1)], shift: [12.5, -7.25] }),
    moved('mirrored', { mirror: true }),
    moved('far from the origin', { shift: [far, -far / 2] }),
    moved('in inches', { scale: 1 / 25.4 }),
    moved('a thousand times as large', { scale: 1000 }),
    way(
      'begun one edge later',
      { loop: later },
      renamed(job, (k, n) => (k + n - 1) % n),
    ),
    way(
      'run the other way round',
      { loop: turnedRound },
      renamed(job, (k, n) => n - 1 - k),
    ),
    way('edges halved', { loop: (edges) => edges.flatMap(halves) }, null),
    way('turned over', { flipped: true }),
    way('cuts in reverse order', { reordered: true }),
  ];
}

const unchanged = (source: string): string => source;
const later = (edges: Loop): Loop => [...edges.slice(1), ...edges.slice(0, 1)];
const turnedRound = (edges: Loop): Loop => edges.map(reversed).reverse();

function halves(edge: Edge): Edge[] {
  const middle = middleOf(edge);
  return [
    { ...edge, b: middle },
    { ...edge, a: middle },
  ];
}

function middleOf(edge: Edge): Point {
  if (edge.kind === 'line') return { x: (edge.a.x + edge.b.x) / 2, y: (edge.a.y + edge.b.y) / 2 };
  const { a, b, center, radius, ccw } = edge;
  const start = Math.atan2(a.y - center.y, a.x - center.x);
  const end = Math.atan2(b.y - center.y, b.x - center.x);
  const turn = ccw
    ? (end - start + 4 * Math.PI) % (2 * Math.PI)
    : -((start - end + 4 * Math.PI) % (2 * Math.PI));
  const angle = start + (turn === 0 ? Math.PI : turn / 2);
  return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
}

/** Names after each loop's edges have been counted anew. */
function renamed(job: Job, number: (k: number, n: number) => number): (source: string) => string {
  const names = new Map<string, string>();
  for (const { outer, holes } of job.outline) {
    for (const [k] of outer.entries()) names.set(`outline:${k}`, `outline:${number(k, outer.length)}`);
    for (const [h, hole] of holes.entries()) {
      for (const [k] of hole.entries()) names.set(`hole:${h}:${k}`, `hole:${h}:${number(k, hole.length)}`);
    }
  }
  return (source) => names.get(source) ?? source;
}

function written(job: Job, change: Change): JobDocument {
  const { by, flipped, reordered } = change;
  const pair = (p: Point): [number, number] => {
    const { x, y } = placed(p, by);
    return [x, y];
  };
  const edgeJson = (edge: Edge) => {
    const ends = { a: pair(edge.a), b: pair(edge.b) };
    if (edge.kind === 'line') return { kind: 'line', ...ends } as const;
    return { kind: 'arc', ...ends, center: pair(edge.center), ccw: edge.ccw !== by.mirror } as const;
  };
  const loop = (edges: Loop) => ({ edges: change.loop(edges).map(edgeJson) });
  const [part] = job.outline;
  if (part === undefined || job.outline.length > 1)
    throw new RangeError('job-ways: the outline is not one part');
  const cuts = job.cuts.map((cut): JobDocument['cuts'][number] => {
    const from = (cut.from === 'top') !== flipped ? 'top' : 'bottom';
    const every = { id: cut.id, from, diameter: cut.diameter * by.scale } as const;
    const depth = cut.through ? ('through' as const) : cut.depth * by.scale;
    if (cut.kind === 'bore') return { ...every, depth, kind: 'bore', center: pair(cut.center) };
    if (cut.kind === 'swept')
      return { ...every, depth, kind: 'swept', path: { edges: cut.path.map(edgeJson) } };
    const reach = cut.reach === null ? {} : { reach: cut.reach * by.scale };
    return {
      ...every,
      depth,
      kind: 'annular',
      center: pair(cut.center),
      wall: cut.wall * by.scale,
      ...reach,
    };
  });
  return {
    edgebite: 1,
    units: job.units,
    part: {
      outline: { ...loop(part.outer), ...(part.holes.length === 0 ? {} : { holes: part.holes.map(loop) }) },
      thickness: job.thickness * by.scale,
      ...(job.material === null ? {} : { material: job.material }),
    },
    ...(job.keep === null ? {} : { keep: pair(job.keep) }),
    limits: { web: job.limits.web * by.scale, knifeEdge: job.limits.knifeEdge },
    resolution: job.resolution * by.scale,
    cuts: reordered ? cuts.reverse() : cuts,
  };
}
