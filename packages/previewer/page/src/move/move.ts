import { signal } from '@preact/signals';
import type { Json, JsonObject } from '../document/json.js';
import { withValue } from '../document/json.js';
import { change, job, MOVE, readoutStep, worked } from '../state/store.js';
import type { Place } from '../worker/sketch.js';
import { type Moves, movedTo, nudged } from './free.js';
import { cutAt, type Grip, idAt, movesAt } from './grips.js';

/** What a hand or a key moves: a cut, or one of its passes. */
export type Taken = Pick<Grip, 'index' | 'pass'>;

/** What is being dragged; null while nothing is. */
export const held = signal<Grip | null>(null);

/** Moves something as near to a place as steps of its free numbers allow. */
export function moveTo(taken: Taken, place: Place, step: number): void {
  moveBy(taken, (cut, moves) => movedTo(cut, moves, place, step));
}

/** Moves something by so many steps of the readout one way: of the one of its numbers that goes that way. */
export function nudge(taken: Taken, way: Place, steps: number): void {
  moveBy(taken, (cut, moves) => nudged(cut, moves, way, steps, readoutStep()));
}

function moveBy({ index, pass }: Taken, turn: (cut: JsonObject, moves: Moves) => JsonObject | null): void {
  const present: Json | null = job.value;
  const cut = cutAt(present, index);
  if (present === null || cut === null) return;
  const moves = movesAt(cut, worked.value.get(idAt(cut, index)) ?? null, pass);
  const next = moves === null || moves.why !== null ? null : turn(cut, moves);
  if (next === null || JSON.stringify(next) === JSON.stringify(cut)) return;
  change(withValue(present, ['cuts', index], next), `${MOVE}${index}`);
}
