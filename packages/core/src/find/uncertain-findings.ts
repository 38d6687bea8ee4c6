import { cutOfSource } from '../geometry/source.js';
import type { Job } from '../job/job.js';
import { loopsOf } from '../region/measure.js';
import { knifeMarks, sameKnifeEdges, sameWebs, webMarks } from '../report/marks.js';
import type { ReportRows } from '../report/report-schema.js';
import { edgesNearOf } from '../result/edges-near.js';
import type { SetUp } from '../result/set-up.js';
import type { Result } from '../step/result.js';
import { breakOutGap } from './break-out.js';
import { type NearEdge, type NearWeb, nearKnifeEdges, nearWebs } from './near-limits.js';
import type { Told } from './told.js';
import { angleWords, lengthWords, sourceWords } from './words.js';

/** What the errors of the setups can turn round: a web over the limit or gone, a knife edge, a hole that breaks out. */
export function uncertainFindings(result: Result, report: ReportRows): Told[] {
  const { job, set } = result;
  if (set.lays.length === 0) return [];
  const { resolution } = report;
  return [
    ...webMarks(report).flatMap(({ web, members }) => webFinding(report, web, members)),
    ...sameWebs(nearWebs(result), resolution).flatMap(({ first }) => webFinding(report, first, [])),
    ...knifeMarks(report).flatMap(({ knifeEdge, members }) => knifeFinding(report, knifeEdge, members)),
    ...sameKnifeEdges(nearKnifeEdges(result), resolution).flatMap(({ first }) =>
      knifeFinding(report, first, []),
    ),
    ...breakOutFindings(job, set, report),
  ];
}

function webFinding(report: ReportRows, web: NearWeb, numbers: readonly number[]): Told[] {
  const { interval, thickness, between, at } = web;
  const { web: limit } = report.limits;
  if (interval === null) return [];
  const [low, high] = interval.worst;
  const words = (value: number) => lengthWords(value, report.units);
  const drawn = `The web of ${words(thickness)} between ${sourceWords(between, report.names)}`;
  const about = [...numbers.map((k) => `web:${k}`), ...between];
  const place: [number, number] = [at[0], at[1]];
  if (low <= 0) {
    const rim = between.filter((source) => cutOfSource(source) === null).length === 1;
    const what = rim ? 'the cut may break out there' : 'the two may run into each other';
    const message = `${drawn} can come out at ${high > 0 ? `up to ${words(high)}, or not at all` : 'nothing'}: ${what}.`;
    return [{ code: rim ? 'may-break-out' : 'web-may-go', message, at: place, about }];
  }
  const span = `${drawn} can come out between ${words(low)} and ${words(high)}`;
  if (thickness < limit && high >= limit) {
    const message = `${span}: it may as well be over the limit.`;
    return [{ code: 'web-may-be-enough', message, at: place, about }];
  }
  if (thickness < limit || low >= limit) return [];
  const message = `${span}: it may be under the limit of ${words(limit)}.`;
  return [{ code: 'web-may-be-thin', message, at: place, about }];
}

function knifeFinding(report: ReportRows, edge: NearEdge, numbers: readonly number[]): Told[] {
  const { interval, angle, between, at } = edge;
  const { knifeEdge: limit } = report.limits;
  if (interval === null) return [];
  const [low, high] = interval.worst;
  const span = `The corner of ${angleWords(angle)} between ${sourceWords(between, report.names)} can come out between ${angleWords(low)} and ${angleWords(high)}`;
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

/** Cuts that break out, or miss the part, by less than they may be off. */
function breakOutFindings(job: Job, set: SetUp, report: ReportRows): Told[] {
  const edgesNear = edgesNearOf(loopsOf(job.outline).flat());
  return report.cuts.flatMap((cut): Told[] => {
    const { relation, center, source } = cut;
    if (center === null || (relation !== 'breaks out' && relation !== 'clear')) return [];
    const gap = breakOutGap(job, set, edgesNear, cut);
    if (gap === null) return [];
    const [low, high] = gap;
    if (!(low < 0 && high > 0)) return [];
    const words = (value: number) => lengthWords(Math.abs(value), report.units);
    const is = relation === 'clear';
    const message = is
      ? `Cut ${cut.id} misses the part as drawn, but can come out ${words(low)} deep in it.`
      : `Cut ${cut.id} breaks out as drawn, but can come out ${words(high)} short of that.`;
    const code = is ? 'may-touch' : 'may-not-break-out';
    return [{ code, message, at: [center[0], center[1]], about: [source] }];
  });
}
