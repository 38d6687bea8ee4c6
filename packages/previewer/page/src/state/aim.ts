import { batch, signal } from '@preact/signals';
import type { WaysAnswer } from '../worker/messages.js';
import { Hand } from './hand.js';
import type { JsonObject } from './json.js';
import { openJob, refusal, startWorker } from './store.js';

/** What is to come out and the tools, as text; null where no ways are looked for. */
export const aim = signal<string | null>(null);

/** The ways that were found last; null before. They stay while others are looked for. */
export const found = signal<WaysAnswer | null>(null);

/** Whether those are the ways of the text as it stands. */
export const isFound = signal(true);

let hand: Hand | null = null;
let last = 0;

/** Opens an aim in place of what is shown, and looks for ways at once. */
export function openAim(text: string): void {
  batch(() => {
    refusal.value = null;
    found.value = null;
    aim.value = text;
  });
  seek();
}

/** Takes down what is typed. */
export function typeAim(text: string): void {
  aim.value = text;
  isFound.value = false;
}

/** Looks for ways to what the text says. A worker of its own does it, one question at a time. */
export function seek(): void {
  const text = aim.value;
  if (text === null) return;
  const number = ++last;
  isFound.value = false;
  const tell = (answer: WaysAnswer): void => {
    if (number !== last) return;
    batch(() => {
      found.value = answer;
      isFound.value = aim.value === text;
    });
  };
  hand?.dismiss();
  hand = new Hand(startWorker, {
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
  hand.ask({ kind: 'propose', number, text });
}

/** Goes on with one of the ways as the job. */
export function takeWay(job: JsonObject): void {
  leaveAim();
  openJob(job);
}

/** Puts the aim away. */
export function leaveAim(): void {
  hand?.dismiss();
  hand = null;
  last += 1;
  batch(() => {
    aim.value = null;
    found.value = null;
    isFound.value = true;
  });
}
