import type { Interval } from '../datum/reach.js';
import { cutOfSource, cutSource } from '../geometry/source.js';
import type { Job } from '../job/job.js';
import { loopsOf } from '../region/measure.js';
import { knifeMarks, sameKnifeEdges, sameWebs, webMarks } from '../report/marks.js';
import type { ReportFloor, ReportRows, ReportSeam } from '../report/report-schema.js';
import { angleWords, betweenText, lengthWords } from '../report/words.js';
import { edgesNearOf } from '../result/edges-near.js';
import type { SetUp } from '../result/set-up.js';
import type { Result } from '../step/result.js';
import { breakOutGap } from './break-out.js';
import { partsPiece } from './loose-by-web.js';
import { type NearEdge, type NearWeb, nearKnifeEdges, nearWebs } from './near-limits.js';
import type { Told } from './told.js';

/** What the errors of the setups can turn round: a web over the limit or gone, a knife edge, a hole that breaks out. */
export function uncertainFindings(result: Result, report: ReportRows): Told[] {
  const { job, set } = result;
  if (set.lays.length === 0) return [];
  const { resolution } = report;
  return [
    ...webMarks(report).flatMap(({ web, members, slabs }) => [
      ...webFinding(report, web, members),
      ...looseFinding(result, report, web, members, slabs),
    ]),
    ...sameWebs(nearWebs(result), resolution).flatMap(({ first, slabs }) => [
      ...webFinding(report, first, []),
      ...looseFinding(result, report, first, [], slabs),
    ]),
    ...knifeMarks(report).flatMap(({ knifeEdge, members }) => knifeFinding(report, knifeEdge, members)),
    ...sameKnifeEdges(nearKnifeEdges(result), resolution).flatMap(({ first }) =>
      knifeFinding(report, first, []),
    ),
    ...report.floors.flatMap((floor, k) => floorFinding(report, floor, k)),
    ...report.seams.flatMap((seam) => seamFinding(report, seam)),
    ...breakOutFindings(job, set, report),
  ];
}

function webFinding(report: ReportRows, web: NearWeb, numbers: readonly number[]): Told[] {
  const { interval, thickness, between, at } = web;
  const { web: limit } = report.limits;
  if (interval === null) return [];
  const [low, high] = interval.worst;
  const words = (value: number) => lengthWords(value, report.units);
  const drawn = `The web of ${words(thickness)} between ${betweenText(between, report.names)}`;
  const about = [...numbers.map((k) => `web:${k}`), ...between];
  const place: [number, number] = [at[0], at[1]];
  if (low <= 0) {
    const rim = between.filter((source) => cutOfSource(source) === null).length === 1;
    const what = rim ? 'the cut may break out there' : 'the two may run into each other';
    const squares = `by root of squares ${interval.rss[0] > 0 ? `no less than ${words(interval.rss[0])}` : 'nothing may be left as well'}`;
    const message = `${drawn} can come out at ${high > 0 ? `up to ${words(high)}, or not at all` : 'nothing'} at worst, ${squares}: ${what}.`;
    return [{ code: rim ? 'may-break-out' : 'web-may-go', message, at: place, about }];
  }
  const span = `${drawn} ${spanWords(interval, words)}`;
  if (thickness < limit && high >= limit) {
    const message = `${span}: it may as well be over the limit.`;
    return [{ code: 'web-may-be-enough', message, at: place, about }];
  }
  if (thickness < limit || low >= limit) return [];
  const message = `${span}: it may be under the limit of ${words(limit)}.`;
  return [{ code: 'web-may-be-thin', message, at: place, about }];
}

/** A web that holds as drawn, and may come out thinner than holds, with a part of the piece on it that nothing else holds. */
function looseFinding(
  { job, left }: Result,
  report: ReportRows,
  web: NearWeb,
  numbers: readonly number[],
  slabs: readonly number[],
): Told[] {
  const { interval, thickness, between, at } = web;
  const { hold } = job.limits;
  if (interval === null || thickness < hold || interval.worst[0] >= hold) return [];
  if (!partsPiece(left, web, slabs, job.resolution)) return [];
  const words = (value: number) => lengthWords(value, report.units);
  const message = `What hangs by the web of ${words(thickness)} between ${betweenText(between, report.names)} may come loose: it ${spanWords(interval, words)}, and under ${words(hold)} it holds nothing. Clamp both sides of it, never hold them by hand.`;
  const about = [...numbers.map((k) => `web:${k}`), ...between];
  return [{ code: 'piece-may-come-loose', message, at: [at[0], at[1]], about }];
}

