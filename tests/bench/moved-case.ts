import { readFileSync } from 'node:fs';
import { type Examiner, examine, examiner, type Job, parseJob, type Report } from '@edgebite/core';
import { firstDifference } from '../jobs/report-difference.js';
import { drawFrom } from '../tools/oracle/random.js';
import type { Figure } from './figures.js';
import { type Effort, type Timing, timed } from './measure.js';
import { sieve } from './problems.js';

/** A job, any cut of which is moved; and how many moves are timed as one: a single one would pay for others' garbage. */
interface MovedCase {
  readonly name: string;
  readonly document: () => unknown;
  /** The longest move along each axis, in the unit of the job. */
  readonly sway: number;
  readonly moves: number;
}

const EXAMPLE = new URL('../../examples/saddle-block.json', import.meta.url);

/** One job with setups, passes and clamps; sixty partial, annular and blind cuts; 2,000 holes with 0.6 mm between them. */
export const MOVED_CASES: readonly MovedCase[] = [
  {
    name: 'examine-demo-moved',
    document: () => JSON.parse(readFileSync(EXAMPLE, 'utf8')) as unknown,
    sway: 0.2,
    moves: 40,
  },
  { name: 'examine-60-moved', document: sixty, sway: 0.2, moves: 40 },
  { name: 'examine-2000-moved', document: sieve, sway: 0.1, moves: 10 },
];

/** Cuts of a job moved one after another, any of them and back, and how much longer it takes to examine the whole job. */
export function movedFigures({ name, document, sway, moves }: MovedCase, effort: Effort): Figure[] {
  const job = parseJob(document());
  const next = moverOf(job, sway);
  const drag = (): Examiner => {
    let bench: Examiner | null = null;
    for (let k = 0; k < moves; k++) bench = next();
    return bench as Examiner;
  };
  let last = job;
  const whole = (): Report => {
    last = next().job;
    return examine(last);
  };
  const [all, anew] = timed([drag, whole], effort) as [Timing, Timing];
  const ours = { wall: all.wall / moves, cpu: all.cpu / moves };
  const bench = drag();
  const right = firstDifference(bench.report, examine(bench.job)) === null;
  if (!right) process.exitCode = 1;
  const names = { case: name, who: 'examine' };
  return [
    { kind: 'time', case: name, who: 'edgebite', ...ours, bare: ours.wall, right },
    { kind: 'ratio', ...names, ratio: (anew.wall - ours.wall) / ours.wall },
    { kind: 'cpu', ...names, ratio: (anew.cpu - ours.cpu) / ours.cpu },
  ];
}

/** Moves a cut at each call, drawn from all that have a centre, to near where it was first. */
function moverOf(job: Job, sway: number): () => Examiner {
  const draw = drawFrom(1);
  const homes = job.document.cuts.flatMap(({ id }) => {
    const cut = job.cuts.find((one) => one.id === id);
    return cut === undefined || cut.kind === 'swept' ? [] : [{ id, home: cut.center }];
  });
  let bench = examiner(job);
  return () => {
    const { id, home } = draw.pick(homes);
    const by = () => draw.between(-sway, sway);
    bench = bench.moved(id, { x: home.x + by(), y: home.y + by() });
    return bench;
  };
}

/** Four rows of fifteen: bites in both long sides, and between them rings and bores, every third one blind. */
function sixty(): unknown {
  const cuts = Array.from({ length: 60 }, (_, k) => ({
    id: `cut ${k + 1}`,
    center: [18 + 18 * (k % 15), [0, 45, 75, 120][Math.floor(k / 15)]],
    diameter: 12 + (k % 4),
    ...(k % 3 === 1 ? { kind: 'annular', wall: 2 } : { kind: 'bore' }),
    ...(k % 3 === 2 ? { depth: 8 + (k % 4) } : {}),
  }));
  const part = { outline: { rectangle: [290, 120], corner: 6 }, thickness: 20, material: 'mild steel' };
  return { edgebite: 1, name: 'Rack for bobbins', units: 'mm', part, limits: { web: 3 }, cuts };
}
