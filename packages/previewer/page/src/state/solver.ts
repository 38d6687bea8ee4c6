import type { JobIssue, Report } from '@edgebite/core';
import type { Json, JsonObject } from '../document/json.js';
import type { Answer, Outcome, Question } from '../worker/messages.js';
import type { Found, OutlineAnswer } from '../worker/outline.js';
import { type Patch, patched, patchOf } from '../worker/patch.js';
import { Hand, type StartWorker } from './hand.js';

/** What the solver tells its owner. */
export interface Told {
  readonly onSchemas: (ofJobs: JsonObject, ofAims: JsonObject) => void;
  /** An outcome, with the number of the job that it is for. A newer job may have been handed over meanwhile. */
  readonly onOutcome: (number: number, outcome: Outcome) => void;
  /** No worker can be started here, so nothing will be worked out: why, in words. */
  readonly onStuck: (why: string) => void;
}

/** A job that takes longer than this, in milliseconds, is given up as soon as there is a newer one. */
const PATIENCE = 2000;

/** A job to be worked out. */
interface Examine {
  readonly number: number;
  readonly job: Json;
  readonly opened: boolean;
}

type Opened = Extract<Answer, { kind: 'opened' }>;

/**
 * Works jobs out in a worker, one at a time. Jobs that are handed over meanwhile replace each other, so the worker
 * never falls behind the hand. Every outcome comes with its job's number, so that an old one is known as such.
 * Whole reports are made by a second worker, and each file is read by one of its own, so that nothing waits for them.
 */
export class Solver {
  #examiner: Hand | null = null;
  #reporter: Hand | null = null;
  #number = 0;
  #busy: { readonly number: number; readonly since: number } | null = null;
  #waiting: Examine | null = null;
  /** The last job that the examiner was handed, and its last outcome: it is told what changed, and tells that. */
  #handed: Json = null;
  #outcome: Outcome | null = null;
  #impatience: ReturnType<typeof setTimeout> | undefined;
  readonly #reports = new Map<number, (report: Report | null) => void>();

  constructor(
    private readonly told: Told,
    private readonly start: StartWorker,
  ) {
    this.#examiner = this.#newExaminer();
  }

  /** Hands over the newest job; returns its number. One that is opened waits for no other. */
  examine(job: Json, opened: boolean): number {
    this.#number++;
    const question: Examine = { number: this.#number, job, opened };
    if (this.#busy === null) this.#ask(question);
    else {
      this.#waiting = question;
      if (opened) this.#drop();
      else this.#watch();
    }
    return this.#number;
  }

  /** The whole report on a job with all its shapes; null if the job has faults. */
  report(job: Json): Promise<Report | null> {
    const number = ++this.#number;
    return new Promise((resolve) => {
      this.#reports.set(number, resolve);
      this.#reporter ??= this.#newReporter();
      this.#reporter.ask({ kind: 'report', number, job });
    });
  }

  /** The job that a text holds, with its faults. */
  open(text: string): Promise<Opened> {
    const number = ++this.#number;
    return new Promise((resolve) => {
      this.#once({ kind: 'open', number, text }, (answer) => {
        if ('fault' in answer) {
          resolve({ kind: 'opened', number, job: null, isAim: false, issues: [faultOf(answer.fault)] });
        } else if (answer.kind === 'opened') resolve(answer);
      });
    });
  }

  /** The outline that was found in a file, as a job has it. */
  outline(found: Found): Promise<OutlineAnswer> {
    return new Promise((resolve) => {
      this.#once({ kind: 'outline', number: ++this.#number, found }, (answer) => {
        if ('fault' in answer) resolve({ drawn: null, fault: faultOf(answer.fault).message });
        else if (answer.kind === 'outline') resolve(answer.outline);
      });
    });
  }

  /** Asks a worker that is let go once it has answered. */
  #once(question: Question, hear: (answer: Answer | { readonly fault: string }) => void): void {
    const reader = new Hand(this.start, {
      onAnswer: (answer) => {
        // What it says unasked comes first.
        if (answer.kind === 'schema') return;
        reader.dismiss();
        hear(answer);
      },
      onEnd: (fault) => hear({ fault }),
    });
    reader.ask(question);
  }

  #ask({ number, job, opened }: Examine): void {
    this.#busy = { number, since: performance.now() };
    this.#waiting = null;
    this.#examiner ??= this.#newExaminer();
    this.#examiner.ask({ kind: 'examine', number, change: this.#changeTo(job, opened) });
  }

  // A job that is opened has nothing of the one before it, so that it is not looked for.
  #changeTo(job: Json, opened: boolean): Patch | null {
    const before = this.#handed;
    this.#handed = job;
    return opened ? { whole: job } : patchOf(before, job);
  }

  #next(): void {
    clearTimeout(this.#impatience);
    this.#impatience = undefined;
    this.#busy = null;
    if (this.#waiting !== null) this.#ask(this.#waiting);
  }

  #watch(): void {
    if (this.#impatience !== undefined || this.#busy === null) return;
    const left = PATIENCE - (performance.now() - this.#busy.since);
    this.#impatience = setTimeout(() => this.#drop(), left);
  }

  // A job too large to wait for is dropped together with its worker: there is no other way to stop one.
  #drop(): void {
    this.#examiner?.dismiss();
    this.#examiner = null;
    this.#next();
  }

  #newExaminer(): Hand {
    this.#handed = null;
    this.#outcome = null;
    return new Hand(this.start, {
      onAnswer: (answer) => {
        if (answer.kind === 'schema') this.told.onSchemas(answer.schema, answer.aimSchema);
        if (answer.kind !== 'examined') return;
        // The next job is on its way before this outcome is drawn, so the two go on side by side.
        this.#next();
        const outcome = patched(this.#outcome, answer.change) as Outcome;
        this.#outcome = outcome;
        this.told.onOutcome(answer.number, outcome);
      },
      onEnd: (why, started) => {
        this.#examiner = null;
        if (!started) return this.told.onStuck(why);
        const number = this.#busy?.number;
        this.#next();
        const issues = [faultOf(why)];
        if (number !== undefined) this.told.onOutcome(number, { summary: null, sketch: null, issues });
      },
    });
  }

  #newReporter(): Hand {
    return new Hand(this.start, {
      onAnswer: (answer) => {
        if (answer.kind !== 'report') return;
        this.#reports.get(answer.number)?.(answer.report);
        this.#reports.delete(answer.number);
      },
      onEnd: () => {
        this.#reporter = null;
        for (const resolve of this.#reports.values()) resolve(null);
        this.#reports.clear();
      },
    });
  }
}

function faultOf(why: string): JobIssue {
  return { path: '', message: `could not be worked out: ${why}` };
}
