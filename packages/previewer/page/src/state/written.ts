import type { JobIssue } from '@edgebite/core';
import { computed } from '@preact/signals';
import { type Json, type JsonObject, type Path, pointerOf, valueAt, withValue } from '../document/json.js';
import {
  aim,
  aimIssues,
  aimJumped,
  canRedoAim,
  canUndoAim,
  changeAim,
  redoAim,
  sealAim,
  undoAim,
} from './aim.js';
import * as store from './store.js';

/* What the forms are at: the job, or what is to come out where ways to it are looked for. */

const isAim = computed(() => aim.value !== null);

/** As it stands in the forms; null before one is opened. */
export const written = computed<Json | null>(() => (isAim.value ? aim.value : store.job.value));

/** Its JSON Schema; null until the worker has sent it. */
export const schema = computed<JsonObject | null>(() =>
  isAim.value ? store.aimSchema.value : store.schema.value,
);

/** Its faults as it stands, or as it stood last. */
export const issues = computed<readonly JobIssue[]>(() =>
  isAim.value ? aimIssues.value : store.issues.value,
);

/** Whether it was opened or stepped to just now, so that there is no hand to wait for. */
export const jumped = computed(() => (isAim.value ? aimJumped.value : store.jumped.value));

export const canUndo = computed(() => (isAim.value ? canUndoAim.value : store.canUndo.value));
export const canRedo = computed(() => (isAim.value ? canRedoAim.value : store.canRedo.value));

/** Takes the last step back. */
export function undo(): void {
  if (isAim.value) undoAim();
  else store.undo();
}

/** Takes the last undoing back. */
export function redo(): void {
  if (isAim.value) redoAim();
  else store.redo();
}

/** Puts a changed one in place; changes of one kind in a row are undone together. */
export function change(value: Json, kind: string | null = null): void {
  if (isAim.value) changeAim(value, kind);
  else store.change(value, kind);
}

/** Puts a value in a place of it; undefined takes it out. */
export function put(path: Path, value: Json | undefined): void {
  const present = written.value;
  if (present !== null) change(withValue(present, path, value), `put ${pointerOf(path)}`);
}

/** Makes the next change a step of its own. */
export function seal(): void {
  if (isAim.value) sealAim();
  else store.seal();
}

/** Lengths of a drawing change in such steps. */
const STEP = { mm: 0.1, inch: 0.005 } as const;

/** By how much an arrow key changes a length: the finest step of a job's readout; an aim is a drawing. */
export function lengthStep(): number {
  if (!isAim.value) return store.readoutStep();
  return STEP[valueAt(aim.value ?? undefined, ['units']) === 'inch' ? 'inch' : 'mm'];
}
