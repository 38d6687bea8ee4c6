import { described } from '../document/described.js';
import type { RepeatDocument } from '../document/schema.js';
import type { Point } from '../geometry/point.js';
import { samePoint } from '../geometry/point.js';
import type { PartName } from '../job/job.js';
import { bad, good, pointOf, type Read } from '../job/read-edges.js';
import { plainReason } from '../job/reason.js';
import { edgeNamed } from '../placing/named-edge.js';
import { boundsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import type { Motion } from './motion.js';
import { onPaper } from './on-paper.js';

/** The part as drawn, with the names of its edges. */
export interface NamedPart {
  readonly outline: Region;
  readonly names: readonly PartName[];
}

/**
 * How the copies of a repeat lie against what is written, without the written one itself.
 * @param path JSON Pointer to the repeat
 */
export function motionsOf(repeat: RepeatDocument, path: string, part: NamedPart): Read<readonly Motion[]> {
  if ('row' in repeat) return rowMotions(repeat.row, `${path}/row`, part);
  if ('round' in repeat) return roundMotions(repeat.round, `${path}/round`);
  const read = mirrorMotion(repeat.mirror, `${path}/mirror`, part);
  return read.ok ? good([read.value]) : read;
}

/** How many there are of each cut of a repeat in all. */
export function countOf(repeat: RepeatDocument): number {
  if ('row' in repeat) return repeat.row.count;
  return 'round' in repeat ? repeat.round.count : 2;
}

function rowMotions(
  row: Extract<RepeatDocument, { row: unknown }>['row'],
  path: string,
  part: NamedPart,
): Read<readonly Motion[]> {
  const read = 'along' in row ? stepAlong(row, path, part) : good(pointOf(row.step));
  if (!read.ok) return read;
  const step = read.value;
  if (step.x === 0 && step.y === 0) {
    return bad(`${path}/${'along' in row ? 'pitch' : 'step'}`, 'is 0, so that all copies lie in one place');
  }
  return good(others(row.count).map((times) => ({ kind: 'shift', step, times })));
}

/** Which way the sides of a part run that is gone round counter-clockwise. */
const RUNS = {
  front: { x: 1, y: 0 },
  right: { x: 0, y: 1 },
  back: { x: -1, y: 0 },
  left: { x: 0, y: -1 },
} as const;

function stepAlong(
  { along, pitch }: { readonly along: string; readonly pitch: number },
  path: string,
  { outline, names }: NamedPart,
): Read<Point> {
  const stepIn = ({ x, y }: Point): Read<Point> => good({ x: x * pitch + 0, y: y * pitch + 0 });
  const source = names.find(({ name }) => name === along)?.of ?? along;
  if (source === along && Object.hasOwn(RUNS, along)) return stepIn(RUNS[along as keyof typeof RUNS]);
  try {
    const edge = edgeNamed('edge', outline, source);
    if (edge.kind === 'arc') {
      const message = `is ${described(along)}, which is round; a row runs along a straight edge. Give "round" instead`;
      return bad(`${path}/along`, message);
    }
    const length = Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y);
    return stepIn({ x: (edge.b.x - edge.a.x) / length, y: (edge.b.y - edge.a.y) / length });
  } catch (error) {
    return bad(`${path}/along`, `is ${described(along)}, but ${plainReason(error)}`);
  }
}

function roundMotions(
  { center, turn, count }: Extract<RepeatDocument, { round: unknown }>['round'],
  path: string,
): Read<readonly Motion[]> {
  if (turn === 0) return bad(`${path}/turn`, 'is 0, so that all copies lie in one place');
  const about = pointOf(center);
  return good(
    others(count).map((times) => {
      const degrees = turn === undefined ? (360 * times) / count : onPaper([times, turn]);
      return { kind: 'turn', center: about, degrees };
    }),
  );
}

function mirrorMotion(
  mirror: Extract<RepeatDocument, { mirror: unknown }>['mirror'],
  path: string,
  { outline }: NamedPart,
): Read<Motion> {
  if ('x' in mirror) return good({ kind: 'mirror', axis: 'x', twice: onPaper([2, mirror.x]) });
  if ('y' in mirror) return good({ kind: 'mirror', axis: 'y', twice: onPaper([2, mirror.y]) });
  if ('middle' in mirror) return good(mirrorInMiddle(outline, mirror.middle));
  const [a, b] = mirror.through.map(pointOf) as [Point, Point];
  if (samePoint(a, b)) return bad(`${path}/through`, 'has one place twice; a line needs two');
  if (a.x === b.x) return good({ kind: 'mirror', axis: 'x', twice: onPaper([2, a.x]) });
  if (a.y === b.y) return good({ kind: 'mirror', axis: 'y', twice: onPaper([2, a.y]) });
  return good({ kind: 'mirror in line', through: [a, b] });
}

/** A mirror about the middle of a part, between its outermost places along an axis of the drawing. */
export function mirrorInMiddle(outline: Region, axis: 'x' | 'y'): Motion {
  const box = boundsOf(outline) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  const [least, most] = axis === 'x' ? [box.minX, box.maxX] : [box.minY, box.maxY];
  return { kind: 'mirror', axis, twice: onPaper([1, least], [1, most]) };
}

function others(count: number): number[] {
  return Array.from({ length: count - 1 }, (_, k) => k + 1);
}
