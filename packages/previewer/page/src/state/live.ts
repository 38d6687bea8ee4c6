import { type ReportEdge, sourceText } from '@edgebite/core';
import { computed, effect, signal } from '@preact/signals';
import { type Json, valueAt } from '../document/json.js';
import { cutAt, idAt, indexOfCut, isWritten } from '../move/grips.js';
import { type Live, liveOf } from '../move/live.js';
import { moveTo } from '../move/move.js';
import { movesOf } from '../move/moves.js';
import { type Disc, isWithin, type Obstacle } from '../move/obstacles.js';
import { between, lengthOf, unitOf } from '../move/vector.js';
import type { Summary } from '../worker/messages.js';
import type { SketchCut } from '../worker/sketch.js';
import { rested } from './rested.js';
import { chosenCut, issues, job, readoutStep, shown, worked } from './store.js';

/** The edges of the part as it was worked out last, and of which part: moving cuts leaves them as they are. */
const known = signal<{ readonly part: Json | undefined; readonly edges: readonly Obstacle[] } | null>(null);

effect(() => {
  const report = rested.value;
  if (report === null) return;
  const loops = report.outline.flatMap(({ outer, holes }) => [outer, ...holes]);
  known.value = { part: valueAt(job.peek() ?? undefined, ['part']), edges: loops.flat().map(edgeObstacle) };
});

const edgeObstacle = (edge: ReportEdge): Obstacle => ({
  edge,
  at: edge.a,
  reach: 0,
  source: edge.source ?? '',
});

/** With more edges than this to the part, what is nearest is not looked for at every move. */
const MOST_EDGES = 1000;

const edges = computed(() => {
  const one = known.value;
  if (one === null || one.edges.length > MOST_EDGES) return null;
  return one.part === valueAt(job.value ?? undefined, ['part']) ? one.edges : null;
});

/** What the other end of a dimension is called. */
export function endText(source: string): string {
  return sourceText(source, shown.value?.summary.names);
}

interface Placed extends Disc {
  readonly id: string;
  readonly index: number;
}

/** The round cut that is being looked at, where it stands now; null where there is none. */
const placed = computed<Placed | null>(() => {
  if (chosenCut.value === null) return null;
  const index = indexOfCut(job.value, chosenCut.value);
  const cut = cutAt(job.value, index);
  if (cut === null || cut.path !== undefined) return null;
  const id = idAt(cut, index);
  // What is written in it stands before it is worked out.
  const known = isWritten(cut) ? null : (worked.value.get(id) ?? null);
  const moves = movesOf(cut, known);
  const diameter = typeof cut.diameter === 'number' ? cut.diameter : (known?.diameter ?? 0);
  return moves === null || diameter <= 0 ? null : { id, index, at: moves.at, radius: diameter / 2 };
});

const thickness = computed(() => valueAt(job.value ?? undefined, ['part', 'thickness']));

let before: readonly Obstacle[] = [];

/**
 * The cuts beside the one that is being looked at, at heights that it goes through too, as they were worked out last; the
 * same list while they stay where they are.
 */
const others = computed<readonly Obstacle[]>(() => {
  const [chosen, result] = [chosenCut.value, shown.value];
  if (chosen === null || result === null) return [];
  // The cuts of a sketch are those of its summary, in the same order.
  const { cuts } = result.summary;
  const heights = (index: number): Heights => heightsOf(cuts[index], thickness.value);
  const isOwn = ({ id }: SketchCut): boolean => id === chosen || id === `${chosen} 1`;
  const index = result.sketch.cuts.findIndex(isOwn);
  const own = index < 0 ? EVERYWHERE : heights(index);
  const all = result.sketch.cuts
    .filter((other, k) => !isOwn(other) && overlap(own, heights(k)))
    .flatMap(obstaclesOf);
  if (all.length !== before.length || all.some((one, k) => one !== before[k])) before = all;
  return before;
});

/** Whether there is something to be seen, and its cuts are no crowd. */
const isDrawnSingly = computed(() => shown.value !== null && shown.value.sketch.rims === null);

/** The dimensions of the cut that is being looked at, as it stands; null where there are none, and in a crowd. */
export const live = computed<Live | null>(() => {
  const [one, bounds] = [placed.value, edges.value];
  if (one === null || bounds === null || !isDrawnSingly.value) return null;
  // Of a job with faults nothing is known as it stands.
  if (issues.value.length > 0) return null;
  return liveOf(
    one,
    bounds,
    others.value.filter((other) => !isWithin(other, one)),
  );
});

/** Those of cuts that stay as they are. */
const made = new WeakMap<SketchCut, readonly Obstacle[]>();

function obstaclesOf(cut: SketchCut): readonly Obstacle[] {
  const known = made.get(cut) ?? obstaclesAt(cut);
  made.set(cut, known);
  return known;
}

function obstaclesAt({ id, center, diameter, way }: SketchCut): readonly Obstacle[] {
  const source = `cut:${id}`;
  const reach = diameter / 2;
  if (center !== null) return [{ edge: null, at: center, reach, source }];
  return (way ?? []).map((edge) => ({ edge, at: edge.a, reach, source }));
}

type Heights = readonly [number, number];

const EVERYWHERE: Heights = [-Infinity, Infinity];

/** Between which heights a cut takes metal; all of them where the thickness is not known. */
function heightsOf(cut: Summary['cuts'][number] | undefined, thickness: Json | undefined): Heights {
  if (cut === undefined || cut.through || typeof thickness !== 'number') return EVERYWHERE;
  return cut.from === 'bottom' ? [0, cut.depth] : [thickness - cut.depth, thickness];
}

const overlap = (a: Heights, b: Heights): boolean => a[0] < b[1] && b[0] < a[1];

/** Moves the cut that is being looked at so that its web to what is next to it comes to a size, as nearly as steps allow. */
export function setWeb(size: number): void {
  const [one, web] = [placed.value, live.value?.web ?? null];
  if (one === null || web === null) return;
  const way = lengthOf(between(web.to, one.at)) === 0 ? null : unitOf(between(web.to, one.at));
  if (way === null) return;
  const by = size - web.size;
  moveTo({ index: one.index, pass: null }, [one.at[0] + by * way[0], one.at[1] + by * way[1]], readoutStep());
}
