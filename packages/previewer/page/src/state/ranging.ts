import type { RangeQuery, RangeReport } from '@edgebite/core';
import { computed, effect, signal } from '@preact/signals';
import { Hand } from './hand.js';
import { job, startWorker } from './store.js';

/** How far a question about a range of values has come. An answer that the job has left behind is not kept. */
export type Ranging =
  | { readonly kind: 'none' }
  | { readonly kind: 'working'; readonly query: RangeQuery }
  | { readonly kind: 'found'; readonly query: RangeQuery; readonly report: RangeReport }
  | { readonly kind: 'refused'; readonly query: RangeQuery; readonly fault: string }
  | { readonly kind: 'left behind' };

/** What is known of the range that was asked for last. */
export const ranging = signal<Ranging>({ kind: 'none' });

/** The range that was found for the job as it stands; undefined while there is none. */
export const foundRange = computed<RangeReport | undefined>(() =>
  ranging.value.kind === 'found' ? ranging.value.report : undefined,
);

let hand: Hand | null = null;

/** Asks what comes of the job as it stands over a range. A worker of its own does it, so that nothing else waits. */
export function askRange(query: RangeQuery): void {
  const present = job.value;
  if (present === null) return;
  stop();
  ranging.value = { kind: 'working', query };
  const asked = new Hand(startWorker, {
    onAnswer: (answer) => {
      if (answer.kind !== 'range') return;
      stop();
      const { report, fault } = answer.range;
      ranging.value = report === null ? { kind: 'refused', query, fault } : { kind: 'found', query, report };
    },
    onEnd: (fault) => {
      if (hand !== asked) return;
      stop();
      ranging.value = { kind: 'refused', query, fault };
    },
  });
  hand = asked;
  asked.ask({ kind: 'range', number: 0, job: present, query });
}

function stop(): void {
  hand?.dismiss();
  hand = null;
}

// Whatever was found, or is being looked for, is that of the job before.
effect(() => {
  job.value;
  stop();
  if (ranging.peek().kind !== 'none') ranging.value = { kind: 'left behind' };
});
