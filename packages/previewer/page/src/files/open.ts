/*
 * Room: files, links and the printer.
 * In: files, links.
 * Out: a job opened; files saved, pages printed.
 */

import { leaveAim, openAim } from '../state/aim.js';
import { readOutline } from '../state/outline.js';
import { openJob, refusal, solver } from '../state/store.js';
import type { Found } from '../worker/outline.js';
import { textIn } from './link.js';
import { pictureIn } from './picture.js';

/** Largest job file, bytes: the format allows 20 million characters, of four bytes each at most. */
const MAX_BYTES = 80_000_000;

/** How many files and links were opened; the last one is meant, however long those before it take. */
let turns = 0;

/**
 * Opens a file with a job, an aim or an outline, or says what is wrong with it. A job whose faults lie in its fields
 * opens, to be mended there; what is open stays where nothing can be read.
 */
export async function openFile(file: File): Promise<void> {
  const turn = ++turns;
  if (file.size > MAX_BYTES) return refuse(file.name, `is too large; a file has ${MAX_BYTES} bytes at most`);
  const text = await textOf(file);
  if (turn !== turns) return;
  if (text === null) return refuse(file.name, 'is not UTF-8 text; save it as UTF-8');
  await openText(text, file.name, turn);
}

function refuse(file: string, message: string): void {
  refusal.value = { file, issues: [{ path: '', message }] };
}

/** What a text is called that was pasted. */
const PASTED = 'What was pasted';

/** Opens a text that was pasted, as a file. */
export async function openPasted(text: string): Promise<void> {
  if (text.trim() !== '') await openText(text, PASTED, ++turns);
}

async function openText(text: string, name: string, turn: number): Promise<void> {
  const plain = text.replace(/^\ufeff/, '').trim();
  if (isOutline(plain, name)) return openOutline(plain, name, turn);
  const { job, isAim, issues } = await solver.open(text);
  if (turn !== turns) return;
  if (job === null) refusal.value = { file: name, issues };
  else if (isAim) openAim(job);
  else {
    leaveAim();
    openJob(job);
  }
}

// JSON begins with a bracket; a picture with its first tag, path data and well-known text with a letter.
function isOutline(text: string, name: string): boolean {
  return !name.toLowerCase().endsWith('.json') && /^[<a-z]/i.test(text);
}

async function openOutline(text: string, name: string, turn: number): Promise<void> {
  const picture = text.startsWith('<') ? pictureIn(text) : null;
  if (typeof picture === 'string') return refuse(name, picture);
  const found: Found = picture ?? { text };
  const { drawn, fault } = await solver.outline(found);
  if (turn !== turns) return;
  if (drawn === null) refuse(name, fault);
  else readOutline.value = { ...drawn, file: name, units: picture?.units ?? null };
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
  refuse(LINK, 'was cut short or changed on its way; ask for the job as a file');
}

async function textOf(file: File): Promise<string | null> {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
  } catch {
    return null;
  }
}
