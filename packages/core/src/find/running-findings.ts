import { METALS, metalOf } from '../cutting/material.js';
import { choices, described } from '../document/described.js';
import type { ToolDocument } from '../document/schema.js';
import type { Job } from '../job/job.js';
import type { Report, ReportCut } from '../report/report-schema.js';
import { lengthWords, speedWords } from '../report/words.js';
import type { Told } from './told.js';

/** What to say of the tools of a job and their speeds: first of whole tools, then cut by cut. */
export function runningFindings(job: Job, report: Pick<Report, 'cuts'>): Told[] {
  if (job.tools.length === 0) return [];
  const cutsOf = new Map<string, ReportCut[]>(job.tools.map(({ id }) => [id, []]));
  for (const cut of report.cuts) if (cut.running !== null) cutsOf.get(cut.running.tool)?.push(cut);
  return [
    ...materialFindings(job, report),
    ...job.tools.flatMap((tool) => toolFindings(tool, cutsOf.get(tool.id) ?? [])),
    ...report.cuts.flatMap((cut) => sizeFindings(job, cut)),
    ...report.cuts.flatMap((cut) => headFindings(job, cut)),
    ...report.cuts.flatMap((cut) => reachFindings(job, cut)),
    ...report.cuts.flatMap(speedFindings),
  ];
}

const sourcesOf = (cuts: readonly ReportCut[]): string[] => cuts.map(({ source }) => source);

function materialFindings(job: Job, report: Pick<Report, 'cuts'>): Told[] {
  const cuts = report.cuts.filter(({ running }) => running !== null);
  if (cuts.length === 0 || (job.material !== null && metalOf(job.material) !== null)) return [];
  const what =
    job.material === null
      ? 'The job names no material'
      : `Of ${described(job.material)} no figures are known`;
  const message = `${what}, so there are no speeds and feeds. Known are ${choices(METALS).replace(' or ', ' and ')}.`;
  return [{ code: 'speeds-unknown', message, at: null, about: sourcesOf(cuts) }];
}

function toolFindings(tool: ToolDocument, cuts: readonly ReportCut[]): Told[] {
  if (cuts.length === 0) return [];
  if (tool.kind === 'boring head' && tool.maxSpeed === undefined) {
    const message = `Boring head ${tool.id} has no speed limit: how fast it may turn out of balance, only its maker or its user knows. Give maxSpeed as its maker states it; until then no speed is given.`;
    return [{ code: 'speed-limit-missing', message, at: null, about: sourcesOf(cuts) }];
  }
  // Of an unknown metal all is unknown, which has been said.
  const without = cuts.filter(({ running }) => running?.spindle != null && running.feedPerTurn === null);
  const [first] = without;
  if (first === undefined) return [];
  const why =
    first.running?.feedPerTooth === null
      ? 'is smaller than any in the table of feeds'
      : 'has no number of teeth: give teeth';
  const message = `Tool ${tool.id} ${why}. No feed is given.`;
  return [{ code: 'feed-unknown', message, at: null, about: sourcesOf(without) }];
}

/** A tool that is not as large as what it is to cut. */
function sizeFindings(job: Job, cut: ReportCut): Told[] {
  const { running } = cut;
  if (running === null) return [];
  const over = running.diameter - cut.diameter;
  const milled = running.kind === 'end mill' && cut.kind === 'bore';
  if (milled ? over <= job.resolution : Math.abs(over) <= job.resolution) return [];
  const message = `Tool ${running.tool} is ${lengthWords(running.diameter, job.units)} across, but cut ${cut.id} is ${lengthWords(cut.diameter, job.units)}.`;
  return [{ code: 'tool-does-not-fit', message, at: cut.center, about: [cut.source] }];
}

/** A boring head that cannot be set to a bore, or whose bar is too short for it. */
function headFindings({ tools, units, resolution }: Job, cut: ReportCut): Told[] {
  const head = tools.find(({ id }) => id === cut.running?.tool);
  if (head === undefined || head.kind !== 'boring head') return [];
  const { id, smallest = 0, largest = Number.POSITIVE_INFINITY, bar = Number.POSITIVE_INFINITY } = head;
  const findings: Told[] = [];
  const say = (code: Told['code'], message: string) =>
    findings.push({ code, message, at: cut.center, about: [cut.source] });
  const isUnder = cut.diameter < smallest - resolution;
  if (isUnder || cut.diameter > largest + resolution) {
    const limit = isUnder
      ? `no smaller bore than ${lengthWords(smallest, units)}`
      : `no larger bore than ${lengthWords(largest, units)}`;
    say(
      'head-does-not-reach-size',
      `Boring head ${id} can be set to ${limit}; cut ${cut.id} is ${lengthWords(cut.diameter, units)}. Use another head or bar.`,
    );
  }
  if (cut.depth >= bar) {
    say(
      'bar-too-short',
      `The bar of boring head ${id} stands out ${lengthWords(bar, units)}, but cut ${cut.id} goes ${lengthWords(cut.depth, units)} deep: the turning head would strike the part. Use a longer bar, or bore from both sides.`,
    );
  }
  return findings;
}

/** A tool that does not come down as deep as it is to cut. */
function reachFindings({ tools, units }: Job, cut: ReportCut): Told[] {
  const tool = tools.find(({ id }) => id === cut.running?.tool);
  const { id, reach = Number.POSITIVE_INFINITY } = tool ?? {};
  if (cut.depth <= reach) return [];
  const message = `Tool ${id} cuts ${lengthWords(reach, units)} deep at most, but cut ${cut.id} goes ${lengthWords(cut.depth, units)} deep: above its edges the shank would rub.`;
  return [{ code: 'reach-too-short', message, at: cut.center, about: [cut.source] }];
}

function speedFindings(cut: ReportCut): Told[] {
  const { running } = cut;
  if (running === null || running.limitedBy === null || running.spindle === null) return [];
  const finding = (code: Told['code'], message: string): Told[] => [
    { code, message, at: cut.center, about: [cut.source] },
  ];
  const { set, spindle, limitedBy, tool } = running;
  if (set === null) {
    if (limitedBy === 'tool') return [];
    return finding(
      'spindle-too-fast',
      `Cut ${cut.id} wants ${speedWords(spindle)}, but the machine has no speed so slow: use a smaller tool or another machine.`,
    );
  }
  if (set[1] >= spindle[0]) return [];
  const whose = limitedBy === 'tool' ? `tool ${tool}` : 'the machine';
  return finding(
    'speed-under-range',
    `Cut ${cut.id} would bear ${speedWords(spindle)}, but ${whose} allows ${speedWords(set)}: it runs slower.`,
  );
}
