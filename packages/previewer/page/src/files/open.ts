import { openJob, refusal, solver } from '../state/store.js';

/** Largest job file, bytes: the format allows 20 million characters, of four bytes each at most. */
const MAX_BYTES = 80_000_000;

/** Opens a job file, or says what is wrong with it. A job whose faults lie in its fields opens, to be mended there. */
export async function openFile(file: File): Promise<void> {
  const refuse = (message: string): void => {
    refusal.value = { file: file.name, issues: [{ path: '', message }] };
  };
  if (file.size > MAX_BYTES) return refuse(`is too large; a job has ${MAX_BYTES} bytes at most`);
  const text = await textOf(file);
  if (text === null) return refuse('is not UTF-8 text; save it as UTF-8');
  const { job, issues } = await solver.open(text);
  if (job === null) refusal.value = { file: file.name, issues };
  else openJob(job);
}

async function textOf(file: File): Promise<string | null> {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
  } catch {
    return null;
  }
}
