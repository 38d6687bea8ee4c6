/*
 * Room: files, links and the printer.
 * In: files, links.
 * Out: a job opened; files saved, pages printed.
 */

import { openAim } from '../state/aim.js';
import { openJob, refusal, solver } from '../state/store.js';
import { textIn } from './link.js';

/** Largest job file, bytes: the format allows 20 million characters, of four bytes each at most. */
const MAX_BYTES = 80_000_000;

/** How many files and links were opened; the last one is meant, however long those before it take. */
let turns = 0;

/** Opens a job file, or says what is wrong with it. A job whose faults lie in its fields opens, to be mended there. */
export async function openFile(file: File): Promise<void> {
  const turn = ++turns;
  const refuse = (message: string): void => {
    refusal.value = { file: file.name, issues: [{ path: '', message }] };
  };
  if (file.size > MAX_BYTES) return refuse(`is too large; a job has ${MAX_BYTES} bytes at most`);
  const text = await textOf(file);
  if (turn !== turns) return;
  if (text === null) return refuse('is not UTF-8 text; save it as UTF-8');
  await openText(text, file.name, turn);
}

async function openText(text: string, name: string, turn: number): Promise<void> {
  const { job, isAim, issues } = await solver.open(text);
  if (turn !== turns) return;
  if (job === null) refusal.value = { file: name, issues };
  else if (isAim) openAim(job);
  else openJob(job);
}

/** What a link is called where it cannot be opened. */
const LINK = 'The job in the link';

/** Opens the job that the address of the page holds, if it holds one, over the one that is open. */
export async function openLink(): Promise<void> {
  const text = await textIn(location.hash);
  if (text === undefined) return;
  const turn = ++turns;
  // Later changes are not those of the link: a reload goes on with them.
  history.replaceState(null, '', location.href.slice(0, location.href.indexOf('#')));
  if (text !== null) return openText(text, LINK, turn);
  const message = 'was cut short or changed on its way; ask for the job as a file';
  refusal.value = { file: LINK, issues: [{ path: '', message }] };
}

async function textOf(file: File): Promise<string | null> {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
  } catch {
    return null;
  }
}
