import type { JobIssue } from '@edgebite/core';
import { batch, computed, signal } from '@preact/signals';
import { followBegun, leaveAll } from '../document/begun.js';
import { changed, type History, redone, sealed, startOf, undone } from '../document/history.js';
import type { Json, JsonObject } from '../document/json.js';
import { followRows, openRows } from '../document/rows.js';
import type { WaysAnswer } from '../worker/messages.js';
import { Hand } from './hand.js';
import { readOutline } from './outline.js';
import { openJob, refusal, startWorker } from './store.js';

// One and the same list for no issues, so that nothing is drawn anew for it.
const NO_ISSUES: readonly JobIssue[] = [];

const history = signal<History<Json> | null>(null);

/** What is to come out and the tools; null where no ways are looked for. */
export const aim = computed(() => history.value?.present ?? null);

/** What is wrong with it as it stands, or as it stood last. */
export const aimIssues = signal<readonly JobIssue[]>(NO_ISSUES);

/** Whether it was opened or stepped to just now. */
export const aimJumped = signal(false);

/** The ways that were found last; null before. They stay while others are looked for. */
export const found = signal<WaysAnswer | null>(null);

/** What those are the ways to; null while they are being looked for. */
const foundFor = signal<Json | null>(null);

/** Whether those are the ways to what stands there. */
export const isFound = computed(() => aim.value !== null && foundFor.value === aim.value);

export const canUndoAim = computed(() => (history.value?.past.length ?? 0) > 0);
export const canRedoAim = computed(() => (history.value?.future.length ?? 0) > 0);

let seeker: Hand | null = null;
let checker: Hand | null = null;
let last = 0;

/** Opens an aim in place of what is shown, and looks for ways at once. */
export function openAim(value: Json): void {
  batch(() => {
    refusal.value = null;
    readOutline.value = null;
    found.value = null;
    aimIssues.value = NO_ISSUES;
    history.value = startOf(value);
    aimJumped.value = true;
    openRows.value = new Set();
    leaveAll();
  });
  seek();
}

/** Puts a changed aim in place; changes of one kind in a row are undone together. */
export function changeAim(value: Json, kind: string | null = null): void {
  const before = history.value;
  if (before !== null) put(before, changed(before, value, kind), false);
}

/** Makes the next change a step of its own. */
export function sealAim(): void {
  if (history.value !== null) history.value = sealed(history.value);
}

/** Takes the last step back. */
export function undoAim(): void {
  if (history.value !== null) put(history.value, undone(history.value), true);
}

/** Takes the last undoing back. */
export function redoAim(): void {
  if (history.value !== null) put(history.value, redone(history.value), true);
}

function put(before: History<Json>, after: History<Json>, isJump: boolean): void {
  if (after === before) return;
  batch(() => {
    history.value = after;
    aimJumped.value = isJump;
    followRows(before.present, after.present);
    followBegun(before.present, after.present);
  });
  check();
}

/** Asks what is wrong with the aim as it stands: quick, while ways are only looked for when they are wanted. */
function check(): void {
  const value = aim.value;
  if (value === null) return;
  checker ??= new Hand(startWorker, {
    onAnswer: (answer) => {
      if (answer.kind === 'checked' && answer.number === last) aimIssues.value = answer.issues;
    },
    onEnd: () => {
      checker = null;
    },
  });
  checker.ask({ kind: 'check', number: ++last, aim: value });
}

/** Looks for ways to what stands there. A worker of its own does it, one question at a time. */
export function seek(): void {
  const value = aim.value;
  if (value === null) return;
  foundFor.value = null;
  const tell = (answer: WaysAnswer): void =>
    batch(() => {
      found.value = answer;
      foundFor.value = value;
      if (aim.value === value) aimIssues.value = answer.issues;
    });
  seeker?.dismiss();
  seeker = new Hand(startWorker, {
    onAnswer: (answer) => {
      if (answer.kind === 'ways') tell(answer.ways);
    },
    onEnd: (fault) =>
      tell({
        units: 'mm',
        ways: [],
        refusals: [],
        issues: [{ path: '', message: `could not be worked out: ${fault}` }],
      }),
  });
  seeker.ask({ kind: 'propose', number: ++last, aim: value });
}

/** Goes on with one of the ways as the job. */
export function takeWay(job: JsonObject): void {
  leaveAim();
  openJob(job);
}

/** Puts the aim away. */
export function leaveAim(): void {
  seeker?.dismiss();
  checker?.dismiss();
  [seeker, checker] = [null, null];
  last += 1;
  batch(() => {
    history.value = null;
    found.value = null;
    foundFor.value = null;
    openRows.value = new Set();
    leaveAll();
  });
}
