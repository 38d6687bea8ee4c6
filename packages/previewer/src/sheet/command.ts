import { examine, type Report } from '@edgebite/core';
import { clean } from '@edgebite/svg';
import { EXIT, STANDARD_OUTPUT } from '../exit.js';
import type { Io } from '../io.js';
import { loadJob, type Which } from '../load.js';
import { saveWhole } from '../save.js';
import { outputFile } from '../target.js';
import { sheetCsv } from './csv.js';
import type { SheetFormat } from './formats.js';
import { sheetHtml } from './html.js';
import { sheetOf } from './model.js';
import { picturesOf } from './pictures.js';
import type { Sheet } from './sheet.js';
import { sheetText } from './text.js';

const WRITERS: Readonly<Record<SheetFormat, (sheet: Sheet, report: Report) => string>> = {
  text: sheetText,
  csv: sheetCsv,
  html: (sheet, report) => sheetHtml(sheet, picturesOf(report, sheet)),
};

/**
 * Prints the readout sheet of a job, or writes it to a file; returns the exit code.
 * @throws Failure if the job cannot be used or the sheet cannot be written; nothing is written then.
 */
export async function sheet(
  name: string,
  {
    format,
    output = STANDARD_OUTPUT,
    twin = false,
    drawer,
  }: Which & { readonly format: SheetFormat; readonly output?: string | undefined },
  io: Io,
): Promise<number> {
  const report = examine(await loadJob(name, io, { twin, drawer }));
  const text = WRITERS[format](sheetOf(report), report);
  if (output === STANDARD_OUTPUT) {
    io.out(text);
    return EXIT.clean;
  }
  const file = outputFile(output, name, '-o', io);
  await saveWhole(file, output, text);
  io.out(`Sheet written to ${clean(output)}\n`);
  return EXIT.clean;
}
