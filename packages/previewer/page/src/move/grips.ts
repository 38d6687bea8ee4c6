import { tidied } from '../board/snap.js';
import { isList, isObject, type Json, type JsonObject, valueAt } from '../document/json.js';
import { CROWD } from '../worker/crowd.js';
import type { Place } from '../worker/sketch.js';
import type { Worked, WorkedCuts } from '../worker/worked.js';
import type { Moves } from './free.js';
import { movesOf } from './moves.js';
import { isPlace } from './shifts.js';
import { passMoves } from './steps.js';

/** A place of the drawing to take hold of. All of it is plain values, so that it can be told whether any changed. */
export interface Grip {
  /** Id of its element. */
  readonly key: string;
  /** Which cut, and its id. */
  readonly index: number;
  readonly id: string;
  /** Which pass, from 1; null for the cut itself. */
  readonly pass: number | null;
  readonly x: number;
  readonly y: number;
  /** Of the cut; null where it has no centre. */
  readonly diameter: number | null;
  /** Whether nothing of it is free. */
  readonly fixed: boolean;
  /** What it is and does, for those who do not see it. */
  readonly label: string;
}

/** So many passes have a handle of their own; more would lie on each other. */
const PASSES = 24;

/** The cut of a job at an index, if it is one. */
export function cutAt(job: Json | null, index: number): JsonObject | null {
  const cut = valueAt(job ?? undefined, ['cuts', index]);
  return isObject(cut) ? cut : null;
}

/** What the reports call the cut at an index. */
export function idAt(cut: JsonObject, index: number): string {
  return String(cut.id ?? index + 1);
}

/** The index of the cut of an id; -1 where there is none. */
export function indexOfCut(job: Json | null, id: string | null): number {
  const cuts = valueAt(job ?? undefined, ['cuts']);
  if (id === null || !isList(cuts)) return -1;
  return cuts.findIndex((cut, k) => isObject(cut) && idAt(cut, k) === id);
}

/** What is free of what a grip takes hold of. */
export function movesAt(cut: JsonObject, worked: Worked | null, pass: number | null): Moves | null {
  return pass === null ? movesOf(cut, worked) : passMoves(cut, worked, pass);
}

/** The grips of all cuts, and after them those of the passes of the chosen one. */
export function gripsOf(job: Json | null, worked: WorkedCuts, chosen: string | null): readonly Grip[] {
  const cuts = valueAt(job ?? undefined, ['cuts']);
  if (!isList(cuts)) return [];
  const own: Grip[] = [];
  const steps: Grip[] = [];
  for (const index of takenOf(cuts, chosen)) {
    const cut = cuts[index];
    if (!isObject(cut)) continue;
    const made = cutGrip(cut, index, worked);
    if (made !== null) own.push(made);
    const id = idAt(cut, index);
    if (id === chosen) steps.push(...passGrips(cut, index, id, worked.get(id) ?? null));
  }
  return [...own, ...steps];
}

// Of a crowd only the chosen one, or the first, has a grip that is drawn; the others are found by their places.
function takenOf(cuts: readonly Json[], chosen: string | null): readonly number[] {
  if (cuts.length <= CROWD) return cuts.map((_, index) => index);
  const index = cuts.findIndex((cut, k) => isObject(cut) && idAt(cut, k) === chosen);
  return [Math.max(index, 0)];
}

/** Of a crowd the cut whose place is nearest to one, if it is within reach; null of fewer cuts. */
export function cutNear(
  job: Json | null,
  worked: WorkedCuts,
  [x, y]: Place,
  reach: number,
): { readonly id: string; readonly index: number } | null {
  const cuts = valueAt(job ?? undefined, ['cuts']);
  if (!isList(cuts) || cuts.length <= CROWD) return null;
  let best: { readonly id: string; readonly index: number } | null = null;
  let least = reach;
  for (const [index, cut] of cuts.entries()) {
    if (!isObject(cut)) continue;
    const id = idAt(cut, index);
    const at = isPlace(cut.center) ? cut.center : (worked.get(id)?.center ?? worked.get(id)?.start);
    const away = at == null ? Infinity : Math.hypot(at[0] - x, at[1] - y);
    if (away > least) continue;
    least = away;
    best = { id, index };
  }
  return best;
}

const NEXT = 'Page keys go to the next.';

/** Grips of cuts whose place and size are written in them. */
const written = new WeakMap<JsonObject, Grip>();

function cutGrip(cut: JsonObject, index: number, worked: WorkedCuts): Grip | null {
  const known = written.get(cut);
  if (known?.index === index) return known;
  const id = idAt(cut, index);
  if (!isWritten(cut)) return grip(cut, index, id, worked.get(id) ?? null);
  const made = grip(cut, index, id, null);
  if (made !== null) written.set(cut, made);
  return made;
}

/** Whether the place and size of a cut are written in it: nothing that is worked out changes those. */
export function isWritten({ center, diameter }: JsonObject): boolean {
  return isPlace(center) && typeof diameter === 'number';
}

function grip(cut: JsonObject, index: number, id: string, worked: Worked | null): Grip | null {
  const moves = movesOf(cut, worked);
  if (moves === null) return null;
  const [x, y] = moves.at;
  const moved = cut.path !== undefined;
  const diameter = typeof cut.diameter === 'number' ? cut.diameter : (worked?.diameter ?? 0);
  const place = `${moved ? `Start of the path of ${id}` : `Centre of ${id}`}: x ${shown(x)}, y ${shown(y)}.`;
  return {
    key: `handle-${index}`,
    index,
    id,
    pass: null,
    x,
    y,
    diameter: !moved && diameter > 0 ? diameter : null,
    fixed: moves.why !== null,
    label: `${place} ${moves.why ?? `Arrow keys ${freeText(moves, moved)}.`} ${NEXT}`,
  };
}

function freeText({ frees }: Moves, moved: boolean): string {
  if (moved) return 'move the whole path';
  if (frees.every(({ name }) => name === 'x' || name === 'y')) return 'move it';
  return `change ${frees.map(({ name, value, shows }) => `${name} (${shown(shows ?? value)})`).join(' and ')}`;
}

function passGrips(cut: JsonObject, index: number, id: string, worked: Worked | null): readonly Grip[] {
  const stops = worked?.steps?.stops ?? [];
  return stops.slice(0, PASSES).flatMap(([x, y], k): Grip[] => {
    const moves = passMoves(cut, worked, k + 1);
    if (moves === null) return [];
    const bite = shown(moves.frees[0]?.value ?? 0);
    return [
      {
        key: `handle-${index}-pass-${k + 1}`,
        index,
        id,
        pass: k + 1,
        x,
        y,
        diameter: worked?.diameter ?? null,
        fixed: false,
        label: `Pass ${k + 1} of ${id}: x ${shown(x)}, y ${shown(y)}. Arrow keys along its way change the largest bite (${bite}). ${NEXT}`,
      },
    ];
  });
}

function shown(value: number): string {
  return String(tidied(value));
}

/** The grips in the order in which the page keys go through them: the passes of a cut right after it. */
export function inTurn(grips: readonly Grip[]): readonly Grip[] {
  return [...grips].sort((a, b) => a.index - b.index || (a.pass ?? 0) - (b.pass ?? 0));
}
