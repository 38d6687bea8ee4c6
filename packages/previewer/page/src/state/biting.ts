import type { ReportEdge } from '@edgebite/core';
import { computed, effect, signal } from '@preact/signals';
import { between, dot, leftward, lengthOf, unitOf } from '../move/vector.js';
import type { Place } from '../worker/sketch.js';
import { rested } from './rested.js';
import { job } from './store.js';

/** A straight face of the part's outline that can be bitten into. */
export interface Face {
  readonly source: string;
  readonly edge: Extract<ReportEdge, { kind: 'line' }>;
  readonly length: number;
}

/** Faces of an outline from longer ones on, so many at most: nobody bites into the facets of a curve. */
const MOST_FACES = 64;

const loops = () => rested.value?.outline.flatMap(({ outer, holes }) => [outer, ...holes]) ?? [];

/** Whether there is a straight face at all: told at once, however many there are. */
export const hasFaces = computed(() => loops().some((loop) => loop.some(({ kind }) => kind === 'line')));

/** The straight faces of the part, in the order of its outline; a name that two edges share is of none. */
export const faces = computed<readonly Face[]>(() => {
  const times = new Map<string, number>();
  const all = loops().flatMap((loop) =>
    loop.flatMap((edge): Face[] => {
      if (edge.kind !== 'line' || edge.source === undefined) return [];
      times.set(edge.source, (times.get(edge.source) ?? 0) + 1);
      return [{ source: edge.source, edge, length: lengthOf(between(edge.a, edge.b)) }];
    }),
  );
  const longest = new Set([...all].sort((a, b) => b.length - a.length).slice(0, MOST_FACES));
  return all.filter((face) => longest.has(face) && times.get(face.source) === 1);
});

/** Whether a face can be picked on the drawing now. */
export const biting = signal(false);

/** The face that was picked, and how far along it, in the unit of the job. */
export const bitten = signal<{ readonly source: string; readonly along: number } | null>(null);

/** The bite as it would be put, to be shown on the drawing; null while a number is missing. */
export const biteShown = signal<{ readonly center: Place; readonly radius: number } | null>(null);

effect(() => {
  if (job.value !== null) return;
  biting.value = false;
  bitten.value = null;
  biteShown.value = null;
});

/** The nearest face to a place, and how far along it that lies; null where none is within so far. */
export function faceAt(
  place: Place,
  within: number,
): { readonly source: string; readonly along: number } | null {
  let best: { readonly source: string; readonly along: number } | null = null;
  let least = within;
  for (const { source, edge, length } of faces.value) {
    const along = dot(between(edge.a, place), unitOf(between(edge.a, edge.b)));
    const held = Math.min(length, Math.max(0, along));
    const at = alongEdge(edge, held);
    const off = lengthOf(between(at, place));
    if (off > least) continue;
    least = off;
    best = { source, along: held };
  }
  return best;
}

function alongEdge({ a, b }: Face['edge'], along: number): Place {
  const [x, y] = unitOf(between(a, b));
  return [a[0] + along * x, a[1] + along * y];
}

/** Where the centre of a bite lies: so far along a face, its circle so deep in the metal. */
export function biteCenter({ edge }: Face, along: number, radius: number, depth: number): Place {
  const at = alongEdge(edge, along);
  const [x, y] = leftward(unitOf(between(edge.a, edge.b)));
  return [at[0] + (depth - radius) * x, at[1] + (depth - radius) * y];
}
