/*
 * Room: what a machinist should know of a result.
 * In: a `Result` and its rows.
 * Out: findings with level, code, sentence and place; cautions.
 */

import type { AnnularCut, Cut } from '../cut/cut.js';
import { cutOfSource, cutSource } from '../geometry/source.js';
import type { Job } from '../job/job.js';
import { FINDING_LEVELS } from '../report/finding-codes.js';
import { knifeMarks, webMarks } from '../report/marks.js';
import type { Finding, ReportCut, ReportRows } from '../report/report-schema.js';
import { angleWords, betweenText, capital, lengthWords, placeWords } from '../report/words.js';
import type { Facts } from '../result/facts.js';
import { toolsByCut } from '../result/running.js';
import type { Result } from '../step/result.js';
import { centerFindings } from './center-findings.js';
import { keepOutFindings } from './keep-out-findings.js';
import { loadFindings, namesOf, noteOn } from './load-findings.js';
import { runningFindings } from './running-findings.js';
import { setupFindings } from './setup-findings.js';
import { stepFindings } from './step-findings.js';
import type { Told } from './told.js';
import { uncertainFindings } from './uncertain-findings.js';
import { zeroFindings } from './zero-findings.js';

/** Findings, and by step the numbers of those that are about it. */
export interface Found {
  readonly findings: readonly Finding[];
  readonly ofSteps: readonly (readonly number[])[];
}

/** What to know before cutting: dangers first, then what to check, then notes. */
export function findingsOf(result: Result, report: ReportRows): Found {
  const { job, facts, set, centers } = result;
  const all = [
    ...keptFindings(facts, report),
    ...stepFindings(report),
    ...centerFindings(report, centers),
    ...loadFindings(result, report),
    ...report.cuts.flatMap((cut, k) => cutFindings(job, facts, cut, job.cuts[k] as Cut, k)),
    ...bareCentreFindings(job, facts, report),
    ...webFindings(report),
    ...knifeFindings(report),
    ...floorFindings(report),
    ...runningFindings(job, report),
    ...setupFindings(job, set, report),
    ...zeroFindings(result),
    ...uncertainFindings(result, report),
    ...keepOutFindings(result),
  ];
  const findings = inOrder(all);
  return { findings, ofSteps: ofSteps(report.steps, findings) };
}

/** Findings with how bad they are, the worst first. */
export function inOrder(all: readonly Told[]): Finding[] {
  return (['danger', 'check', 'note'] as const).flatMap((level) =>
    all.filter(({ code }) => FINDING_LEVELS[code] === level).map((one): Finding => ({ level, ...one })),
  );
}

/** What is about a step, or about a cut and about no step, is about that step, or each of that cut. */
function ofSteps(steps: ReportRows['steps'], findings: readonly Finding[]): number[][] {
  const byName = new Map<string, number[]>();
  findings.forEach(({ about }, k) => {
    const own = about.filter((name) => name.startsWith('step:'));
    for (const name of own.length > 0 ? own : about.filter((one) => cutOfSource(one) !== null)) {
      const list = byName.get(name);
      if (list === undefined) byName.set(name, [k]);
      else list.push(k);
    }
  });
  return steps.map(({ cut }, k) => {
    const all = [...(byName.get(`step:${k}`) ?? []), ...(byName.get(cutSource(cut)) ?? [])];
    return [...new Set(all)].sort((a, b) => a - b);
  });
}

function keptFindings(facts: Facts, report: ReportRows): Told[] {
  const findings: Told[] = [];
  if (report.pieces.length === 0) {
    findings.push({
      code: 'nothing-left',
      message: 'The cuts take all of the part: nothing is left to hold.',
      at: null,
      about: report.cuts.map(({ source }) => source),
    });
  } else if (facts.keepStands === false && report.keep !== null) {
    findings.push({
      code: 'held-place-cut-away',
      message: `The place where the part is held, ${placeWords(report.keep, report.units)}, is cut away. The largest piece is taken as the one that is kept: clamp that one, never hold it by hand.`,
      at: report.keep,
      about: ['piece:kept'],
    });
  }
  return findings;
}

