import type { RangeReport, Report } from '@edgebite/core';
import { drawSheets } from '@edgebite/svg';
import { sheetCsv } from '../../../src/sheet/csv.js';
import { sheetHtml } from '../../../src/sheet/html.js';
import { sheetOf } from '../../../src/sheet/model.js';
import { picturesOf } from '../../../src/sheet/pictures.js';
import { sheetText } from '../../../src/sheet/text.js';
import { isObject } from '../document/json.js';
import { aim } from '../state/aim.js';
import { foundRange } from '../state/ranging.js';
import { job, solver } from '../state/store.js';
import { written } from '../state/written.js';

/** Something to take away from the page as a file. */
export interface Takeaway {
  readonly name: string;
  readonly ending: string;
  readonly type: string;
  /** Whether it can be made of a job with faults. */
  readonly faulty: boolean;
  readonly text: () => Promise<string | readonly string[] | null>;
}

const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

// The range is that of the job at the press of the button, as the report is.
const fromReport =
  (make: (report: Report, range: RangeReport | undefined) => string | readonly string[]) =>
  async (): Promise<string | readonly string[] | null> => {
    const range = foundRange.value;
    const report = job.value === null ? null : await solver.report(job.value);
    return report === null ? null : make(report, range);
  };

/** What is to come out and the tools, to be opened again here or given to the command. */
export const AIM_FILE: Takeaway = {
  name: 'Aim',
  ending: '.json',
  type: 'application/json',
  faulty: true,
  text: async () => json(aim.value),
};

/** What can be taken away, the job first. */
export const TAKEAWAYS: readonly Takeaway[] = [
  {
    name: 'Job',
    ending: '.json',
    type: 'application/json',
    faulty: true,
    text: async () => json(job.value),
  },
  {
    name: 'Report',
    ending: '-report.json',
    type: 'application/json',
    faulty: false,
    text: fromReport(json),
  },
  {
    name: 'Drawing',
    ending: '.svg',
    type: 'image/svg+xml',
    faulty: false,
    text: fromReport((report, range) => drawSheets(report, { range }).map((sheet) => `${sheet}\n`)),
  },
  {
    name: 'Readouts',
    ending: '-readouts.txt',
    type: 'text/plain',
    faulty: false,
    text: fromReport((report) => sheetText(sheetOf(report))),
  },
  {
    name: 'Readouts as a table',
    ending: '-readouts.csv',
    type: 'text/csv',
    faulty: false,
    text: fromReport((report) => sheetCsv(sheetOf(report))),
  },
  {
    name: 'Readouts to print',
    ending: '-readouts.html',
    type: 'text/html',
    faulty: false,
    text: fromReport(readoutsOf),
  },
];

function readoutsOf(report: Report): string {
  const sheet = sheetOf(report);
  return sheetHtml(sheet, picturesOf(report, sheet));
}

/** Longest beginning of a file's name that is taken from the job's. */
const NAME = 60;

/** Makes a file, or one for each sheet, and hands it to the browser to save. */
export async function takeAway({ ending, type, text }: Takeaway): Promise<void> {
  const content = await text();
  if (content === null) return;
  const all = typeof content === 'string' ? [content] : content;
  all.forEach((one, i) => {
    save(one, type, `${fileName()}${i === 0 ? '' : `-${i + 1}`}${ending}`);
  });
}

function save(content: string, type: string, name: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}

// Letters and digits of any script; nothing that a file system could take for something else.
function fileName(): string {
  const held = written.value ?? undefined;
  const name = isObject(held) ? held.name : '';
  const plain = String(name ?? '')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, NAME);
  return plain === '' ? 'job' : plain;
}
