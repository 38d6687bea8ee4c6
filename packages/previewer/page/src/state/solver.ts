import type { Report } from '@edgebite/core';
import type { Answer, Outcome, Question } from '../worker/messages.js';
import type { Json, JsonObject } from './json.js';

/** What the solver tells its owner. */
export interface Told {
  readonly onSchema: (schema: JsonObject) => void;
  /** An outcome, with the number of the job that it is for. A newer job may have been handed over meanwhile. */
  readonly onOutcome: (number: number, outcome: Outcome) => void;
}

/** A job that takes longer than this, in milliseconds, is given up as soon as there is a newer one. */
const PATIENCE = 2000;

type Examine = Extract<Question, { kind: 'examine' }>;
type Opened = Extract<Answer, { kind: 'opened' }>;

/**
 * Works jobs out in a worker, one at a time. Jobs that are handed over meanwhile replace each other, so the worker
 * never falls behind the hand. Every outcome comes with its job's number, so that an old one is known as such.
 */
export class Solver {
  #worker: Worker;
  #number = 0;
  #busy: { readonly number: number; readonly since: number } | null = null;
  #waiting: Examine | null = null;
  #impatience: ReturnType<typeof setTimeout> | undefined;
  readonly #reports = new Map<number, (report: Report | null) => void>();
  readonly #files = new Map<number, (opened: Opened) => void>();

  constructor(
    private readonly told: Told,
    private readonly start: () => Worker,
  ) {
    this.#worker = this.#started();
  }

  /** Hands over the newest job; returns its number. */
  examine(job: Json): number {
    this.#number++;
    const question: Examine = { kind: 'examine', number: this.#number, job };
    if (this.#busy === null) this.#ask(question);
    else {
      this.#waiting = question;
      this.#watch();
    }
    return this.#number;
  }

  /** The whole report on a job with all its shapes; null if the job has faults. */
  report(job: Json): Promise<Report | null> {
    const number = ++this.#number;
    return new Promise((resolve) => {
      this.#reports.set(number, resolve);
      this.#worker.postMessage({ kind: 'report', number, job } satisfies Question);
    });
  }

  /** The job that a text holds, with its faults. */
  open(text: string): Promise<Opened> {
    const number = ++this.#number;
    return new Promise((resolve) => {
      this.#files.set(number, resolve);
      this.#worker.postMessage({ kind: 'open', number, text } satisfies Question);
    });
  }

  #ask(question: Examine): void {
    this.#busy = { number: question.number, since: performance.now() };
    this.#waiting = null;
    this.#worker.postMessage(question);
  }

  #next(): void {
    clearTimeout(this.#impatience);
    this.#impatience = undefined;
    this.#busy = null;
    if (this.#waiting !== null) this.#ask(this.#waiting);
  }

  // A job too large to wait for is dropped together with its worker: there is no other way to stop one.
  #watch(): void {
    if (this.#impatience !== undefined || this.#busy === null) return;
    const left = PATIENCE - (performance.now() - this.#busy.since);
    this.#impatience = setTimeout(() => {
      this.#worker.terminate();
      this.#giveUp();
      this.#worker = this.#started();
      this.#next();
    }, left);
  }

  #giveUp(): void {
    for (const resolve of this.#reports.values()) resolve(null);
    this.#reports.clear();
    for (const [number, resolve] of this.#files) {
      const issues = [{ path: '', message: 'was given up, since another job took too long; open it again' }];
      resolve({ kind: 'opened', number, job: null, issues });
    }
    this.#files.clear();
  }

  #started(): Worker {
    const worker = this.start();
    worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => this.#hear(data));
    worker.addEventListener('error', ({ message }) => this.#failed(message));
    return worker;
  }

  // A worker that broke off answers no more, and the page must not wait for it.
  #failed(message: string): void {
    const words = `could not be worked out; this is a fault in edgebite: ${message}`;
    const issues = [{ path: '', message: words }];
    const number = this.#busy?.number;
    this.#giveUp();
    this.#next();
    if (number !== undefined) this.told.onOutcome(number, { summary: null, sketch: null, issues });
  }

  #hear(answer: Answer): void {
    switch (answer.kind) {
      case 'schema':
        this.told.onSchema(answer.schema);
        return;
      case 'report':
        this.#reports.get(answer.number)?.(answer.report);
        this.#reports.delete(answer.number);
        return;
      // A range is asked of a worker of its own.
      case 'range':
        return;
      case 'opened':
        this.#files.get(answer.number)?.(answer);
        this.#files.delete(answer.number);
        return;
      case 'examined':
        // The next job is on its way before this outcome is drawn, so the two go on side by side.
        this.#next();
        this.told.onOutcome(answer.number, answer.outcome);
    }
  }
}
