import { MAX_LENGTH } from '../document/limits.js';
import type { CenterDocument, PlacementDocument } from '../document/schema.js';
import type { LineEdge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import { shownNumber } from '../geometry/shown.js';
import type { CenterPlan } from '../job/plan.js';
import { bad, good, pointOf, type Read } from '../job/read-edges.js';
import { plainReason } from '../job/reason.js';
import type { FaceSide } from '../load/bite.js';
import { edgeNamed } from '../placing/named-edge.js';
import { type FromEdge, placeByDistances } from '../placing/place-distances.js';
import { frameOf, placeByDepth, placeByOpening } from '../placing/place-face.js';
import { placeThrough } from '../placing/place-points.js';
import { placeTangent, type TangentPlacement } from '../placing/place-tangent.js';
import type { Region } from '../region/region.js';
import { type Answer, type Answers, chosen } from './read-pick.js';

/** A centre that was read, and the diameter of its circle. */
export interface ReadCenter {
  readonly center: Point;
  readonly diameter: number;
  /** Null where the centre was given as a point. */
  readonly plan: CenterPlan | null;
}

/** What a centre is read for. */
export interface CenterTask {
  readonly outline: Region;
  /** Null where the job leaves it to three points. */
  readonly diameter: number | null;
  readonly resolution: number;
  /** JSON Pointers to the centre and the diameter. */
  readonly path: string;
  readonly diameterPath: string;
}

/** Whether a centre is given as a point. */
export function isPoint(center: CenterDocument): center is readonly [number, number] {
  return Array.isArray(center);
}

/** The centre that a placement comes to, on the part before any cut. */
export function readPlacement(given: PlacementDocument, task: CenterTask): Read<ReadCenter> {
  const read = placed(given, task);
  if (!read.ok) return read;
  const { center, diameter } = read.value;
  const farthest = Math.max(Math.abs(center.x), Math.abs(center.y), diameter);
  if (farthest <= MAX_LENGTH) return read;
  const message = `comes to a circle that goes out to ${shownNumber(farthest)}; coordinates go up to ${MAX_LENGTH}`;
  return bad(task.path, message);
}

function placed(given: PlacementDocument, task: CenterTask): Read<ReadCenter> {
  if ('through' in given) return throughPoints(given, task);
  const { diameter } = task;
  if (diameter === null) {
    return bad(
      task.diameterPath,
      'is missing; only where the centre is given by three points does it follow',
    );
  }
  const answers = answersOf(given, { ...task, diameter });
  if (!answers.ok) return answers;
  const answer = chosen(answers.value, 'depth' in given ? {} : given, task.path, diameter);
  if (!answer.ok) return answer;
  const { center, name } = answer.value;
  const { form, about, all } = answers.value;
  return good({ center, diameter, plan: { form, about, pick: all.length > 1 ? name : null } });
}

type Task = CenterTask & { readonly diameter: number };

function answersOf(given: Exclude<PlacementDocument, { through: unknown }>, task: Task): Read<Answers> {
  if ('depth' in given || 'opening' in given) return onFace(given, task);
  return 'tangent' in given ? tangentTo(given.tangent, task) : byDistances(given.distances, task);
}

function onFace(
  given: Extract<PlacementDocument, { on: unknown }>,
  { outline, diameter, path }: Task,
): Read<Answers> {
  const read = faceOf(outline, given.on, `${path}/on`);
  if (!read.ok) return read;
  const face = read.value;
  const { length } = frameOf(face);
  const along = given.from === 'end' ? length - given.along : given.along;
  if (along < 0 || along > length) {
    const where = `${shownNumber(given.along)} from its ${given.from ?? 'start'}`;
    return bad(
      `${path}/along`,
      `lies beyond ${given.on}, which is ${shownNumber(length)} long: it is ${where}`,
    );
  }
  const common = { face, along, radius: diameter / 2 };
  const about = [given.on];
  try {
    if ('depth' in given) {
      const { center } = placeByDepth({ ...common, depth: given.depth });
      return good({ form: 'depth', about, all: [{ name: 'only', center, isLikely: true }] });
    }
    const { outside, inside } = placeByOpening({ ...common, opening: given.opening });
    const sides = outside.side === 'on the face' ? [outside] : [outside, inside];
    const all = sides.map(({ side, center }): Answer => ({ name: side, center, isLikely: true }));
    return good({ form: 'opening', about, all });
  } catch (error) {
    return bad(`${path}/${'depth' in given ? 'depth' : 'opening'}`, plainReason(error));
  }
}

function faceOf(outline: Region, name: string, path: string): Read<LineEdge> {
  try {
    const edge = edgeNamed('face', outline, name);
    if (edge.kind === 'line') return good(edge);
  } catch (error) {
    return bad(path, plainReason(error));
  }
  return bad(path, `is ${name}, an arc; a face is straight. Give "tangent" or "distances" instead`);
}

function throughPoints(
  { through }: Extract<PlacementDocument, { through: unknown }>,
  { diameter, resolution, path, diameterPath }: CenterTask,
): Read<ReadCenter> {
  const [a, m, b] = through.map(pointOf) as [Point, Point, Point];
  const plan: CenterPlan = { form: 'through', about: [], pick: null };
  try {
    const { center, radius } = placeThrough(a, m, b);
    if (diameter === null || Math.abs(diameter - 2 * radius) <= resolution) {
      return good({ center, diameter: diameter ?? 2 * radius, plan });
    }
    const across = shownNumber(2 * radius);
    const message = `is ${diameter}, but the circle through the three points is ${across} across; leave it out to take that`;
    return bad(diameterPath, message);
  } catch (error) {
    return bad(`${path}/through`, plainReason(error));
  }
}

function tangentTo(names: readonly [string, string], { outline, diameter, path }: Task): Read<Answers> {
  const read = names.map((name, k) => named(outline, name, `${path}/tangent/${k}`));
  const issues = read.flatMap((one) => (one.ok ? [] : one.issues));
  const [first, second] = read.flatMap((one) => (one.ok ? [one.value] : []));
  if (first === undefined || second === undefined) return { ok: false, issues };
  if (names[0] === names[1]) {
    return bad(`${path}/tangent`, `names ${names[0]} twice; a circle is placed by two edges that it touches`);
  }
  try {
    const all = placeTangent(diameter / 2, first, second).map(tangentAnswer);
    return good({ form: 'tangent', about: names, all });
  } catch (error) {
    return bad(`${path}/tangent`, plainReason(error));
  }
}

/** Likely are those that touch both edges as drawn, and not where they would run on beyond their ends. */
function tangentAnswer({ center, touches, hand }: TangentPlacement): Answer {
  const sides = touches.map(({ side }) => side).join(' ');
  const name = hand === null ? sides : `${sides} ${hand}`;
  return { name, center, isLikely: touches.every(({ onEdge }) => onEdge) };
}

function byDistances(
  given: Extract<PlacementDocument, { distances: unknown }>['distances'],
  { outline, diameter, path }: Task,
): Read<Answers> {
  const dimensions = given.map(fromEdge) as [FromEdge, FromEdge];
  const about = dimensions.map(({ edge }) => edge);
  const issues = dimensions.flatMap((dimension, k) => {
    const written = given[k] as (typeof given)[number];
    const key = 'off' in written ? 'from' : dimension.from;
    const read = named(outline, dimension.edge, `${path}/distances/${k}/${key}`);
    if (!read.ok) return read.issues;
    if (dimension.from !== 'along' || read.value.kind === 'line') return [];
    const message = `is ${dimension.edge}, an arc; distances are measured along straight edges only`;
    return [{ path: `${path}/distances/${k}/along`, message }];
  });
  if (issues.length > 0) return { ok: false, issues };
  try {
    const all = placeByDistances(outline, diameter / 2, ...dimensions).map(({ center, hand }): Answer => {
      return { name: hand ?? 'only', center, isLikely: true };
    });
    return good({ form: 'distances', about, all });
  } catch (error) {
    return bad(`${path}/distances`, plainReason(error));
  }
}

function fromEdge(given: Extract<PlacementDocument, { distances: unknown }>['distances'][number]): FromEdge {
  if ('off' in given) {
    const { from: edge, off } = given;
    return { from: 'edge', edge, distance: Math.abs(off), side: off > 0 ? 'outside' : 'inside' };
  }
  const { distance } = given;
  if ('edge' in given) {
    const side: FaceSide = given.side ?? 'inside';
    return { from: 'edge', edge: given.edge, distance, side };
  }
  if ('along' in given) return { from: 'along', edge: given.along, end: given.end, distance };
  return { from: 'corner', edge: given.corner, end: given.end, distance };
}

function named(outline: Region, name: string, path: string) {
  try {
    return good(edgeNamed('edge', outline, name));
  } catch (error) {
    return bad<ReturnType<typeof edgeNamed>>(path, plainReason(error));
  }
}
