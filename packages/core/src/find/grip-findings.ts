import type { KeepOut } from '../datum/keep-out.js';
import type { Laid } from '../datum/setup.js';
import { cutSource } from '../geometry/source.js';
import type { Job } from '../job/job.js';
import { capital } from '../report/words.js';
import type { Body } from '../state/bodies.js';
import { keptBefore } from '../state/kept.js';
import { regionOfCells } from '../state/metal.js';
import type { Result } from '../step/result.js';
import { bears } from './bearing.js';
import type { Clamping, HeightSection } from './clampings.js';
import type { Told } from './told.js';

/** What a setup clamps, and how to see what a thing bears on. */
interface Hold {
  readonly result: Result;
  readonly clamping: Clamping;
  readonly bearsOn: (thing: KeepOut, layers: readonly HeightSection[]) => boolean;
  /** What is joined to the kept piece after so many steps, by the number of the last of them. */
  readonly keptAfter: (step: number) => readonly HeightSection[];
}

/**
 * Jaws and clamps that bear on no metal, on a body that comes loose, or on no metal of the kept piece once the setup's cuts are
 * made; stops and parallels that bear on air.
 */
export function gripFindings(result: Result, clampings: readonly Clamping[]): Told[] {
  const known = new Map<number, readonly HeightSection[]>();
  const keptAfter = (step: number) => {
    const layers = known.get(step) ?? keptLayers(result, step + 1);
    known.set(step, layers);
    return layers;
  };
  return clampings.flatMap((clamping) => {
    const isFlipped = clamping.lay.setup.lie.flip !== null;
    const bearsOn = (thing: KeepOut, layers: readonly HeightSection[]) =>
      layers.some(
        (layer) =>
          atHeight(result.job, thing, layer, isFlipped) &&
          layer.region.length > 0 &&
          bears(thing, layer.region, result.job.resolution),
      );
    const hold: Hold = { result, clamping, bearsOn, keptAfter };
    const grips = clamping.keepOuts.filter(({ kind }) => kind === 'jaw' || kind === 'clamp');
    return [...idleFindings(hold), ...grips.flatMap((grip) => gripFinding(hold, grip, grips))];
  });
}

function keptLayers({ timeline, bodies }: Result, made: number): HeightSection[] {
  return timeline.cells.slabs.map(({ from, to }, s) => ({
    from,
    to,
    region: keptBefore(timeline, bodies, made, s),
  }));
}

function wholeOf({ job }: Result): HeightSection[] {
  return [{ from: 0, to: job.thickness, region: job.outline }];
}

/** Stops and parallels that bear on nothing. */
function idleFindings({ result, clamping, bearsOn, keptAfter }: Hold): Told[] {
  const { lay, keepOuts, steps, where } = clamping;
  const first = steps[0]?.number ?? 0;
  return keepOuts
    .filter((one) => isSupport(result.job, lay, one))
    .flatMap((one): Told[] => {
      if (bearsOn(one, keptAfter(first - 1))) return [];
      const why = bearsOn(one, wholeOf(result))
        ? 'what it was to bear on has been cut away before'
        : 'it lies beside the part, or over or under it';
      const message = `${capital(nameOf(one))} bears on nothing of the part${where}: ${why}. Put it where metal stands.`;
      const about = [`keepOut:${one.id}`, ...(steps.length === 0 ? [] : [`step:${first}`])];
      const code = one.kind === 'parallel' ? 'parallel-bears-on-nothing' : 'stop-bears-on-nothing';
      return [{ code, message, at: null, about }];
    });
}

