import { examine, parseJob, type Report, rangeOf } from '@edgebite/core';
import { draw } from '@edgebite/svg';
import { sheetOf } from '../../../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../../../packages/previewer/src/sheet/text.js';
import { textReport } from '../../../../packages/previewer/src/text/report.js';
import type { JobDocument } from '../sim/job.js';
import type { Verdict } from './verdict.js';

/** By mark: what the table of a text says of it, thickness or angle first. */
function inText(text: string): Map<string, string> {
  const rows = text.matchAll(/^([WK]\d+) +([\d.]+)°? .* (?:cut|outline|hole)\b.*$/gm);
  return new Map([...rows].map(([, mark = '', value = '']) => [mark, value]));
}

/** By mark: what the drawing points at with it. */
function inDrawing(svg: string): Map<string, Set<string>> {
  const all = new Map<string, Set<string>>();
  for (const [, mark = '', about = ''] of svg.matchAll(/data-mark="([^"]*)" data-about="([^"]*)"/g)) {
    const known = all.get(mark) ?? new Set();
    for (const name of about.split(' ')) if (/^(web|knifeEdge):/.test(name)) known.add(name);
    if (known.size > 0) all.set(mark, known);
  }
  return all;
}

/** Thickness or angle of what a name of a report stands for. */
function sizeOf(report: Report, name: string): number {
  const [kind, index] = name.split(':');
  const one =
    kind === 'web' ? report.webs[Number(index)]?.thickness : report.knifeEdges[Number(index)]?.angle;
  if (one === undefined) throw new Error(`the report has no ${name}`);
  return one;
}

/** Whether marks are the same in the text, the drawing and the sheet of a report. */
export function compareMarks(verdict: Verdict, report: Report): void {
  const text = inText(textReport(report, { all: true }));
  const drawing = inDrawing(draw(report));
  const [drawn, told] = [[...drawing.keys()].sort().join(), [...text.keys()].sort().join()];
  verdict.check('marks of the drawing', drawn === told, () => `the text has ${told}, the drawing ${drawn}`);
  const named: string[] = [];
  for (const [mark, names] of drawing) {
    for (const name of names) {
      named.push(name);
      // Text and drawing print to half a thousandth of a millimetre or better, and angles to a tenth of a degree.
      const slack = mark.startsWith('W') ? 6e-4 + report.resolution : 0.051;
      verdict.near(`${mark}, ${name}`, Number(text.get(mark)), sizeOf(report, name), slack);
    }
  }
  verdict.check('one mark for one thing', new Set(named).size === named.length, () => named.join());
  for (const mark of sheetText(sheetOf(report)).match(/\b[WK]\d+\b/g) ?? [])
    verdict.check('marks of the sheet', text.has(mark), () => mark);
}

/**
 * Whether the marks of a range are those of the report at the value that the job has. It is the report of the job without
 * passes, which a range says that it does not ask: they take of loose metal in their way.
 */
export function compareRange(verdict: Verdict, document: JobDocument): void {
  const job = parseJob(document);
  const report = examine(parseJob({ ...document, cuts: document.cuts.map(({ passes, ...cut }) => cut) }));
  const cut = document.cuts.find(({ center }) => center !== undefined);
  if (cut?.center === undefined) return;
  const [now] = cut.center;
  // Not in the middle, so that the value is no end of a search by halves.
  const answer = rangeOf(job, { cut: cut.id, along: 'x', from: now - 0.013, to: now + 0.02 });
  const at = answer.intervals.find(({ from, to }) => from < now - 1e-6 && now + 1e-6 < to);
  // Right at an event a report may tell of the one side or of the other.
  if (at === undefined) {
    verdict.skip('marks of a range');
    return;
  }
  const nameOf = oneNameOf(document);
  const marks = (rows: readonly { between: readonly [string, string]; slab: number }[]) =>
    rows
      .map(({ between, slab }) => `${between.map(nameOf).sort()} ${slab}`)
      .sort()
      .join('; ');
  for (const kind of ['webs', 'knifeEdges'] as const) {
    const [told, found] = [marks(at.outcome[kind]), marks(report[kind])];
    verdict.check('marks of a range', told === found, () => `told ${told}, the report has ${found}`);
  }
}

/** One name for all cuts on one circle: of two rims in one line a report names either. */
function oneNameOf({ cuts }: JobDocument): (name: string) => string {
  const circleOf = ({ center, diameter }: JobDocument['cuts'][number]) =>
    center === undefined ? null : JSON.stringify([center, diameter]);
  const first = new Map<string, string>();
  const names = new Map<string, string>();
  for (const cut of cuts) {
    const circle = circleOf(cut);
    if (circle === null) continue;
    const known = first.get(circle) ?? cut.id;
    first.set(circle, known);
    names.set(`cut:${cut.id}`, `cut:${known}`);
  }
  return (name) => names.get(name) ?? name;
}
