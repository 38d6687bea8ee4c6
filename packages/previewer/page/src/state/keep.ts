import { effect, signal } from '@preact/signals';
import { createStore, del, entries, get, set, type UseStore } from 'idb-keyval';
import type { History } from '../document/history.js';
import { isList, isObject, type Json, valueAt } from '../document/json.js';
import { dragging, nudged, resume, work } from './store.js';

/** The job of one tab with its history, as the browser keeps it. */
interface Record {
  readonly version: 1;
  /** When it was kept, milliseconds. */
  readonly at: number;
  readonly history: History<Json>;
}

/** Jobs of so many tabs are kept; older ones go. */
const TABS = 8;

/** So many members of lists may all kept steps have together: what is kept is written at every change. */
const BUDGET = 100_000;

/** Whether the job as it stands is kept in this browser, so that closing the page loses nothing. */
export const isKept = signal(true);

/** Milliseconds from one to the next at least while moves follow each other: a held key moves many times a second. */
const PACE_OF_MOVES = 500;

let shelf: UseStore | null = null;
let writing = false;
let written = 0;

/** Goes on with the job that this tab had, else with the last one of all; then keeps every change. */
export async function keepWork(): Promise<void> {
  try {
    shelf = createStore('edgebite', 'jobs');
    const record = await Promise.race([recordToResume(shelf), late()]);
    if (record !== null) resume(record.history);
  } catch {
    // A browser that keeps nothing: the page works all the same, and asks before it is closed.
    shelf = null;
    isKept.value = false;
  }
  effect(() => {
    const present = work.value;
    if (dragging.value) return;
    isKept.value = present === null;
    void write();
  });
}

/** How long the page waits for what was kept, milliseconds: a browser may hold a store back for long. */
const WAIT = 2000;

function late(): Promise<null> {
  return new Promise((resolve) => {
    setTimeout(() => resolve(null), WAIT);
  });
}

async function recordToResume(from: UseStore): Promise<Record | null> {
  const own = await get<unknown>(tabKey(), from);
  if (isRecord(own)) return own;
  const all = (await entries<string, unknown>(from)).flatMap(([key, value]) =>
    isRecord(value) ? [{ key, record: value }] : [],
  );
  all.sort((a, b) => b.record.at - a.record.at);
  for (const { key } of all.slice(TABS)) await del(key, from);
  return all[0]?.record ?? null;
}

// One at a time, and always the newest: what is changed meanwhile is written next.
async function write(): Promise<void> {
  if (shelf === null || writing) return;
  writing = true;
  try {
    for (let kept: History<Json> | null | undefined; kept !== work.peek(); ) {
      // Not within the task that changed the job: copying a large one takes its time.
      const wait = nudged.peek() ? Math.max(written + PACE_OF_MOVES - performance.now(), 0) : 0;
      await new Promise((resolve) => setTimeout(resolve, wait));
      written = performance.now();
      kept = work.peek();
      if (kept === null) await del(tabKey(), shelf);
      else
        await set(tabKey(), { version: 1, at: Date.now(), history: slimmed(kept) } satisfies Record, shelf);
    }
    isKept.value = true;
  } catch {
    isKept.value = work.peek() === null;
  } finally {
    writing = false;
  }
}

/** Forgets what every tab has kept. */
export async function forget(): Promise<void> {
  if (shelf === null) return;
  for (const [key] of await entries<string, unknown>(shelf)) await del(key, shelf);
}

function isRecord(value: unknown): value is Record {
  const held = value as Partial<Record> | undefined;
  return held?.version === 1 && isObject(held.history?.present) && isList(held.history.past as Json);
}

/** A history with as many of its steps as the budget allows, the nearest first. */
export function slimmed(history: History<Json>): History<Json> {
  const most = Math.max(Math.floor(BUDGET / sizeOf(history.present)), 1);
  const { past, future } = history;
  return { ...history, past: past.slice(-most), future: future.slice(0, most) };
}

// Steps share what they have in common, so each weighs little more than its lists.
function sizeOf(job: Json): number {
  const cuts = valueAt(job, ['cuts']);
  return 20 + (isList(cuts) ? cuts.length : 0);
}

/** A name for this tab, which it keeps over a reload. */
function tabKey(): string {
  const held = sessionStorage.getItem('edgebite-tab');
  if (held !== null) return held;
  const name = `${Date.now()}-${Math.random()}`;
  sessionStorage.setItem('edgebite-tab', name);
  return name;
}
