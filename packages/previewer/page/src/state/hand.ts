import type { Answer, Question } from '../worker/messages.js';

/** Starts a worker; may throw where the browser lets none be started. */
export type StartWorker = () => Worker;

/** What a hand tells its owner. */
export interface Heard {
  readonly onAnswer: (answer: Answer) => void;
  /** It broke off and answers no more: why, and whether it ever ran. */
  readonly onEnd: (why: string, started: boolean) => void;
}

/** One worker. Whoever waits for its answer is told as well if there will be none. */
export class Hand {
  #worker: Worker | null = null;
  #started = false;

  constructor(
    start: StartWorker,
    private readonly heard: Heard,
  ) {
    try {
      this.#worker = start();
    } catch (error) {
      this.#end(error instanceof Error ? error.message : String(error));
      return;
    }
    this.#worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
      this.#started = true;
      heard.onAnswer(data);
    });
    this.#worker.addEventListener('error', (event) => {
      event.preventDefault();
      // A worker whose text does not load ends without a message.
      this.#end(event.message);
    });
  }

  ask(question: Question): void {
    this.#worker?.postMessage(question);
  }

  /** Stops it, whatever it is at. Nothing more is heard of it. */
  dismiss(): void {
    this.#worker?.terminate();
    this.#worker = null;
  }

  // Its owner is told once it has it, even where it never started.
  #end(message: string | undefined): void {
    this.dismiss();
    const why = this.#started
      ? `this is a fault in edgebite: ${message ?? 'its worker broke off'}`
      : `the worker of this page did not start${message === undefined || message === '' ? '' : ` (${message})`}`;
    queueMicrotask(() => this.heard.onEnd(why, this.#started));
  }
}
