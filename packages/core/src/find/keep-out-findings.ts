import type { Cut } from '../cut/cut.js';
import { bears, bodyOf, type KeepOut, lowestOf, runsInto } from '../datum/keep-out.js';
import { inUnit } from '../datum/length-unit.js';
import type { Laid } from '../datum/setup.js';
import type { Job } from '../job/job.js';
import { cellsOf } from '../left/cells.js';
import { piecesOf } from '../left/pieces.js';
import type { Region } from '../region/region.js';
import { regionOf } from '../report/report-region.js';
import type { Finding, ReportRows } from '../report/report-schema.js';
import { removalOf } from '../result/removal.js';
import type { SetUp } from '../result/set-up.js';
import { capital } from './words.js';

/** A setup, or the part as drawn where the job has none. */
interface Clamping {
  readonly lay: Laid | null;
  readonly cuts: readonly Cut[];
  readonly isFlipped: boolean;
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

/** Cutters that run into jaws, stops, parallels or clamps, and clamps that lose their hold. */
export function keepOutFindings(job: Job, { lays }: SetUp, report: ReportRows): Finding[] {
  if (job.keepOuts.length === 0) return [];
  const clampings = clampingsOf(job, lays);
  const all = [...clampings, ...unset(job, clampings)];
  return [...all.flatMap((one) => hits(job, one)), ...gripFindings(job, clampings, report)];
}

function clampingsOf(job: Job, lays: readonly Laid[]): Clamping[] {
  if (lays.length === 0) {
    return [{ lay: null, cuts: job.cuts, isFlipped: false, keepOuts: job.keepOuts, where: '' }];
  }
  return lays.map((lay) => {
    const { id, lie, cuts } = lay.setup;
    const own = new Set(cuts);
    return {
      lay,
      cuts: job.cuts.filter((cut) => own.has(cut.id)),
      isFlipped: lie.flip !== null,
      keepOuts: job.keepOuts.filter(({ setup }) => setup === null || setup === id),
      where: ` in setup ${id}`,
    };
  });
}

/** Cuts that are in no setup can still run into what is in the way in all of them. */
function unset(job: Job, clampings: readonly Clamping[]): Clamping[] {
  const made = new Set(clampings.flatMap(({ cuts }) => cuts));
  const cuts = job.cuts.filter((cut) => !made.has(cut));
  if (cuts.length === 0) return [];
  const keepOuts = job.keepOuts.filter(({ setup }) => setup === null);
  return [{ lay: null, cuts, isFlipped: false, keepOuts, where: '' }];
}

function hits(job: Job, { lay, cuts, keepOuts, where }: Clamping): Finding[] {
  return cuts.flatMap((cut) => {
    const lowest = lowestOf(cut, job.thickness);
    const off = lay === null ? 0 : Math.hypot(...offOf(lay));
    const [body, wide] = [bodyOf(cut), bodyOf(cut, off)];
    return keepOuts.flatMap((keepOut): Finding[] => {
      const about = [`cut:${cut.id}`, `keepOut:${keepOut.id}`];
      const at: [number, number] | null = cut.kind === 'swept' ? null : [cut.center.x + 0, cut.center.y + 0];
      const name = `${keepOut.kind} ${keepOut.id}`;
      const remedy = remedyFor(keepOut);
      if (runsInto(body, lowest, cut.through, keepOut)) {
        const message =
          keepOut.to <= 0
            ? `Cut ${cut.id} goes through right over ${name}${where}: it cuts into it. Do not start: ${remedy}.`
            : `The cutter of ${cut.id} runs into ${name}${where}: they take up the same place. Do not start: ${remedy}.`;
        return [{ level: 'danger', code: `hits-${keepOut.kind}`, message, at, about }];
      }
      if (off === 0 || !runsInto(wide, lowest, cut.through, keepOut)) return [];
      const message = `The cutter of ${cut.id} clears ${name}${where} by less than it may be off: ${remedy}.`;
      return [{ level: 'check', code: `may-hit-${keepOut.kind}`, message, at, about }];
    });
  });
}

/** What to do about a cutter that is in the way. What grips is not just moved aside: something else has to grip then. */
function remedyFor({ kind }: KeepOut): string {
  const grips = kind === 'jaw' || kind === 'clamp';
  return grips
    ? 'move the cut, or clamp the part elsewhere, never hold it by hand'
    : `move the cut, or take the ${kind} away and set the part up anew`;
}

/** How far the spindle may be off along both axes at worst, in the job's unit. */
function offOf({ setup, part, x, y }: Laid): [number, number] {
  const own = setup.readout.resolution;
  return [x.worst + own, y.worst + own].map((length) => inUnit(length, setup.readout.units, part.units)) as [
    number,
    number,
  ];
}

/** Jaws and clamps that bear on no metal, or on no metal of the kept piece once the setup's cuts are made. */
function gripFindings(job: Job, clampings: readonly Clamping[], report: ReportRows): Finding[] {
  const slack = job.resolution;
  const whole: Layer[] = [{ from: 0, to: job.thickness, region: job.outline }];
  const atEnd: Layer[] =
    report.pieces
      .find(({ role }) => role === 'kept')
      ?.sections.map(({ from, to, region }) => ({ from, to, region: regionOf(region) })) ?? [];
  return clampings.flatMap(({ keepOuts, isFlipped, where }, k) => {
    const grips = keepOuts.filter(({ kind }) => kind === 'jaw' || kind === 'clamp');
    const holds = (grip: KeepOut, layers: readonly Layer[]) =>
      layers.some((layer) => atHeight(job, grip, layer, isFlipped) && bears(grip, layer.region, slack));
    let then: readonly Layer[] | null = null;
    return grips.flatMap((grip): Finding[] => {
      const name = `${grip.kind} ${grip.id}`;
      const about = [`keepOut:${grip.id}`];
      if (!holds(grip, whole)) {
        const message = `${capital(name)} bears on nothing of the part${where}: it lies beside it, or over or under it. Clamp it so that it does, never hold the part by hand.`;
        return [{ level: 'check', code: 'grip-bears-on-nothing', message, at: null, about }];
      }
      if (holds(grip, atEnd)) return [];
      // Metal that a later setup takes may well be what an earlier one is held by.
      then ??= k === clampings.length - 1 ? atEnd : keptAfter(job, clampings.slice(0, k + 1));
      if (holds(grip, then)) return [];
      const message = `Once the cuts are made${where}, ${name} no longer holds the kept piece: what it bears on is cut off or cut away. Clamp the part elsewhere before that, never hold it by hand.`;
      return [{ level: 'danger', code: 'grip-lost', message, at: null, about: [...about, 'piece:kept'] }];
    });
  });
}

/** Whether a grip and a layer touch in height. */
function atHeight(job: Job, grip: KeepOut, layer: Layer, isFlipped: boolean): boolean {
  const [low, high] = isFlipped
    ? [job.thickness - layer.to, job.thickness - layer.from]
    : [layer.from, layer.to];
  return grip.from <= high && grip.to >= low;
}

/** The kept piece once the cuts of some setups are made. */
function keptAfter(job: Job, clampings: readonly Clamping[]): Layer[] {
  const made = new Set(clampings.flatMap(({ cuts }) => cuts.map(({ id }) => id)));
  const removals = job.cuts.filter(({ id }) => made.has(id)).map((cut) => removalOf(cut, job.thickness));
  const { pieces } = piecesOf(cellsOf(job.outline, job.thickness, removals), job.keep);
  return pieces.find(({ role }) => role === 'kept')?.sections.map((section) => ({ ...section })) ?? [];
}
