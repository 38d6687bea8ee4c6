import { type CutDocument, examine, type JobDocument, JobError, parseJob } from '@edgebite/core';
import { jobDocumentsWithSetup } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';

/*
 * Repeats against cuts written out by hand: whole numbers, whole steps and quarter turns, so that every coordinate is a
 * whole number too, and both jobs have to come to one report, to the last digit. The places are worked out here with
 * matrices of whole numbers.
 */

type Repeat = NonNullable<JobDocument['repeat']>[number];
type Pair = readonly [number, number];

/** x' = a x + b y + e, y' = c x + d y + f. */
type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

const QUARTERS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

function about([x, y]: Pair, a: number, b: number, c: number, d: number): Matrix {
  return [a, b, c, d, x - a * x - b * y, y - c * x - d * y];
}

function matricesOf(repeat: Repeat): Matrix[] {
  if ('row' in repeat) {
    const { row } = repeat;
    const [x, y] = 'step' in row ? row.step : [0, 0];
    return Array.from({ length: row.count }, (_, k) => [1, 0, 0, 1, k * x, k * y]);
  }
  if ('round' in repeat) {
    const { center, turn = 0, count } = repeat.round;
    return Array.from({ length: count }, (_, k) => {
      const [cos, sin] = QUARTERS[((((k * turn) / 90) % 4) + 4) % 4] as Pair;
      return about(center, cos, -sin, sin, cos);
    });
  }
  const { mirror } = repeat;
  const still: Matrix = [1, 0, 0, 1, 0, 0];
  if ('x' in mirror) return [still, [-1, 0, 0, 1, 2 * mirror.x, 0]];
  return [still, [1, 0, 0, -1, 0, 'y' in mirror ? 2 * mirror.y : 0]];
}

function at([a, b, c, d, e, f]: Matrix, [x, y]: Pair): [number, number] {
  return [a * x + b * y + e, c * x + d * y + f];
}

function cutAt(cut: CutDocument, matrices: readonly Matrix[], id: string): CutDocument {
  const place = (p: Pair) => matrices.reduce<Pair>((q, m) => at(m, q), p) as [number, number];
  if (cut.kind !== 'swept') return { ...cut, id, center: place(cut.center as Pair) };
  const edges = 'edges' in cut.path ? cut.path.edges : [];
  const [line] = edges;
  const [a, b] = [place(line?.a ?? [0, 0]), place(line?.b ?? [0, 0])];
  const isOver = matrices.filter(([p, q, r, s]) => p * s - q * r < 0).length % 2 === 1;
  return { ...cut, id, path: { edges: [{ kind: 'line', ...(isOver ? { a: b, b: a } : { a, b }) }] } };
}

/** Every cut at all its places, one cut after another. */
function cutByCut(cuts: readonly CutDocument[], repeats: readonly Repeat[]): CutDocument[][] {
  return cuts.map((cut) => {
    const own = repeats.filter((repeat) => repeat.cuts.includes(cut.id));
    const ways = own.reduce<Matrix[][]>(
      (before, repeat) => matricesOf(repeat).flatMap((matrix) => before.map((way) => [...way, matrix])),
      [[]],
    );
    return ways.map((way, k) => cutAt(cut, way, own.length === 0 ? cut.id : `${cut.id} ${k + 1}`));
  });
}

function withoutRepeats(job: JobDocument): JobDocument {
  const { repeat = [], ...rest } = job;
  const groups = cutByCut(job.cuts, repeat);
  const [first] = repeat;
  const isByPlace = first?.order === 'place by place';
  const cuts = isByPlace
    ? (groups[0] ?? []).flatMap((_, k) => groups.map((group) => group[k] as CutDocument))
    : groups.flat();
  return {
    ...rest,
    cuts,
    setups: job.setups?.map((one) => ({ ...one, cuts: cuts.map(({ id }) => id) })),
  } as JobDocument;
}

const whole = (min: number, max: number) => fc.integer({ min, max });
const pairs = fc.tuple(whole(-40, 40), whole(-40, 40));

const ways: fc.Arbitrary<Pick<Extract<Repeat, { row: unknown }>, 'row'> | object> = fc.oneof(
  fc.record({ row: fc.record({ step: pairs.filter(([x, y]) => x !== 0 || y !== 0), count: whole(2, 4) }) }),
  fc.record({ round: fc.record({ center: pairs, turn: fc.constantFrom(90, -90, 180), count: whole(2, 4) }) }),
  fc.record({ mirror: fc.oneof(fc.record({ x: whole(-40, 80) }), fc.record({ y: whole(-40, 80) })) }),
);

const jobs: fc.Arbitrary<JobDocument> = jobDocumentsWithSetup.chain((job) => {
  const ids = job.cuts.map(({ id }) => id);
  const some = fc
    .shuffledSubarray(ids, { minLength: 1 })
    .chain((cuts) => ways.map((way) => ({ cuts, ...way })));
  const all = ways.map((way) => [{ cuts: ids, order: 'place by place', ...way }]);
  return fc
    .oneof(fc.array(some, { minLength: 1, maxLength: 2 }), all)
    .map((repeat) => ({ ...job, repeat }) as JobDocument);
});

const reported = (job: JobDocument): unknown => JSON.parse(JSON.stringify(examine(parseJob(job))));

describe('cuts written once', () => {
  it('report the same as those written out, for random groups', () => {
    let compared = 0;
    fc.assert(
      fc.property(jobs, (job) => {
        const out = withoutRepeats(job);
        try {
          parseJob(job);
        } catch (error) {
          // Copies on top of each other are refused, and nothing else of these jobs is.
          expect(error).toBeInstanceOf(JobError);
          for (const { message } of (error as JobError).issues) expect(message).toMatch(/^puts "/);
          const places = out.cuts.map((cut) =>
            JSON.stringify([cut.id.replace(/ \d+$/, ''), 'center' in cut && cut.center]),
          );
          expect(new Set(places).size).toBeLessThan(places.length);
          return;
        }
        expect(reported(job)).toEqual(reported(out));
        compared += 1;
      }),
      { numRuns: runs(60) },
    );
    expect(compared).toBeGreaterThan(runs(60) / 2);
  });
});