function cutFindings(job: Job, facts: Facts, row: ReportCut, cut: Cut, number: number): Told[] {
  const findings: Told[] = [];
  const about = [row.source];
  const at = row.center;
  if (row.relation === 'clear') {
    findings.push({
      code: 'cut-misses',
      message: `Cut ${cut.id} misses the part.`,
      at,
      about,
    });
  } else if (row.relation === 'grazes') {
    const message = `Cut ${cut.id} only grazes the part: within ${lengthWords(job.resolution, job.units)} it could as well miss.`;
    findings.push({ code: 'cut-grazes', message, at, about });
  } else if (row.removedVolume === 0) {
    const message = `Cut ${cut.id} takes nothing that the cuts before it have left.`;
    findings.push({ code: 'cut-in-air', message, at, about });
  }
  if (cut.kind === 'annular')
    findings.push(...annularFindings(job, row, cut, facts.bears[number] as boolean));
  return findings;
}

function annularFindings(job: Job, row: ReportCut, cut: AnnularCut, bears: boolean): Told[] {
  const findings: Told[] = [];
  const at: [number, number] = [cut.center.x + 0, cut.center.y + 0];
  const about = [cutSource(cut.id)];
  const tool = job.tools.find(({ cuts }) => cuts.includes(cut.id));
  if (row.removedVolume > 0 && !bears && tool?.pilot === true) {
    findings.push({
      code: 'pilot-in-air',
      message: `The centre of cut ${cut.id} is off the metal: the pilot of tool ${tool.id} has nothing to stand on, and nothing leads the cutter.`,
      at,
      about,
    });
  }
  const written = job.plain.cuts.find(({ id }) => id === cut.id);
  const wanted = written?.depth === undefined || written.depth === 'through' ? job.thickness : written.depth;
  if (cut.depth < wanted) {
    findings.push({
      code: 'reach-too-short',
      message: `The cutter of ${cut.id} reaches ${lengthWords(cut.depth, job.units)} of the ${lengthWords(wanted, job.units)} asked for.`,
      at,
      about,
    });
  }
  return findings;
}

/** Annular cuts without a pilot whose centre is off the metal: one finding tells of all of a setup. */
function bareCentreFindings(job: Job, facts: Facts, { cuts, steps }: ReportRows): Told[] {
  const setupOf = new Map(steps.map(({ cut, setup }) => [cut, setup]));
  const tools = toolsByCut(job);
  const bySetup = new Map<string | undefined, ReportCut[]>();
  cuts.forEach((row, k) => {
    const stands = facts.bears[k] === true || tools.get(row.id)?.pilot === true;
    if (row.kind !== 'annular' || row.removedVolume === 0 || stands) return;
    const setup = setupOf.get(row.id);
    bySetup.set(setup, [...(bySetup.get(setup) ?? []), row]);
  });
  return [...bySetup.values()].map((bare) => {
    const what =
      bare.length === 1
        ? `The centre of cut ${bare[0]?.id} is off the metal`
        : `${namesOf(bare)} have their centres off the metal`;
    const message = `${what}: a centre pin or ejector has nothing to bear on there.`;
    return noteOn(bare, 'no-metal-under-centre', message);
  });
}

function webFindings(report: ReportRows): Told[] {
  return webMarks(report).map(({ web: row, members }) => ({
    code: 'thin-web',
    message:
      row.thickness === 0
        ? `${capital(betweenText(row.between, report.names))} touch: no metal is left between them there.`
        : `Only ${lengthWords(row.thickness, report.units)} of metal between ${betweenText(row.between, report.names)}: it can bend away from the tool or break.`,
    at: [...row.at],
    about: [...members.map((k) => `web:${k}`), ...row.between],
  }));
}

function knifeFindings(report: ReportRows): Told[] {
  return knifeMarks(report).map(({ knifeEdge: row, members }) => {
    const feather =
      row.feather === null
        ? ''
        : `, thinner than ${lengthWords(report.limits.web, report.units)} for ${lengthWords(row.feather, report.units)}`;
    return {
      code: 'knife-edge',
      message: `Knife edge of ${angleWords(row.angle)} between ${betweenText(row.between, report.names)}${feather}: it cuts hands and breaks off.`,
      at: [...row.at],
      about: [...members.map((k) => `knifeEdge:${k}`), ...row.between],
    };
  });
}

function floorFindings(report: ReportRows): Told[] {
  return report.floors.flatMap((floor, k) => {
    if (floor.holds !== null || floor.thickness >= report.limits.web) return [];
    return [
      {
        code: 'thin-floor',
        message: `Cut ${floor.under} leaves a floor of only ${lengthWords(floor.thickness, report.units)}: it can tear or push through.`,
        at: [...floor.at] as [number, number],
        about: [`floor:${k}`, cutSource(floor.under)],
      },
    ];
  });
}
