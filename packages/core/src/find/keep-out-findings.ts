import { mostGrowth } from '../datum/growth.js';
import { isInReach, type KeepOut, runsInto } from '../datum/keep-out.js';
import { inUnit } from '../datum/length-unit.js';
import type { Laid } from '../datum/setup.js';
import { turnCauses, turnSlack } from '../datum/turn.js';
import { cutSource } from '../geometry/source.js';
import type { Job } from '../job/job.js';
import { boundsOf } from '../region/measure.js';
import { cutSizes } from '../result/cut-sizes.js';
import type { Result } from '../step/result.js';
import type { Step } from '../step/step.js';
import { comesWithin } from './bearing.js';
import { type Clamping, clampingsOf } from './clampings.js';
import { gripFindings } from './grip-findings.js';
import { overhangFindings } from './overhang-findings.js';
import type { Told } from './told.js';

/**
 * Cutters that run into jaws, stops, parallels or clamps, at any place where they stand or go while they are down, and
 * clamps that lose their hold.
 */
export function keepOutFindings(result: Result): Told[] {
  if (result.job.keepOuts.length === 0) return [];
  const clampings = clampingsOf(result);
  return [
    ...clampings.flatMap((one) => hits(result.job, one)),
    ...gripFindings(result, clampings),
    ...overhangFindings(result, clampings),
  ];
}

/** Of all steps of a cut, the first that runs into a thing, else the first that may. */
function hits(job: Job, { lay, steps, keepOuts, where }: Clamping): Told[] {
  const sizes = cutSizes(job);
  const byCut = new Map<number, { step: Step; number: number }[]>();
  for (const one of steps) {
    const known = byCut.get(one.step.approach.cut);
    if (known === undefined) byCut.set(one.step.approach.cut, [one]);
    else known.push(one);
  }
  return [...byCut].flatMap(([cut, own]) =>
    keepOuts.flatMap((keepOut): Told[] => {
      const { id, through } = job.cuts[cut] as Job['cuts'][number];
      const off = offOf(lay, job) + mostGrowth(sizes(id, lay.setup.id));
      const into = (by: number) =>
        own.filter(({ step }) =>
          by === 0
            ? runsInto(step.body, step.lowest, through, keepOut)
            : isInReach(step.lowest, through, keepOut) && comesWithin(step.body, keepOut.region, by),
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
        return [{ code: `hits-${keepOut.kind}`, message, at: centerOfFirst(hit), about: aboutOf(hit) }];
      }
      const near = off === 0 ? [] : into(off);
      if (near.length === 0) return [];
      const message = `The cutter of ${passesOf(id, near)} clears ${name}${where} by less than it may be off: ${remedy}.`;
      return [{ code: `may-hit-${keepOut.kind}`, message, at: centerOfFirst(near), about: aboutOf(near) }];
    }),
  );
}

function passesOf(id: string, own: Clamping['steps']): string {
  const [first] = own as readonly [Clamping['steps'][number]];
  if (first.step.passes === 1 || own.length === first.step.passes) return id;
  const numbers = own.map(({ step }) => step.pass + 1);
  return `${id}, ${numbers.length === 1 ? `pass ${numbers[0]}` : `passes ${numbers.join(', ')}`},`;
}

function centerOfFirst([first]: Clamping['steps']): [number, number] | null {
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

/**
 * How far a tool may be off at worst in any direction over the part, in the job's unit: what the zeros and the readout leave
 * along both axes, and what a lay that may be turned does at the corner that is furthest from where it is touched. 0 where
 * nothing is set up.
 */
export function offOf({ setup, part, axes, x, y }: Laid, job: Job): number {
  if (!job.setups.some(({ id }) => id === setup.id)) return 0;
  const own = setup.readout.resolution;
  const zero = Math.hypot(x.worst + own, y.worst + own);
  const box = boundsOf(job.outline);
  const lay = { setup, part, axes, x, y, z: null };
  const corners =
    box === null
      ? []
      : [box.minX, box.maxX].flatMap((px) => [box.minY, box.maxY].map((py) => ({ x: px, y: py })));
  const turned = corners.map((corner) =>
    turnCauses(lay, corner).reduce((sum, { by }) => sum + Math.hypot(by.dx, by.dy), turnSlack(lay, corner)),
  );
  return inUnit(zero, setup.readout.units, part.units) + Math.max(0, ...turned);
}
