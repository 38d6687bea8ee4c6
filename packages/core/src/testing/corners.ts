import type { Edge } from '../geometry/edge.js';
import { type Point, samePoint } from '../geometry/point.js';
import type { Loop, RegionPart } from '../region/region.js';

/** One end of an edge, seen from the joint where it lies. */
interface Stub {
  readonly edge: Edge;
  /** True if the edge starts at the joint. */
  readonly leaves: boolean;
  /** Direction away from the joint, radians. */
  readonly angle: number;
  /** Bend away from that direction: positive to the left, one over the radius. */
  readonly bend: number;
  /** Its other end, and the distance to that. */
  readonly to: Point;
  readonly reach: number;
  /** Number of the passage through the joint: an edge that comes in and the one that goes on. */
  readonly passage: number;
}

/** A joint of loops with all passages through it. */
export interface Joint {
  readonly at: Point;
  readonly passages: number;
  /** Angles of metal between neighbouring edges, radians, 0 to 2 pi; none if the order is faulty. */
  readonly sectors: readonly number[];
  /** What is wrong with the order of the edges round the joint, or null. */
  readonly fault: string | null;
}

/** Directions closer than this may swap by rounding; then it counts where the edges go from there. */
const SAME_DIRECTION = 1e-6;

/** Bends that differ by less, as a share, belong to one circle. */
const SAME_BEND = 1e-9;

/**
 * All joints of loops that have their metal on the left, in the order in which they are met.
 * @param slack length by which joints may have been moved; edges that are no further apart may stand in either order
 */
export function jointsOf(loops: readonly Loop[], slack = 0): Joint[] {
  const stubs = new Map<string, { at: Point; stubs: Stub[] }>();
  let passage = 0;
  for (const loop of loops) {
    for (const [incoming, outgoing] of neighbours(loop)) {
      const key = `${outgoing.a.x},${outgoing.a.y}`;
      const joint = stubs.get(key) ?? { at: outgoing.a, stubs: [] };
      joint.stubs.push(stub(incoming, false, passage), stub(outgoing, true, passage));
      stubs.set(key, joint);
      passage += 1;
    }
  }
  return [...stubs.values()].map((joint) => jointOf(joint.at, joint.stubs, slack));
}

/**
 * Angles of metal at all joints of a part, radians. A joint that the loops pass more than once gives an
 * angle for every sector of metal between neighbouring edges.
 */
export function metalAngles(part: RegionPart): number[] {
  return jointsOf([part.outer, ...part.holes]).flatMap((joint) => joint.sectors);
}

function* neighbours(loop: Loop): Generator<[Edge, Edge]> {
  for (let k = 0; k < loop.length; k += 1) {
    yield [loop[(k + loop.length - 1) % loop.length] as Edge, loop[k] as Edge];
  }
}

function stub(edge: Edge, leaves: boolean, passage: number): Stub {
  const at = leaves ? edge.a : edge.b;
  const to = leaves ? edge.b : edge.a;
  const reach = Math.hypot(to.x - at.x, to.y - at.y);
  if (edge.kind === 'line') {
    return { edge, leaves, angle: Math.atan2(to.y - at.y, to.x - at.x), bend: 0, to, reach, passage };
  }
  const turnsLeft = edge.ccw === leaves;
  const rx = at.x - edge.center.x;
  const ry = at.y - edge.center.y;
  const angle = turnsLeft ? Math.atan2(rx, -ry) : Math.atan2(-rx, ry);
  return { edge, leaves, angle, bend: (turnsLeft ? 1 : -1) / edge.radius, to, reach, passage };
}

function jointOf(at: Point, stubs: readonly Stub[], slack: number): Joint {
  const seen = inOrder(stubs, slack);
  const passages = stubs.length / 2;
  const around = orderFault(seen) === null ? seen : (otherOrder(seen, slack) ?? seen);
  const fault = orderFault(around);
  const sectors = fault === null ? around.flatMap((s, k) => metalAfter(s, around, k, slack)) : [];
  return { at, passages, sectors, fault };
}

