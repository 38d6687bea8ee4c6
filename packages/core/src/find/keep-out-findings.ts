import { offset } from '../combine/offset.js';
import { bears, type KeepOut, runsInto } from '../datum/keep-out.js';
import { inUnit } from '../datum/length-unit.js';
import type { Laid } from '../datum/setup.js';
import { cutSource } from '../geometry/source.js';
import type { Job } from '../job/job.js';
import type { Region } from '../region/region.js';
import { keptBefore } from '../state/kept.js';
import { layAsDrawn } from '../step/order.js';
import type { Result } from '../step/result.js';
import type { Step } from '../step/step.js';
import type { Told } from './told.js';
import { capital } from './words.js';

/** Steps of one setup, in order, and their numbers. */
interface Clamping {
  readonly lay: Laid;
  readonly steps: readonly { readonly step: Step; readonly number: number }[];
  readonly keepOuts: readonly KeepOut[];
  /** In words, to go after a comma or a verb: ` in setup a`; empty where there is none. */
  readonly where: string;
}

/** A section of metal between two heights over the bottom of the drawn part. */
interface Layer {
  readonly from: number;
  readonly to: number;
  readonly region: Region;
}

/**
 * Cutters that run into jaws, stops, parallels or clamps, at any place where they stand or go while they are down, and
 * clamps that lose their hold.
 */
export function keepOutFindings(result: Result): Told[] {
  if (result.job.keepOuts.length === 0) return [];
  const clampings = clampingsOf(result);
  return [...clampings.flatMap((one) => hits(result.job, one)), ...gripFindings(result, clampings)];
}

function clampingsOf({ job, set, steps }: Result): Clamping[] {
  const lays = new Map(
    (set.lays.length > 0 ? set.lays : [layAsDrawn(job, 'top')]).map((lay) => [lay.setup.id, lay]),
  );
  const byId = new Map<string, { step: Step; number: number }[]>([...lays.keys()].map((id) => [id, []]));
  steps.forEach((step, number) => {
    const { id } = step.approach.lay.setup;
    lays.set(id, step.approach.lay);
    byId.set(id, [...(byId.get(id) ?? []), { step, number }]);
  });
  const known = new Set(job.setups.map(({ id }) => id));
  return [...byId].map(([id, own]) => ({
    lay: lays.get(id) as Laid,
    steps: own,
    keepOuts: job.keepOuts.filter(({ setup }) => setup === null || setup === id),
    where: known.has(id) ? ` in setup ${id}` : '',
  }));
}

/** Of all steps of a cut, the first that runs into a thing, else the first that may. */
function hits(job: Job, { lay, steps, keepOuts, where }: Clamping): Told[] {
  const off = Math.hypot(...offOf(lay, job));
  const byCut = new Map<number, { step: Step; number: number }[]>();
  for (const one of steps) {
    const known = byCut.get(one.step.approach.cut);
    if (known === undefined) byCut.set(one.step.approach.cut, [one]);
    else known.push(one);
  }
  return [...byCut].flatMap(([cut, own]) =>
    keepOuts.flatMap((keepOut): Told[] => {
      const { id, through } = job.cuts[cut] as Job['cuts'][number];
      const into = (by: number) =>
        own.filter(({ step }) =>
          runsInto(by === 0 ? step.body : offset(step.body, by), step.lowest, through, keepOut),
        );
      const name = `${keepOut.kind} ${keepOut.id}`;
      const remedy = remedyFor(keepOut);
      const aboutOf = (all: typeof own) => [
        cutSource(id),
        `keepOut:${keepOut.id}`,
        ...all.map(({ number }) => `step:${number}`),
      ];
      const hit = into(0);
      if (hit.length > 0) {
        const message =
          keepOut.to <= 0
            ? `Cut ${id} goes through right over ${name}${where}: it cuts into it. Do not start: ${remedy}.`
            : `The cutter of ${passesOf(id, hit)} runs into ${name}${where}: they take up the same place. Do not start: ${remedy}.`;
        return [{ code: `hits-${keepOut.kind}`, message, at: placeOf(hit), about: aboutOf(hit) }];
      }
      const near = off === 0 ? [] : into(off);
      if (near.length === 0) return [];
      const message = `The cutter of ${passesOf(id, near)} clears ${name}${where} by less than it may be off: ${remedy}.`;
      return [{ code: `may-hit-${keepOut.kind}`, message, at: placeOf(near), about: aboutOf(near) }];
    }),
  );
}

function passesOf(id: string, own: Clamping['steps']): string {
  const [first] = own as readonly [Clamping['steps'][number]];
  if (first.step.passes === 1 || own.length === first.step.passes) return id;
  const numbers = own.map(({ step }) => step.pass + 1);
  return `${id}, ${numbers.length === 1 ? `pass ${numbers[0]}` : `passes ${numbers.join(', ')}`},`;
}

function placeOf([first]: Clamping['steps']): [number, number] | null {
  const center = first?.step.center ?? null;
  return center === null ? null : [center.x + 0, center.y + 0];
}