function gripFinding(hold: Hold, grip: KeepOut, grips: readonly KeepOut[]): Told[] {
  const { result, clamping, bearsOn, keptAfter } = hold;
  const { steps, where } = clamping;
  const name = nameOf(grip);
  const about = [`keepOut:${grip.id}`];
  if (!bearsOn(grip, wholeOf(result))) {
    const message = `${capital(name)} bears on nothing of the part${where}: it lies beside it, or over or under it. Clamp it so that it does, never hold the part by hand.`;
    return [{ code: 'grip-bears-on-nothing', message, at: null, about }];
  }
  const first = steps[0]?.number ?? 0;
  const atEnd = keptAfter(result.steps.length - 1);
  if (!bearsOn(grip, atEnd) && !bearsOn(grip, keptAfter(first - 1))) {
    const message = `${capital(name)} bears on nothing of the part${where}: what it was to bear on has been cut away before. Clamp it where metal stands, never hold the part by hand.`;
    const own = steps.length === 0 ? about : [...about, `step:${first}`];
    return [{ code: 'grip-lost', message, at: null, about: own }];
  }
  const loose = looseUnder(hold, grip, grips);
  if (loose.some(({ code }) => code === 'grip-lost' || code === 'grip-on-loose')) return loose;
  // Metal that a later setup takes may well be what an earlier one is held by.
  if (bearsOn(grip, atEnd) || bearsOn(grip, keptAfter(steps.at(-1)?.number ?? -1))) return loose;
  const last = steps.find(({ number }) => !bearsOn(grip, keptAfter(number)));
  const message = `Once the cuts are made${where}, ${name} no longer holds the kept piece: what it bears on is cut off or cut away. Clamp the part elsewhere before that, never hold it by hand.`;
  const at = last === undefined ? [] : [`step:${last.number}`];
  return [...loose, { code: 'grip-lost', message, at: null, about: [...about, 'piece:kept', ...at] }];
}

/** Bodies that come loose in a setup under a grip: it lets go of the part as they do, or they of it. */
function looseUnder(
  { result, clamping, bearsOn, keptAfter }: Hold,
  grip: KeepOut,
  grips: readonly KeepOut[],
): Told[] {
  const { job, bodies, bodyIds } = result;
  const name = nameOf(grip);
  return bodies.flatMap((body, k): Told[] => {
    const { frees } = body;
    if (frees === null || !clamping.steps.some(({ number }) => number === frees.step)) return [];
    if (!bearsOn(grip, layersOf(result, body, frees))) return [];
    const step = result.steps[frees.step] as Result['steps'][number];
    const { id } = job.cuts[step.approach.cut] as Job['cuts'][number];
    const own = bodyIds[k] as string;
    const after = keptAfter(frees.step);
    const about = [`keepOut:${grip.id}`, `body:${own}`, cutSource(id), `step:${frees.step}`];
    const sets = `Cut ${id} sets ${own} free${clamping.where}`;
    const tell = (code: Told['code'], message: string): Told[] => [{ code, message, at: null, about }];
    if (bearsOn(grip, after)) {
      return tell(
        'grip-on-both',
        `${sets}, and ${name} bears on it as well as on the part: as it gives way the ${grip.kind} tips, and holds neither. Clamp each by itself, never hold it by hand.`,
      );
    }
    const others = grips.filter((other) => other !== grip && bearsOn(other, after));
    if (others.length === 0) {
      return tell(
        'grip-lost',
        `${sets}, and ${name} bears on that only: from then on nothing clamps the part. Clamp the part elsewhere before that, never hold it by hand.`,
      );
    }
    return tell(
      'grip-on-loose',
      `${sets}, and ${name} bears on that only: from then on it keeps ${own} where it is, and the part is clamped by ${others.map(nameOf).join(' and ')} alone. See that this is enough.`,
    );
  });
}

/** A body as it comes loose. */
function layersOf({ timeline }: Result, _: Body, frees: NonNullable<Body['frees']>): HeightSection[] {
  return timeline.cells.slabs.map(({ from, to }, s) => ({
    from,
    to,
    region: regionOfCells(timeline, frees.cells, frees.step + 1, s),
  }));
}

function nameOf({ kind, id }: KeepOut): string {
  return `${kind} ${id}`;
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
function atHeight(job: Job, grip: KeepOut, layer: HeightSection, isFlipped: boolean): boolean {
  const [low, high] = isFlipped
    ? [job.thickness - layer.to, job.thickness - layer.from]
    : [layer.from, layer.to];
  return grip.from <= high && grip.to >= low;
}