/** Counter-clockwise, begun behind the widest gap, so that no tangent edges are torn apart. */
function inOrder(stubs: readonly Stub[], slack: number): Stub[] {
  const angles = stubs.map((s) => s.angle).sort((a, b) => a - b);
  const gaps = angles.map((angle, k) => angle - (angles[k - 1] ?? (angles.at(-1) as number) - 2 * Math.PI));
  const start = angles[gaps.indexOf(Math.max(...gaps))] as number;
  const from = (s: Stub): number => {
    const angle = s.angle - start;
    return angle < 0 ? angle + 2 * Math.PI : angle;
  };
  return [...stubs].sort((s, t) => ahead(s, t, from(s) - from(t), slack));
}

/** So many neighbours next to each other are tried in the other order. */
const MOST_SWAPPED = 8;

/** The same edges without a fault, some neighbours swapped that welding may have swapped; null if there is no such order. */
function otherOrder(around: readonly Stub[], slack: number): Stub[] | null {
  const n = around.length;
  const near = around.flatMap((s, k) => (areNear(s, around[(k + 1) % n] as Stub, slack) ? [k] : []));
  const tried = near.slice(0, MOST_SWAPPED);
  for (let chosen = 1; chosen < 2 ** tried.length; chosen += 1) {
    const order = [...around];
    tried.forEach((k, bit) => {
      if ((chosen & (2 ** bit)) === 0) return;
      [order[k], order[(k + 1) % n]] = [order[(k + 1) % n] as Stub, order[k] as Stub];
    });
    if (orderFault(order) === null) return order;
  }
  return null;
}

/** Whether two stubs are within the slack of each other as far as the shorter one goes. */
function areNear(s: Stub, t: Stub, slack: number): boolean {
  const reach = Math.min(s.reach, t.reach);
  const turn = signedTurn(s.angle, t.angle);
  return [0.25, 0.5, 1].every(
    (share) => Math.abs(turn + ((t.bend - s.bend) * reach * share) / 2) * reach * share <= slack,
  );
}

/**
 * Over 0 if one stub comes after another, counter-clockwise: by the angle between them, or where they are next to tangent by
 * the angle at which they are seen from the joint as far away as the shorter one reaches, or half as far if they meet there.
 */
function ahead(s: Stub, t: Stub, apart: number, slack: number): number {
  const bends = s.bend - t.bend;
  const reach = Math.min(s.reach, t.reach);
  const isSameBend = Math.abs(bends) <= SAME_BEND * Math.max(Math.abs(s.bend), Math.abs(t.bend));
  // They may cross once more near the joint, with next to nothing between them.
  const isShallow = apart * bends < 0 && apart * apart <= 2 * Math.abs(bends) * slack;
  const isTangent = isShallow || Math.abs(apart) <= Math.max(SAME_DIRECTION, (2 * slack) / reach);
  if (!isTangent || isSameBend) return apart;
  return apart + (bends * (samePoint(s.to, t.to) ? reach / 2 : reach)) / 2;
}

/** Metal lies to the left of every edge: going round, an edge that leaves is followed by one that comes in. */
function orderFault(around: readonly Stub[]): string | null {
  const wrong = around.some((s, k) => s.leaves === around[(k + 1) % around.length]?.leaves);
  if (wrong) return 'edges that come in and go out do not take turns';
  return chainsCross(around.map((s) => s.passage)) ? 'two passages cross' : null;
}

/** True if two numbers stand in the order p q p q: then the passages p and q cut through each other. */
function chainsCross(order: readonly number[]): boolean {
  const open: number[] = [];
  for (const passage of order) {
    if (open.at(-1) === passage) open.pop();
    else if (open.includes(passage)) return true;
    else open.push(passage);
  }
  return false;
}

function metalAfter(s: Stub, around: readonly Stub[], k: number, slack: number): number[] {
  if (!s.leaves) return [];
  const next = around[(k + 1) % around.length] as Stub;
  const turn = signedTurn(s.angle, next.angle);
  if (turn > SAME_DIRECTION) return [turn];
  if (turn < -SAME_DIRECTION) return [turn + 2 * Math.PI];
  // Tangent: a cusp of metal or a slit.
  return [ahead(next, s, turn, slack) > 0 ? Math.max(0, turn) : 2 * Math.PI + Math.min(0, turn)];
}

function signedTurn(from: number, to: number): number {
  const turn = (to - from) % (2 * Math.PI);
  if (turn > Math.PI) return turn - 2 * Math.PI;
  return turn <= -Math.PI ? turn + 2 * Math.PI : turn;
}
