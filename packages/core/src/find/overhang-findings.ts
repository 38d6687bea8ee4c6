import { massOf } from '../cutting/density.js';
import type { KeepOut } from '../datum/keep-out.js';
import { along } from '../datum/lie.js';
import { outermost } from '../datum/outermost.js';
import type { Vector } from '../geometry/point.js';
import { areaBeyond } from '../region/beyond.js';
import { area, centroid } from '../region/measure.js';
import { lengthWords, massWords, volumeWords } from '../report/words.js';
import { keptBefore } from '../state/kept.js';
import type { Result } from '../step/result.js';
import { bears } from './bearing.js';
import type { Clamping, HeightSection } from './clampings.js';
import type { Told } from './told.js';

/** Where a vice holds a part along one axis of the machine: the stretch of its jaws, and what else the part lies on. */
interface Vice {
  readonly axis: Vector;
  readonly low: number;
  readonly high: number;
  /** What lies beyond its lower and its higher end, in words. */
  readonly ways: readonly [string, string];
}

const WAYS = { x: ['to the left', 'to the right'], y: ['towards you', 'away from you'] } as const;

/** More than this share of a part beyond the jaws wants a support; common practice, no source. */
const MUCH = 1 / 3;

/** Metal that stands out beyond the jaws of a vice, when a setup begins and when it is done. */
export function overhangFindings(result: Result, clampings: readonly Clamping[]): Told[] {
  return clampings.flatMap((clamping) => {
    const [first] = clamping.steps;
    const last = clamping.steps.at(-1);
    if (first === undefined || last === undefined) return [];
    const begun = layersBefore(result, first.number);
    const vices = vicesOf(result, clamping, begun);
    const told = vices.flatMap((vice) => beyond(result, clamping, vice, begun, first.number));
    if (told.length > 0) return told;
    const done = layersBefore(result, last.number + 1);
    return vices.flatMap((vice) => beyond(result, clamping, vice, done, last.number));
  });
}

function layersBefore({ timeline, bodies }: Result, step: number): HeightSection[] {
  return timeline.cells.slabs.map(({ from, to }, s) => ({
    from,
    to,
    region: keptBefore(timeline, bodies, step, s),
  }));
}

/** The stretches over which jaws hold: along x where they grip in y, and the other way round. */
function vicesOf({ job }: Result, { lay, keepOuts }: Clamping, layers: readonly HeightSection[]): Vice[] {
  const holds = keepOuts.filter((one) => layers.some(({ region }) => bears(one, region, job.resolution)));
  const others = holds.filter(({ kind }) => kind === 'parallel' || kind === 'clamp');
  return (['x', 'y'] as const).flatMap((name): Vice[] => {
    const across = lay.axes[name === 'x' ? 'y' : 'x'];
    const [front, back] = outermost(job.outline, across);
    const isBeside = ({ region }: KeepOut) => {
      const [low, high] = outermost(region, across);
      return high <= front + job.resolution || low >= back - job.resolution;
    };
    const jaws = holds.filter((one) => one.kind === 'jaw' && isBeside(one));
    if (jaws.length === 0) return [];
    const ends = [...jaws, ...others].flatMap(({ region }) => outermost(region, lay.axes[name]));
    return [{ axis: lay.axes[name], low: Math.min(...ends), high: Math.max(...ends), ways: WAYS[name] }];
  });
}

/** What stands out beyond one end of a vice, if it tips the part or is much of it. */
function beyond(
  result: Result,
  { where }: Clamping,
  vice: Vice,
  layers: readonly HeightSection[],
  step: number,
): Told[] {
  const { job, density } = result;
  const whole = weigh(layers, vice.axis);
  if (whole.volume === 0) return [];
  const size = (volume: number) =>
    density === null
      ? volumeWords(volume, job.units)
      : massWords(massOf(volume, density, job.units), job.units === 'mm' ? 'g' : 'lb');
  return ([0, 1] as const).flatMap((end): Told[] => {
    const sign = end === 0 ? -1 : 1;
    const edge = end === 0 ? vice.low : vice.high;
    const out = volumeBeyond(layers, vice.axis, edge, sign);
    const tips = sign * (whole.middle - edge);
    if (tips <= job.resolution && out <= MUCH * whole.volume) return [];
    const reach = lengthWords(Math.max(0, sign * (outermostOf(layers, vice.axis)[end] - edge)), job.units);
    const stands = `Of the part's ${size(whole.volume)}, ${size(out)} stand out beyond the vice ${vice.ways[end]}${where}, by ${reach}`;
    const about = [`step:${step}`];
    if (tips > job.resolution) {
      const message = `${stands}: its middle of weight lies ${lengthWords(tips, job.units)} beyond the jaws, so that it tips as they let go, and hangs on their grip alone. Put a support under it before you clamp, never hold it by hand.`;
      return [{ code: 'part-tips', message, at: null, about }];
    }
    const message = `${stands}: a cut there pushes it out of the jaws and springs it. Put a support under it.`;
    return [{ code: 'metal-beyond-vice', message, at: null, about }];
  });
}

/** Volume of some layers, and how far its middle lies along an axis. */
function weigh(
  layers: readonly HeightSection[],
  axis: Vector,
): { readonly volume: number; readonly middle: number } {
  let [volume, moment] = [0, 0];
  for (const { from, to, region } of layers) {
    const middle = centroid(region);
    if (middle === null) continue;
    const size = area(region) * (to - from);
    volume += size;
    moment += size * along(middle, axis);
  }
  return { volume, middle: volume === 0 ? 0 : moment / volume };
}

/** Volume of what of some layers lies beyond a place along an axis. */
function volumeBeyond(layers: readonly HeightSection[], axis: Vector, edge: number, sign: 1 | -1): number {
  const out = { dx: sign * axis.dx, dy: sign * axis.dy };
  return layers.reduce(
    (sum, { from, to, region }) => sum + areaBeyond(region, out, sign * edge) * (to - from),
    0,
  );
}

function outermostOf(layers: readonly HeightSection[], axis: Vector): readonly [number, number] {
  const ends = layers.flatMap(({ region }) => (region.length === 0 ? [] : outermost(region, axis)));
  return [Math.min(...ends), Math.max(...ends)];
}