/** What to do about a cutter that is in the way. What grips is not just moved aside: something else has to grip then. */
function remedyFor({ kind }: KeepOut): string {
  const grips = kind === 'jaw' || kind === 'clamp';
  return grips
    ? 'move the cut, or clamp the part elsewhere, never hold it by hand'
    : `move the cut, or take the ${kind} away and set the part up anew`;
}

/** How far the spindle may be off along both axes at worst, in the job's unit; 0 where nothing is set up. */
export function offOf({ setup, part, x, y }: Laid, job: Job): [number, number] {
  if (!job.setups.some(({ id }) => id === setup.id)) return [0, 0];
  const own = setup.readout.resolution;
  return [x.worst + own, y.worst + own].map((length) => inUnit(length, setup.readout.units, part.units)) as [
    number,
    number,
  ];
}

/** Jaws and clamps that bear on no metal, or on no metal of the kept piece once the setup's cuts are made. */
function gripFindings(result: Result, clampings: readonly Clamping[]): Told[] {
  const { job, timeline, bodies } = result;
  const { slabs } = timeline.cells;
  const keptAfter = (step: number): Layer[] =>
    slabs.map(({ from, to }, s) => ({ from, to, region: keptBefore(timeline, bodies, step + 1, s) }));
  const whole: Layer[] = [{ from: 0, to: job.thickness, region: job.outline }];
  const atEnd = keptAfter(result.steps.length);
  return clampings.flatMap(({ lay, keepOuts, steps, where }) => {
    const isFlipped = lay.setup.lie.flip !== null;
    const grips = keepOuts.filter(({ kind }) => kind === 'jaw' || kind === 'clamp');
    const holds = (grip: KeepOut, layers: readonly Layer[]) =>
      layers.some(
        (layer) => atHeight(job, grip, layer, isFlipped) && bears(grip, layer.region, job.resolution),
      );
    let then: readonly Layer[] | null = null;
    let begun: readonly Layer[] | null = null;
    const first = steps[0]?.number ?? 0;
    const supports = keepOuts.filter((one) => isSupport(job, lay, one));
    const idle = supports.flatMap((one): Told[] => {
      begun ??= keptAfter(first - 1);
      if (holds(one, begun)) return [];
      const name = `${one.kind} ${one.id}`;
      const why = holds(one, whole)
        ? 'what it was to bear on has been cut away before'
        : 'it lies beside the part, or over or under it';
      const message = `${capital(name)} bears on nothing of the part${where}: ${why}. Put it where metal stands.`;
      const about = [`keepOut:${one.id}`, ...(steps.length === 0 ? [] : [`step:${first}`])];
      const code = one.kind === 'parallel' ? 'parallel-bears-on-nothing' : 'stop-bears-on-nothing';
      return [{ code, message, at: null, about }];
    });
    const lost = grips.flatMap((grip): Told[] => {
      const name = `${grip.kind} ${grip.id}`;
      const about = [`keepOut:${grip.id}`];
      if (!holds(grip, whole)) {
        const message = `${capital(name)} bears on nothing of the part${where}: it lies beside it, or over or under it. Clamp it so that it does, never hold the part by hand.`;
        return [{ code: 'grip-bears-on-nothing', message, at: null, about }];
      }
      if (holds(grip, atEnd)) return [];
      begun ??= keptAfter(first - 1);
      if (!holds(grip, begun)) {
        const message = `${capital(name)} bears on nothing of the part${where}: what it was to bear on has been cut away before. Clamp it where metal stands, never hold the part by hand.`;
        const own = steps.length === 0 ? about : [...about, `step:${first}`];
        return [{ code: 'grip-lost', message, at: null, about: own }];
      }
      // Metal that a later setup takes may well be what an earlier one is held by.
      then ??= keptAfter(steps.at(-1)?.number ?? -1);
      if (holds(grip, then)) return [];
      const message = `Once the cuts are made${where}, ${name} no longer holds the kept piece: what it bears on is cut off or cut away. Clamp the part elsewhere before that, never hold it by hand.`;
      return [{ code: 'grip-lost', message, at: null, about: [...about, 'piece:kept'] }];
    });
    return [...idle, ...lost];
  });
}

/** Whether the part is to lie on a thing, or bears on it itself, with no block between. Others are only in the way. */
function isSupport(job: Job, { setup }: Laid, { kind, to }: KeepOut): boolean {
  if (kind === 'parallel') return Math.abs(to) <= job.resolution;
  if (kind !== 'stop' || !job.setups.some(({ id }) => id === setup.id)) return false;
  const links = [setup.zero.x, setup.zero.y].flatMap((zero) => zero.links);
  const isBetween = links.some(
    ({ kind: what, of }) => what === 'block' || (what === 'measured' && of === null),
  );
  return links.some(({ kind: what }) => what === 'bears') && !isBetween;
}

/** Whether a grip and a layer touch in height. */
function atHeight(job: Job, grip: KeepOut, layer: Layer, isFlipped: boolean): boolean {
  const [low, high] = isFlipped
    ? [job.thickness - layer.to, job.thickness - layer.from]
    : [layer.from, layer.to];
  return grip.from <= high && grip.to >= low;
}
