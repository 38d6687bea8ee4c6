import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { type DrawerDocument, type Job, JobError, parseDrawer, parseJob, twinOf } from '@edgebite/core';
import { Failure, fileFailure } from './failure.js';
import type { Io } from './io.js';

/** Largest job file, in bytes. The format allows 20 million characters, of four bytes each at most in UTF-8. */
export const MAX_BYTES = 80_000_000;

/** The job name that stands for standard input. */
export const STANDARD_INPUT = '-';

/** Which job of a file is meant. */
export interface Which {
  /** Its twin, in place of the job itself. */
  readonly twin?: boolean;
  /** A file with the drawer, where the job has none of its own. */
  readonly drawer?: string | undefined;
}

/**
 * Reads and parses a job from a file, or from standard input for `-`; or its twin.
 * @throws Failure if it cannot be read, is too large, is no UTF-8 text, or is not a valid job, or has no twin.
 */
export async function loadJob(name: string, io: Io, { twin = false, drawer }: Which = {}): Promise<Job> {
  const shared = await loadDrawer(drawer, name, io);
  const job = await loadWith(name, (text) => parseJob(text, shared), 'the job', io);
  if (!twin) return job;
  const other = twinOf(job);
  if (other !== null) return other;
  const shown = name === STANDARD_INPUT ? 'standard input' : name;
  throw new Failure([`--twin: ${shown} has no twin; give it one with "twin": { "swaps": "left and right" }`]);
}

/**
 * Reads a drawer that jobs and aims share; undefined where no file is named.
 * @param beside the file of the job or aim that it is for
 * @throws Failure if it cannot be used, or both are to come from standard input.
 */
export async function loadDrawer(
  file: string | undefined,
  beside: string,
  io: Io,
): Promise<DrawerDocument | undefined> {
  if (file === undefined) return undefined;
  if (file === STANDARD_INPUT && beside === STANDARD_INPUT) {
    throw new Failure(['standard input can be the drawer or what it is for; name a file for the other']);
  }
  return loadWith(file, parseDrawer, 'the drawer', io);
}

/**
 * Reads a file, or standard input for `-`, and parses it as what it is to be.
 * @param whole what a fault of all of it is said of
 * @throws Failure if it cannot be read, is too large, is no UTF-8 text, or is not valid.
 */
export async function loadWith<T>(
  name: string,
  parse: (text: string) => T,
  whole: string,
  io: Io,
): Promise<T> {
  const shown = name === STANDARD_INPUT ? 'standard input' : name;
  const text = decoded(await bytesOf(name, shown, io), shown);
  try {
    return parse(text);
  } catch (error) {
    if (!(error instanceof JobError)) throw error;
    throw new Failure(error.issues.map(({ path, message }) => `${shown}: ${path || whole}: ${message}`));
  }
}

async function bytesOf(name: string, shown: string, io: Io): Promise<Uint8Array> {
  if (name === STANDARD_INPUT) return gathered(io.input, shown);
  const file = resolve(io.folder, name);
  try {
    const { size } = await stat(file);
    if (size > MAX_BYTES) throw tooLarge(shown);
    return await gathered(createReadStream(file), shown);
  } catch (error) {
    throw error instanceof Failure ? error : fileFailure(shown, error);
  }
}

// A pipe or a device does not tell its size beforehand, so the count goes on while reading.
async function gathered(chunks: AsyncIterable<Uint8Array>, shown: string): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of chunks) {
    size += chunk.length;
    if (size > MAX_BYTES) throw tooLarge(shown);
    parts.push(chunk);
  }
  return Buffer.concat(parts, size);
}

function tooLarge(shown: string): Failure {
  return new Failure([`${shown}: is too large; a job has ${MAX_BYTES} bytes at most`]);
}

function decoded(bytes: Uint8Array, shown: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Failure([`${shown}: is not UTF-8 text; save it as UTF-8`]);
  }
}
