import { type ReportEdge, sourceText } from '@edgebite/core';
import { snapped } from '../board/snap.js';
import type { JsonObject } from '../document/json.js';
import type { Place } from '../worker/sketch.js';
import type { Worked } from '../worker/worked.js';
import { bounded, downTo, type Free, type Moves, plainFree, setting, upTo } from './free.js';
import { between, dot, leftward, lengthOf, turned, unitOf } from './vector.js';

/** What is free of a hole in a straight face: where along it, and how deep or how wide its opening is. */
export function faceMoves(
  center: JsonObject,
  diameter: number,
  { edges, center: at, names }: Worked,
): Moves | null {
  // A face may be given by its own name, or by where it lies: it is the one edge then.
  const face =
    edges.find(({ source }) => source === center.on) ?? (edges.length === 1 ? edges[0] : undefined);
  if (face === undefined || at === null || typeof center.along !== 'number') return null;
  const across =
    typeof center.depth === 'number'
      ? depthFree(center.depth, face, diameter)
      : typeof center.opening === 'number'
        ? openingFree(center.opening, face, diameter, at)
        : null;
  return across === null
    ? null
    : { frees: [alongFree(center, center.along, face, names), across], at, why: null };
}

function alongFree(center: JsonObject, value: number, face: ReportEdge, names: Worked['names']): Free {
  const length = lengthOf(between(face.a, face.b));
  const way = unitOf(between(face.a, face.b));
  const [from, grows] = center.from === 'end' ? [face.b, turned(way)] : [face.a, way];
  return plainFree(
    `along ${sourceText(face.source ?? '', names)}`,
    ['center', 'along'],
    value,
    grows,
    (place) => dot(between(from, place), grows),
    (step) => [0, downTo(length, step)],
  );
}

function depthFree(value: number, face: ReportEdge, diameter: number): Free {
  const into = leftward(unitOf(between(face.a, face.b)));
  return plainFree(
    'depth',
    ['center', 'depth'],
    value,
    into,
    (place) => dot(between(face.a, place), into) + diameter / 2,
    (step) => [step, upTo(diameter, step) - step],
  );
}

/**
 * The opening is widest where the centre lies on the face, and narrows to both sides. What is missing to the diameter,
 * under 0 with the centre outside, grows all the way into the metal.
 */
function openingFree(opening: number, face: ReportEdge, diameter: number, at: Place): Free {
  const into = leftward(unitOf(between(face.a, face.b)));
  const off = dot(between(face.a, at), into);
  const radius = diameter / 2;
  return {
    name: 'opening',
    value: Math.sign(off) * (diameter - opening),
    shows: opening,
    grows: into,
    at: (place) => {
      const away = dot(between(face.a, place), into);
      const half = Math.sqrt(Math.max(radius ** 2 - away ** 2, 0));
      return Math.sign(away) * (diameter - 2 * half);
    },
    put: (missing, step) => {
      const width = bounded(snapped(diameter - Math.abs(missing), step), [step, diameter]);
      const side = width === diameter ? undefined : missing > 0 ? 'inside' : 'outside';
      return setting([
        [['center', 'opening'], width],
        [['center', 'near'], undefined],
        [['center', 'pick'], side],
      ]);
    },
  };
}
