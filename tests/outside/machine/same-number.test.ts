import { examine, parseJob, type Report, rangeOf } from '@edgebite/core';
import { draw } from '@edgebite/svg';
import { describe, expect, it } from 'vitest';
import { sheetOf } from '../../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../../packages/previewer/src/sheet/text.js';
import { textReport } from '../../../packages/previewer/src/text/report.js';
import { longRun } from '../../tools/runs.js';
import { jobNumber } from './made/generate.js';

/* The same mark has the same number wherever it is told of: in the text, in the drawing, on the sheet and in a range. */

const JOBS = longRun() ? 500 : 5;

/** Ranges take longer than all else: they are asked of every so many jobs. */
const RANGES = longRun() ? 5 : 4;

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

describe('the marks of a job', () => {
  it.each(Array.from({ length: JOBS }, (_, k) => k))(
    'are the same in text, drawing and sheet: job %i',
    (k) => {
      const report = examine(parseJob(jobNumber(k)));
      const text = inText(textReport(report));
      const drawing = inDrawing(draw(report));
      expect([...drawing.keys()].sort()).toEqual([...text.keys()].sort());
      const named: string[] = [];
      for (const [mark, names] of drawing) {
        for (const name of names) {
          named.push(name);
          // Text and drawing print to half a thousandth of a millimetre or better, and angles to a tenth of a degree.
          const off = Math.abs(Number(text.get(mark)) - sizeOf(report, name));
          expect(off, `${mark}, ${name}`).toBeLessThan(
            mark.startsWith('W') ? 6e-4 + report.resolution : 0.051,
          );
        }
      }
      // No two marks stand for one thing.
      expect(new Set(named).size).toBe(named.length);
      const sheet = sheetText(sheetOf(report)).match(/\b[WK]\d+\b/g) ?? [];
      for (const mark of sheet) expect([...text.keys()]).toContain(mark);
    },
  );

  const asked = Array.from({ length: JOBS }, (_, k) => k).filter((k) => k % RANGES === 0);
  it.each(asked)('are those of a range at the value that the job has: job %i', (k) => {
    const job = jobNumber(k);
    const cut = job.cuts.find(({ center }) => center !== undefined);
    if (cut?.center === undefined) return;
    const parsed = parseJob(job);
    const report = examine(parsed);
    const [now] = cut.center;
    // Not in the middle, so that the value is no end of a search by halves.
    const answer = rangeOf(parsed, { cut: cut.id, along: 'x', from: now - 0.013, to: now + 0.02 });
    const at = answer.intervals.find(({ from, to }) => from < now - 1e-6 && now + 1e-6 < to);
    // Right at an event a report may tell of the one side or of the other.
    if (at === undefined) return;
    const marks = (rows: readonly { between: readonly [string, string]; slab: number }[]) =>
      rows.map(({ between, slab }) => `${[...between].sort()} ${slab}`).sort();
    expect(marks(at.outcome.webs)).toEqual(marks(report.webs));
    expect(marks(at.outcome.knifeEdges)).toEqual(marks(report.knifeEdges));
  });
});
