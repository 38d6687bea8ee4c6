import { union } from '../combine/boolean.js';
import { isThereIn } from '../datum/keep-out.js';
import { inUnit } from '../datum/length-unit.js';
import { outermost } from '../datum/outermost.js';
import { type Laid, readoutAt } from '../datum/setup.js';
import type { ActionDocument } from '../document/schema.js';
import { extentOf } from '../geometry/bounds.js';
import { edgeLength } from '../geometry/measure.js';
import { cutSource } from '../geometry/source.js';
import type { Job } from '../job/job.js';
import { pointOf } from '../job/read-edges.js';
import { contains } from '../region/contains.js';
import { boundsOf, loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { lengthWords } from '../report/words.js';
import { type Face, faceOf } from '../setups/faces.js';
import { keptBefore } from '../state/kept.js';
import type { Result } from '../step/result.js';
import { bears } from './bearing.js';
import { listed } from './setup-findings.js';
import {
  across,
  common,
  type FaceView,
  fits,
  lengthOf,
  placeAt,
  type Stretch,
  standingOn,
  without,
} from './standing-face.js';
import type { Told } from './told.js';

/** A section of what stands when a setup begins, as the part lies: heights over the face that it lies on. */
interface StandingSection {
  readonly top: number;
  readonly region: Region;
}

/** A setup as it is begun. */
interface Begun {
  readonly job: Job;
  readonly result: Result;
  readonly lay: Laid;
  /** Number of its first step. */
  readonly first: number;
  /** From the top down, as the part lies. */
  readonly layers: readonly StandingSection[];
  readonly slack: number;
}

/** Share of the part's extent by which two places of a face may differ. */
const SAME = 1e-7;

/** Zeros that are taken where no metal stands any more, or where a tip has no room: told with the first step that uses them. */
export function zeroFindings(result: Result): Told[] {
  return result.set.lays.flatMap((lay) => {
    const begun = begunOf(result, lay);
    const setup = result.job.plain.setups?.find(({ id }) => id === lay.setup.id);
    if (begun === null || setup === undefined) return [];
    return (['x', 'y'] as const).flatMap((axis) =>
      setup.zero[axis].flatMap((action) => actionFindings(begun, axis, action)),
    );
  });
}

function begunOf(result: Result, lay: Laid): Begun | null {
  const { job, timeline, bodies, steps } = result;
  const first = steps.findIndex(({ approach }) => approach.lay.setup.id === lay.setup.id);
  const box = boundsOf(job.outline);
  if (first < 0 || box === null) return null;
  const isOver = lay.setup.lie.flip !== null;
  const layers = timeline.cells.slabs
    .map(({ from, to }, s) => ({
      top: isOver ? job.thickness - from : to,
      region: keptBefore(timeline, bodies, first, s),
    }))
    .sort((a, b) => b.top - a.top);
  return { job, result, lay, first, layers, slack: SAME * extentOf(box) };
}

function actionFindings(begun: Begun, axis: 'x' | 'y', action: ActionDocument): Told[] {
  if ('dial in' in action) return middleFindings(begun, axis, action['dial in']);
  if ('measured' in action) {
    return [action.from, action.to].flatMap((name) => faceFindings(begun, axis, name, 'measured', null));
  }
  if ('bears' in action) return faceFindings(begun, axis, action.bears, 'bears', null);
  if (!('touch' in action) || begun.lay.setup.stops.some(({ id }) => id === action.touch)) return [];
  const { units } = begun.job;
  const tip = inUnit(action.tip ?? action.tool ?? 0, action.units ?? units, units);
  return faceFindings(begun, axis, action.touch, 'touch', tip);
}

type Use = 'touch' | 'bears' | 'measured';

const USE: Readonly<Record<Use, string>> = {
  touch: 'to touch',
  bears: 'to bear on the stop',
  measured: 'to measure from',
};

function faceFindings(begun: Begun, axis: 'x' | 'y', name: string, use: Use, tip: number | null): Told[] {
  const { job, lay, layers, slack } = begun;
  const { axes } = lay;
  const face = faceOf(name, {
    outline: job.outline,
    names: job.names,
    axis,
    direction: axes[axis],
    across: axes[axis === 'x' ? 'y' : 'x'],
  });
  if (typeof face === 'string') return [];
  const view: FaceView = { face, axes, axis, slack };
  const drawn = standingOn(job.outline, view);
  if (drawn.length === 0) return roundFindings(begun, view, use);
  const stands = layers.map(({ region }) => standingOn(region, view));
  const most = Math.max(0, ...stands.map(lengthOf));
  const where = `In setup ${lay.setup.id}, ${axis.toUpperCase()} is taken from ${faceWords(face)}`;
  const cutters = takers(begun, view);
  const by = takenWords(cutters);
  if (most <= slack) {
    const message = `${where}, but ${by} taken that face away before: nothing stands there ${USE[use]}. Take the zero from a face that stands.`;
    return [finding(begun, 'face-cut-away', message, cutters)];
  }
  if (tip !== null && !hasRoom(begun, view, tip / 2, stands)) {
    const message = `${where} with a tip of ${lengthWords(tip, job.units)}, but nowhere along it is room for that: it would stand in metal, or in what holds the part. Touch with a smaller tip, or another face.`;
    return [finding(begun, 'tip-in-metal', message)];
  }
  const whole = stands.reduce<readonly Stretch[]>((all, one) => common(all, one), drawn);
  if (lengthOf(whole) >= lengthOf(drawn) - slack) return [];
  if (use === 'bears' && stopBears(begun)) return [];
  const left = whole.map((stretch) => spanWords(begun, view, stretch)).join(', and ');
  const rest =
    whole.length === 0
      ? 'nowhere does it stand over the whole thickness'
      : `over the whole thickness it stands ${left}`;
  const message = `${where}, of which ${by} taken a part before: ${rest}. See that there is metal where you use it ${USE[use]}.`;
  return [finding(begun, 'face-bitten', message, cutters)];
}

/** A side that is no flat face: a tip or a stop finds it in one place only, if it stands there. */
function roundFindings(begun: Begun, view: FaceView, use: Use): Told[] {
  const { lay, layers, slack, job } = begun;
  const { face, axis, axes } = view;
  const where = `In setup ${lay.setup.id}, ${axis.toUpperCase()} is taken from ${faceWords(face)}`;
  const isThere = layers.some(({ region }) => {
    if (region.length === 0) return false;
    const ends = outermost(region, axes[axis]);
    return Math.abs(ends[face.outward < 0 ? 0 : 1] - face.at) <= slack;
  });
  if (!isThere) {
    const message = `${where}, but the metal there has been taken away before: nothing stands there ${USE[use]}. Take the zero from a face that stands.`;
    return [finding(begun, 'face-cut-away', message)];
  }
  const there = loopsOf(job.outline)
    .flat()
    .flatMap((edge) => (edge.kind === 'arc' ? [edge.a, edge.b, edge.center] : [edge.a, edge.b]))
    .map((p) => ({ p, off: Math.abs(p.x * axes[axis].dx + p.y * axes[axis].dy - face.at) }))
    .sort((a, b) => a.off - b.off)[0];
  const place = there === undefined ? '' : `, ${acrossWords(begun, view, across(there.p, view))}`;
  const message = `${where}, which is no flat face as the part lies: a corner or a round. ${use === 'bears' ? 'A stop' : 'A tip'} finds it in one place only${place}.`;
  return [finding(begun, 'face-not-flat', message)];
}

function hasRoom(begun: Begun, view: FaceView, radius: number, stands: readonly Stretch[][]): boolean {
  const { layers, job, lay } = begun;
  return stands.some((stretches, k) => {
    if (stretches.length === 0) return false;
    const { top } = layers[k] as StandingSection;
    const held = job.keepOuts
      .filter((one) => isThereIn(one, lay.setup.id) && one.to >= top)
      .map(({ region }) => region);
    // The tip comes from above, past all that stands higher.
    const obstacles = union([...layers.slice(0, k + 1).map(({ region }) => region), ...held]);
    return stretches.some((stretch) => fits(radius, stretch, view, obstacles));
  });
}

/** A middle to dial in needs its whole wall, a mark needs metal. */
function middleFindings(begun: Begun, axis: 'x' | 'y', what: string | readonly [number, number]): Told[] {
  const { job, layers, lay, slack } = begun;
  const where = `In setup ${lay.setup.id}, ${axis.toUpperCase()} is taken from`;
  const [top] = layers;
  if (typeof what !== 'string') {
    if (top === undefined || contains(top.region, pointOf(what)) !== 'outside') return [];
    const message = `${where} the mark at (${what.join(', ')}), but no metal stands there at the top.`;
    return [finding(begun, 'face-cut-away', message)];
  }
  const of = job.names.find(({ name }) => name === what)?.of ?? what;
  const wall = (region: Region) =>
    loopsOf(region)
      .flat()
      .filter(({ source }) => source?.startsWith(`${of}:`) === true)
      .reduce((sum, edge) => sum + edgeLength(edge), 0);
  const [drawn, stands] = [wall(job.outline), Math.max(0, ...layers.map(({ region }) => wall(region)))];
  if (stands >= drawn - slack) return [];
  const isGone = stands <= slack;
  const message = isGone
    ? `${where} the middle of ${what}, but its wall has been cut away before: there is nothing to dial in. Take the zero from a face that stands.`
    : `${where} the middle of ${what}, but a part of its wall has been cut away before: dial in what stands.`;
  return [finding(begun, isGone ? 'face-cut-away' : 'face-bitten', message)];
}

/** Whether something that is drawn as a stop bears on what stands. */
function stopBears({ job, lay, layers }: Begun): boolean {
  return job.keepOuts.some(
    (one) =>
      one.kind === 'stop' &&
      isThereIn(one, lay.setup.id) &&
      layers.some(({ region }) => bears(one, region, job.resolution)),
  );
}

/** Ids of the cuts that bit a face before: those whose tool was where it no longer stands. */
function takers({ result, layers, first, job }: Begun, view: FaceView): string[] {
  const drawn = standingOn(job.outline, view);
  const missing = layers.flatMap(({ region }) => without(drawn, standingOn(region, view), view.slack));
  const places = missing.flatMap(([from, to]) =>
    Array.from({ length: PLACES }, (_, k) =>
      placeAt(view.face.at, from + ((to - from) * (k + 0.5)) / PLACES, view),
    ),
  );
  const steps = result.steps.slice(0, first);
  const took = steps.filter(({ body }) => places.some((p) => contains(body, p) !== 'outside'));
  const numbers = [...new Set(took.map(({ approach }) => approach.cut))];
  return numbers.map((number) => (job.cuts[number] as Job['cuts'][number]).id);
}

/** So many places of a stretch are asked who has taken it. */
const PLACES = 9;

/** Who has taken something, with the verb: `cut a has`, `cuts a and b have`. */
function takenWords(ids: readonly string[]): string {
  return ids.length === 0 ? 'what was cut has' : `${listed(ids)} ${ids.length === 1 ? 'has' : 'have'}`;
}

function spanWords(begun: Begun, view: FaceView, [from, to]: Stretch): string {
  return `${acrossWords(begun, view, from).replace('at ', 'from ')} to ${shownAcross(begun, view, to)}`;
}

function acrossWords(begun: Begun, view: FaceView, at: number): string {
  return `at ${view.axis === 'x' ? 'Y' : 'X'} ${shownAcross(begun, view, at)}`;
}

/** What the readout shows at a place across the axis. */
function shownAcross({ lay }: Begun, view: FaceView, at: number): string {
  const shown = readoutAt(lay, placeAt(view.face.at, at, view))[view.axis === 'x' ? 1 : 0];
  return (shown + 0).toFixed(lay.setup.readout.units === 'mm' ? 3 : 4);
}

function faceWords({ words }: Face): string {
  return words === 'left' || words === 'right'
    ? `the ${words} end`
    : words === 'front' || words === 'back'
      ? `the ${words}`
      : words;
}

function finding(
  { lay, first }: Begun,
  code: Told['code'],
  message: string,
  cutters: readonly string[] = [],
): Told {
  const cuts = cutters.map(cutSource);
  return { code, message, at: null, about: [`setup:${lay.setup.id}`, ...cuts, `step:${first}`] };
}
