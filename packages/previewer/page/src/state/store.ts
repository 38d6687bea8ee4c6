/*
 * Room: what the page holds: the job, its answers, what is picked.
 * In: what the person does.
 * Out: signals that the parts of the page follow.
 */

import type { JobIssue } from '@edgebite/core';
import { batch, computed, type ReadonlySignal, signal } from '@preact/signals';
import { followBegun, leaveAll } from '../document/begun.js';
import { followedCut } from '../document/follow.js';
import { changed, type History, redone, sealed, startOf, undone } from '../document/history.js';
import { type Json, type JsonObject, valueAt } from '../document/json.js';
import { stepOf } from '../document/place.js';
import { followRows, openRows } from '../document/rows.js';
import { CROWD } from '../worker/crowd.js';
import type { Outcome } from '../worker/messages.js';
import type { Worked, WorkedCuts } from '../worker/worked.js';
import InlineWorker from '../worker/worker.ts?worker&inline';
import { answered as answeredNow, drawNow, moved } from './frames.js';
import { readOutline } from './outline.js';
import { Solver } from './solver.js';

interface Answered {
  readonly number: number;
  readonly outcome: Outcome;
}

/** What went wrong with a file, to be read and put away. */
export interface Refusal {
  readonly file: string;
  readonly issues: readonly JobIssue[];
}

// One and the same list for no issues, so that nothing is drawn anew for it.
const NO_ISSUES: readonly JobIssue[] = [];

const history = signal<History<Json> | null>(null);
const wanted = signal(0);
const answered = signal<Answered | null>(null);

/** The JSON Schema of jobs; null until the worker has sent it. */
export const schema = signal<JsonObject | null>(null);

/** That of aims. */
export const aimSchema = signal<JsonObject | null>(null);

/** The job as it stands in the forms; null before one is opened. */
export const job = computed(() => history.value?.present ?? null);

/** Whether there is a job: told apart, so that what hangs on that alone does not follow every move. */
export const isOpen = computed(() => job.value !== null);

/** The job with what was before it and what was taken back; null before one is opened. */
export const work: ReadonlySignal<History<Json> | null> = computed(() => history.value);

/** What was put away last, to be had back. */
export const putAway = signal<History<Json> | null>(null);

export const canUndo = computed(() => (history.value?.past.length ?? 0) > 0);
export const canRedo = computed(() => (history.value?.future.length ?? 0) > 0);

/** Whether what is shown is that of the job as it stands. */
export const fresh = computed(() => answered.value?.number === wanted.value);

/** The faults of the job as it stands, or as it stood last. */
export const issues = computed<readonly JobIssue[]>(() => answered.value?.outcome.issues ?? NO_ISSUES);

/** The last summary and shapes of a job without faults; what is shown while a job has some. */
export const shown = signal<Extract<Outcome, { issues: null }> | null>(null);

/** Whether `shown` belongs to an earlier state than the job's: it is being worked out, or has faults. */
export const outdated = computed(() => !fresh.value || issues.value.length > 0);

/**
 * By the id of a cut as it is written: what moving it by hand needs to know, as it was worked out last. Of one that is made
 * several times the first is where it is written.
 */
export const worked = computed<WorkedCuts>(() => {
  const cuts = shown.value?.summary.cuts ?? [];
  // Most moves ask for none of them.
  let all: Map<string, Worked> | null = null;
  return {
    get: (id) => {
      all ??= new Map(cuts.map((cut) => [cut.id, cut.worked]));
      return all.get(id) ?? all.get(`${id} 1`);
    },
  };
});

/** Whether the cut of an id was made once when the job was worked out last: not under a number of its own. */
export function isMadeOnce(id: string): boolean {
  return shown.value?.summary.cuts.some((cut) => cut.id === id) ?? false;
}

/** The id of the cut that is being looked at. */
export const chosenCut = signal<string | null>(null);

/** How the kind of a change begins that moves a cut. */
export const MOVE = 'move ';

/** The index of the finding that is being looked at. */
export const chosenFinding = signal<number | null>(null);

/** A file that could not be opened. */
export const refusal = signal<Refusal | null>(null);

/** Why nothing can be worked out in this browser; null where it can. */
export const stuck = signal<string | null>(null);

/** Whether the job was opened or stepped to just now, so that there is no hand to wait for. */
export const jumped = signal(false);

/** Whether the last change was a move by hand or by keys: more of them may follow. */
export const nudged = signal(false);

