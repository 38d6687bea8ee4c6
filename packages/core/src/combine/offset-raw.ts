import type { Edge, Source } from '../geometry/edge.js';
import { sweep } from '../geometry/measure.js';
import { arcLike, lineLike, reversed } from '../geometry/parts.js';
import { distance, moved, type Point, samePoint, type Vector } from '../geometry/point.js';
import type { Loop } from '../region/region.js';

/** An arc shorter than this many weld tolerances could be turned round by welding; its chord does not mind. */
const ROUND_FROM = 8;

/** Under this sine a chain that turns back may do so either way: which of the two is rounding. */
const TURNS_BACK = 0.01;

/**
 * The closed curve at a distance to the right of a closed loop (to the left, if negative), with all that is wrong
 * about it left in: edges that run backwards, arcs that have shrunk through their centre, loops, overlaps.
 *
 * Outside a corner comes an arc. Inside one, and for an arc that has shrunk through its centre, the convolution of
 * loop and circle has an arc run backwards. Here its chord stands in for that, which goes once more round what lies
 * between the two; all of that is nearer to the corner, or to any place of the arc, than the distance, so that it
 * counts already. Where a chain turns straight back there is an arc in any case: if that is the inside of the
 * corner, it goes once more round the disc about it, which counts as well.
 * @param weld lengths up to this are nothing
 */
export function rawLoop(loop: Loop, shift: number, weld: number): Loop {
  return rawSide(loop, true, shift, weld);
}

/**
 * The closed curve at a distance all round a chain of edges: along its right side, round its end, back along its
 * left side, round its start. A chain that closes is taken for one that ends where it begins.
 * @param weld lengths up to this are nothing
 */
export function rawBand(chain: readonly Edge[], radius: number, weld: number): Loop {
  const right = rawSide(chain, false, radius, weld);
  const left = rawSide(chain, false, -radius, weld).map(reversed).reverse();
  const first = chain[0] as Edge;
  const last = chain[chain.length - 1] as Edge;
  const ahead = normalAt(last, last.b);
  const behind = normalAt(first, first.a);
  return [
    ...right,
    round(moved(last.b, ahead, radius), moved(last.b, ahead, -radius), last.b, radius, last.source),
    ...left,
    round(moved(first.a, behind, -radius), moved(first.a, behind, radius), first.a, radius, first.source),
  ];
}

/** How the curves of two neighbouring edges are joined. */
type Join = 'shared' | 'round' | 'chord';

/** One side of a chain, joined up with itself if it closes. */
function rawSide(chain: readonly Edge[], closes: boolean, shift: number, weld: number): Edge[] {
  const n = chain.length;
  const starts: Point[] = [];
  const ends: Point[] = [];
  const starting: Vector[] = [];
  const ending: Vector[] = [];
  for (const edge of chain) {
    const before = normalAt(edge, edge.a);
    const after = edge.kind === 'line' ? before : normalAt(edge, edge.b);
    starting.push(before);
    ending.push(after);
    starts.push(moved(edge.a, before, shift));
    ends.push(moved(edge.b, after, shift));
  }
  const joins: Join[] = [];
  for (let k = 0; k < (closes ? n : n - 1); k++) {
    const next = (k + 1) % n;
    if (distance(ends[k] as Point, starts[next] as Point) > weld) {
      joins.push(isRound(ending[k] as Vector, starting[next] as Vector, shift) ? 'round' : 'chord');
    } else {
      starts[next] = ends[k] as Point;
      joins.push('shared');
    }
  }
  trim(chain, joins, shift, starts, ends, starting, ending);
  const raw: Edge[] = [];
  for (let k = 0; k < n; k++) {
    const edge = chain[k] as Edge;
    const a = starts[k] as Point;
    const b = ends[k] as Point;
    if (!samePoint(a, b)) raw.push(sideOf(edge, a, b, shift, weld));
    if (k >= joins.length || joins[k] === 'shared') continue;
    const c = starts[(k + 1) % n] as Point;
    raw.push(joins[k] === 'round' ? round(b, c, edge.b, shift, edge.source) : lineLike(edge, b, c));
  }
  return raw;
}

/** Whether a side goes round the corner between two normals to the chain, not through its inside. */
function isRound(p: Vector, q: Vector, shift: number): boolean {
  const cross = p.dx * q.dy - p.dy * q.dx;
  const turnsBack = p.dx * q.dx + p.dy * q.dy < 0 && Math.abs(cross) < TURNS_BACK;
  return turnsBack || cross > 0 === shift > 0;
}

/**
 * Ends neighbouring straight edges where they meet, inside a corner, instead of leaving them to run through each
 * other: the same curve as round a corner filled up by an arc of the distance as its radius, which adds nothing to
 * what is near.
 */
function trim(
  chain: readonly Edge[],
  joins: Join[],
  shift: number,
  starts: Point[],
  ends: Point[],
  starting: readonly Vector[],
  ending: readonly Vector[],
): void {
  const n = chain.length;
  const cuts = joins.map((join, k) => {
    if (join !== 'chord' || chain[k]?.kind === 'arc' || chain[(k + 1) % n]?.kind === 'arc') return 0;
    const p = ending[k] as Vector;
    const q = starting[(k + 1) % n] as Vector;
    return (Math.abs(shift) * Math.abs(p.dx * q.dy - p.dy * q.dx)) / (1 + p.dx * q.dx + p.dy * q.dy);
  });
  const fits = chain.map((edge, k) => {
    const total = (cuts[(k + n - 1) % n] ?? 0) + (cuts[k] ?? 0);
    return total < distance(edge.a, edge.b);
  });
  for (let k = 0; k < joins.length; k++) {
    const cut = cuts[k] as number;
    const next = (k + 1) % n;
    if (!(cut > 0 && fits[k] === true && fits[next] === true)) continue;
    const { dx, dy } = ending[k] as Vector;
    // Back along the edge: the normal points to the right of it.
    const meeting = moved(ends[k] as Point, { dx: dy, dy: -dx }, cut);
    ends[k] = meeting;
    starts[next] = meeting;
    joins[k] = 'shared';
  }
}

/** What has become of an edge that lies between two new ends. */
function sideOf(edge: Edge, a: Point, b: Point, shift: number, weld: number): Edge {
  if (edge.kind === 'line') return lineLike(edge, a, b);
  const radius = edge.radius + (edge.ccw ? shift : -shift);
  return radius * sweep(edge) > ROUND_FROM * weld
    ? arcLike({ center: edge.center, radius, source: edge.source }, a, b, edge.ccw)
    : lineLike(edge, a, b);
}

/** An arc round a corner: counter-clockwise for a shift to the right. */
function round(a: Point, b: Point, center: Point, shift: number, source: Source | undefined): Edge {
  return arcLike({ center, radius: Math.abs(shift), source }, a, b, shift > 0);
}

/** Unit vector to the right of the direction of travel at an end of an edge. */
function normalAt(edge: Edge, p: Point): Vector {
  if (edge.kind === 'line') {
    const length = distance(edge.a, edge.b);
    return { dx: (edge.b.y - edge.a.y) / length, dy: (edge.a.x - edge.b.x) / length };
  }
  const length = edge.ccw ? distance(edge.center, p) : -distance(edge.center, p);
  return { dx: (p.x - edge.center.x) / length, dy: (p.y - edge.center.y) / length };
}