function knifeFinding(report: ReportRows, edge: NearEdge, numbers: readonly number[]): Told[] {
  const { interval, angle, between, at } = edge;
  const { knifeEdge: limit } = report.limits;
  if (interval === null) return [];
  const [low, high] = interval.worst;
  const span = `The corner of ${angleWords(angle)} between ${betweenText(between, report.names)} ${spanWords(interval, angleWords)}`;
  const about = [...numbers.map((k) => `knifeEdge:${k}`), ...between];
  const place: [number, number] = [at[0], at[1]];
  if (angle < limit && high >= limit) {
    const message = `${span}: it may as well be over the limit.`;
    return [{ code: 'knife-edge-may-be-enough', message, at: place, about }];
  }
  if (angle < limit || low >= limit) return [];
  const message = `${span}: it may be a knife edge, under ${angleWords(limit)}.`;
  return [{ code: 'knife-edge-may-be', message, at: place, about }];
}

/** How far something can go by root of squares, in a sentence. */
function bySquares(isSo: boolean, words: string): string {
  return isSo ? `${words} by root of squares` : 'not by root of squares';
}

/** Between what a figure can come out, in a sentence. */
function spanWords({ worst, rss }: Interval, words: (value: number) => string): string {
  return `can come out between ${words(worst[0])} and ${words(worst[1])} at worst, ${words(rss[0])} and ${words(rss[1])} by root of squares`;
}

function floorFinding(report: ReportRows, floor: ReportFloor, number: number): Told[] {
  const { interval, thickness, under, holds, at } = floor;
  const { web: limit, hold } = report.limits;
  if (interval === null) return [];
  const words = (value: number) => lengthWords(value, report.units);
  const [low, high] = interval.worst;
  const span = `The floor of ${words(thickness)} under cut ${under} ${spanWords(interval, words)}`;
  const step = report.steps.findLastIndex(({ cut }) => cut === under);
  const about = [`floor:${number}`, cutSource(under), ...(step < 0 ? [] : [`step:${step}`])];
  const tell = (code: Told['code'], what: string): Told[] => [
    { code, message: `${span}: ${what}.`, at: [at[0], at[1]], about },
  ];
  if (holds !== null) {
    if (low >= hold || thickness < hold) return [];
    const how = low <= 0 ? 'the cut may go through, and' : `it may be under ${words(hold)}, and`;
    return tell(
      'slug-may-come-loose',
      `${how} ${holds} may come loose. Clamp it, never hold it by hand, or stop short`,
    );
  }
  if (low <= 0) return tell('floor-may-go', 'the cut may go through. Stop short, or measure the part first');
  if (thickness < limit && high >= limit)
    return tell('floor-may-be-enough', 'it may as well be over the limit');
  if (thickness < limit || low >= limit) return [];
  return tell('floor-may-be-thin', `it may be under the limit of ${words(limit)}`);
}

/** The step that may stay where two halves of a bore meet. */
function seamFinding(report: ReportRows, { cuts: [a, b], center, step }: ReportSeam): Told[] {
  if (step === null || step.worst <= report.resolution) return [];
  const words = (value: number) => lengthWords(value, report.units);
  const message = `Cuts ${a} and ${b} meet from both sides: a step of up to ${words(step.worst)} may stay between them, ${words(step.rss)} by root of squares. Dial in the first before you cut the second, or finish both from one side.`;
  return [{ code: 'seam-step', message, at: [center[0], center[1]], about: [cutSource(a), cutSource(b)] }];
}

/** Cuts that break out, or miss the part, by less than they may be off. */
function breakOutFindings(job: Job, set: SetUp, report: ReportRows): Told[] {
  const edgesNear = edgesNearOf(loopsOf(job.outline).flat());
  return report.cuts.flatMap((cut): Told[] => {
    const { relation, center, source } = cut;
    if (center === null || (relation !== 'breaks out' && relation !== 'clear')) return [];
    const gap = breakOutGap(job, set, edgesNear, cut);
    if (gap === null) return [];
    const { worst, rss } = gap;
    const [low, high] = worst;
    if (!(low < 0 && high > 0)) return [];
    const words = (value: number) => lengthWords(Math.abs(value), report.units);
    const is = relation === 'clear';
    const message = is
      ? `Cut ${cut.id} misses the part as drawn, but can come out ${words(low)} deep in it at worst, ${bySquares(rss[0] < 0, words(rss[0]))}.`
      : `Cut ${cut.id} breaks out as drawn, but can come out ${words(high)} short of that at worst, ${bySquares(rss[1] > 0, words(rss[1]))}.`;
    const code = is ? 'may-touch' : 'may-not-break-out';
    return [{ code, message, at: [center[0], center[1]], about: [source] }];
  });
}
