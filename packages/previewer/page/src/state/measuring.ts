import type { Measuring } from '@edgebite/core';
import { effect, signal } from '@preact/signals';
import type { Json } from '../document/json.js';
import type { MeasureAnswer } from '../worker/messages.js';
import { Hand } from './hand.js';
import { job, startWorker } from './store.js';

/** What is known of the arcs of a cut, and what it was asked with. */
export interface Told {
  readonly asked: Measuring;
  readonly answer: MeasureAnswer;
}

/** The last answer. It stays while the next one is worked out, so that fields do not go from under a hand that types. */
export const told = signal<Told | null>(null);

/** Whether that answers what was asked last. */
export const isTold = signal(true);

let hand: Hand | null = null;
let last = 0;

/** Asks how the arcs of a cut are measured, and what readings say. A worker of its own does it, one question at a time. */
export function askMeasure(present: Json, asked: Measuring): void {
  const number = ++last;
  isTold.value = false;
  const tell = (answer: MeasureAnswer): void => {
    if (number !== last) return;
    told.value = { asked, answer };
    isTold.value = true;
  };
  hand?.dismiss();
  hand = new Hand(startWorker, {
    onAnswer: (answer) => {
      if (answer.kind === 'measure') tell(answer.measure);
    },
    onEnd: (fault) => tell({ checks: [], measured: null, fault }),
  });
  hand.ask({ kind: 'measure', number, job: present, asked });
}

// A job that is put away takes its answer along.
effect(() => {
  if (job.value !== null) return;
  hand?.dismiss();
  hand = null;
  told.value = null;
});
