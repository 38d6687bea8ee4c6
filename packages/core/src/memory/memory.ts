/*
 * Room: what was worked out for a job, kept for the next job that is nearly the same; constants made when first asked for.
 * In: what a figure is worked out from.
 * Out: the figure, from last time where all that is the same.
 */

import { isAlike } from './alike.js';

/** What was worked out last time. */
export interface Memory {
  /**
   * What `make` gives; where it was asked for at the same place last time, from the very same things, what it gave then.
   * It has to depend on nothing else.
   */
  of<T>(place: string, from: readonly unknown[], make: () => T): T;
  /** The value that was at the same place last time, where it is alike all the way down; else the given one. */
  same<T>(place: string, value: T): T;
  /** The same memory for a part of the work, whose places have names of their own. */
  within(part: string): Memory;
}

/** Of a job that is examined once. */
export const forgetful: Memory = {
  of: (_place, _from, make) => make(),
  same: (_place, value) => value,
  within: () => forgetful,
};

interface Known {
  readonly from: readonly unknown[];
  readonly value: unknown;
}

/** The memory of jobs that are examined one after another. */
export class RunningMemory implements Memory {
  #before = new Map<string, Known>();
  #now = new Map<string, Known>();

  /** To be called before each job: what the job before the last asked for and the last did not is forgotten. */
  next(): void {
    this.#before = this.#now;
    this.#now = new Map();
  }

  of<T>(place: string, from: readonly unknown[], make: () => T): T {
    const known = this.#at(place);
    const kept = known !== undefined && areSame(known.from, from) ? known : { from, value: make() };
    this.#now.set(place, kept);
    return kept.value as T;
  }

  same<T>(place: string, value: T): T {
    const known = this.#at(place);
    const kept = known !== undefined && isAlike(known.value, value) ? known : { from: [], value };
    this.#now.set(place, kept);
    return kept.value as T;
  }

  within(part: string): Memory {
    const name = (place: string) => `${part}: ${place}`;
    return {
      of: (place, from, make) => this.of(name(place), from, make),
      same: (place, value) => this.same(name(place), value),
      within: (inner) => this.within(name(inner)),
    };
  }

  #at(place: string): Known | undefined {
    return this.#now.get(place) ?? this.#before.get(place);
  }
}

function areSame(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((value, k) => Object.is(value, b[k]));
}