/** Whether a centre is being dragged: the view keeps still then. */
export const dragging = signal(false);

/** The lengths' unit as the job has it. */
export const unit = computed(() => (valueAt(job.value ?? undefined, ['units']) === 'inch' ? 'in' : 'mm'));

const finest = computed(() => stepOf(job.value, shown.value?.summary.resolution ?? 1));

/** The finest step in which a centre can be set, in the job's unit. */
export function readoutStep(): number {
  return finest.value;
}

/** Works jobs out, and reads files. */
export const solver = new Solver(
  {
    onSchemas: (ofJobs, ofAims) => {
      schema.value = ofJobs;
      aimSchema.value = ofAims;
    },
    onOutcome: (number, outcome) => {
      // To take over the outcome of a crowd takes its time, and so does drawing it: a task for each.
      if (isCrowded(outcome)) setTimeout(() => hear(number, outcome));
      else hear(number, outcome);
    },
    onStuck: (why) => {
      stuck.value = why;
    },
  },
  startWorker,
);

/** A new worker. Its text is part of the page, so it needs neither a server that still runs nor one at all. */
export function startWorker(): Worker {
  return new InlineWorker();
}

function isCrowded({ summary }: Outcome): boolean {
  return (summary?.cuts.length ?? 0) > CROWD;
}

function hear(number: number, outcome: Outcome): void {
  if (number < (answered.value?.number ?? 0)) return;
  // A crowd takes so long to draw that its frame, with all that is laid out and painted in it, comes after as a task of its own.
  if (isCrowded(outcome)) drawNow();
  else if (dragging.value || nudged.value) answeredNow();
  batch(() => {
    answered.value = { number, outcome };
    if (outcome.issues === null) {
      shown.value = outcome;
      if ((chosenFinding.value ?? -1) >= outcome.summary.findings.length) chosenFinding.value = null;
    }
  });
}

function ask(opened = false): void {
  const present = history.value?.present;
  if (present !== undefined) wanted.value = solver.examine(present, opened);
}

/** Opens a job in place of the one that is open. What was there can be had back by undoing. */
export function openJob(value: Json): void {
  batch(() => {
    history.value = history.value === null ? startOf(value) : changed(history.value, value, null);
    openRows.value = new Set();
    leaveAll();
    chosenCut.value = null;
    chosenFinding.value = null;
    refusal.value = null;
    readOutline.value = null;
    putAway.value = null;
    jumped.value = true;
    ask(true);
  });
}

/** Goes on with a job and its history. */
export function resume(kept: History<Json>): void {
  batch(() => {
    history.value = sealed(kept);
    putAway.value = null;
    openRows.value = new Set();
    jumped.value = true;
    ask(true);
  });
}

/** Puts the job away: the page is as at its beginning. What is put away can be had back until another is begun. */
export function startAfresh(): void {
  batch(() => {
    putAway.value = history.value;
    history.value = null;
    answered.value = null;
    shown.value = null;
    chosenCut.value = null;
    chosenFinding.value = null;
    refusal.value = null;
  });
}

/** Puts a changed job in place; changes of one kind in a row are undone together. */
export function change(value: Json, kind: string | null = null): void {
  const before = history.value;
  if (before === null || value === before.present) return;
  const isMove = kind?.startsWith(MOVE) ?? false;
  if (isMove) moved();
  else drawNow();
  batch(() => {
    history.value = changed(before, value, kind);
    jumped.value = false;
    nudged.value = isMove;
    follow(before.present, value);
    ask();
  });
}

/** Makes the next change a step of its own. */
export function seal(): void {
  if (history.value !== null) history.value = sealed(history.value);
}

/** Takes the last step back. */
export function undo(): void {
  step(undone);
}

/** Takes the last undoing back. */
export function redo(): void {
  step(redone);
}

function step(move: (history: History<Json>) => History<Json>): void {
  const before = history.value;
  const after = before === null ? null : move(before);
  if (before === null || after === null || after === before) return;
  batch(() => {
    history.value = after;
    jumped.value = true;
    follow(before.present, after.present);
    ask();
  });
}

// What is open and what is chosen stay so, wherever they are in the next job and whatever they are called.
function follow(before: Json, after: Json): void {
  followRows(before, after);
  followBegun(before, after);
  if (chosenCut.value !== null) chosenCut.value = followedCut(chosenCut.value, before, after);
}
