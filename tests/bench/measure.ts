import { Bench } from 'tinybench';

/** What one side of a comparison took, in milliseconds a call: medians over the rounds. */
export interface Timing {
  /**
   * By the clock, a turn's mean: where other programs share the processor, a short call often comes through between
   * two interruptions and a long one never does, so medians over single calls would favour short ones.
   */
  readonly wall: number;
  /** User and system time of the whole process, so that garbage collection and compilation count too. */
  readonly cpu: number;
}

/** How much to measure. */
export interface Effort {
  /** How often each side gets its turn. */
  readonly rounds: number;
  /** Milliseconds that a turn should last at least. */
  readonly turn: number;
  /** Milliseconds of running in, before anything counts. */
  readonly warmUp: number;
}

export const FULL: Effort = { rounds: 15, turn: 40, warmUp: 400 };
export const QUICK: Effort = { rounds: 5, turn: 20, warmUp: 150 };

/** Calls that take longer than this get fewer rounds, but never under the fewest. */
const LONG = 200;
const FEWEST_ROUNDS = 3;

/** Most calls in a turn. */
const MOST_CALLS = 5000;

interface Plan {
  readonly work: () => unknown;
  readonly calls: number;
  readonly rounds: number;
  readonly walls: number[];
  readonly cpus: number[];
}

/**
 * Runs works in turn, round by round: on a shared machine a slow minute then falls on all of them alike, and the
 * medians can be compared. Each turn is a run of tinybench.
 */
export function timed(works: readonly (() => unknown)[], effort: Effort): Timing[] {
  const plans = works.map((work) => planFor(work, effort));
  for (let round = 0; round < effort.rounds; round += 1) {
    plans.forEach((_, k) => {
      // Another one begins each time, so that none always follows the same neighbour.
      const plan = plans[(k + round) % plans.length] as Plan;
      if (round < plan.rounds) turn(plan);
    });
  }
  return plans.map(({ walls, cpus }) => ({ wall: median(walls), cpu: median(cpus) }));
}

function planFor(work: () => unknown, { rounds, turn: least, warmUp }: Effort): Plan {
  const began = performance.now();
  let calls = 0;
  let last = began;
  let fastest = Infinity;
  do {
    work();
    const now = performance.now();
    fastest = Math.min(fastest, now - last);
    last = now;
    calls += 1;
  } while (last - began < warmUp || calls < 2);
  return {
    work,
    calls: Math.min(MOST_CALLS, Math.max(1, Math.ceil(least / fastest))),
    rounds: Math.max(Math.min(rounds, FEWEST_ROUNDS), Math.round(rounds * Math.min(1, LONG / fastest))),
    walls: [],
    cpus: [],
  };
}

function turn({ work, calls, walls, cpus }: Plan): void {
  const bench = new Bench({ iterations: calls, time: 0, warmup: false, throws: true });
  let before = process.cpuUsage();
  let used = { user: 0, system: 0 };
  bench.add('turn', work, {
    async: false,
    beforeAll: () => {
      before = process.cpuUsage();
    },
    afterAll: () => {
      used = process.cpuUsage(before);
    },
  });
  bench.runSync();
  const result = bench.tasks[0]?.result;
  if (result?.state !== 'completed') throw new Error(`measure: tinybench ended as ${result?.state}`);
  walls.push(result.latency.mean);
  cpus.push((used.user + used.system) / 1000 / calls);
}

/** The middle one of some numbers; the mean of the middle two of an even number. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half];
  if (upper === undefined) throw new RangeError('median: no values');
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[half - 1] as number)) / 2;
}
