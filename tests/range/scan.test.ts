import { parseJob, type RangeReport, rangeOf } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { longRun, runs } from '../tools/runs.js';
import { drawnCases, looseCases } from './range-jobs.js';
import { checkAnswer, checkRange } from './range-scan.js';

/** Steps of the scan that the answers are compared with. */
const STEPS = longRun() ? 10_000 : 60;

describe('a range of one number of a cut has the events of a dense scan and no others', () => {
  it.each([
    ['numbers that have nothing to do with each other', looseCases],
    ['numbers as on a drawing, that touch and line up', drawnCases],
  ])('%s', (_, cases) => {
    fc.assert(
      fc.property(cases, ({ document, query }) => {
        // It throws what the scan has that the answer has not, or the other way round.
        expect(() => checkRange(parseJob(document), query, STEPS)).not.toThrow();
      }),
      { numRuns: runs(1) },
    );
  });
});

describe('a wrong answer is found by the scan', () => {
  const job = parseJob({
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [100, 60] }, thickness: 12 },
    limits: { web: 2, knifeEdge: 30 },
    resolution: 0.1,
    cuts: [{ id: 'hole', kind: 'bore', center: [50, 20], diameter: 16 }],
  });
  const query = { cut: 'hole', along: 'y', from: -20, to: 30 } as const;
  const answer = rangeOf(job, query);
  const check = (other: RangeReport) => checkAnswer(other, job, query, STEPS);

  /** The answer with its events at other places. */
  const withPlaces = (places: readonly number[]): RangeReport => {
    const ends = [query.from, ...places, query.to];
    return {
      ...answer,
      events: answer.events.map((event, k) => ({ ...event, at: places[k] as number })),
      intervals: answer.intervals.map((interval, k) => ({
        ...interval,
        from: ends[k] as number,
        to: ends[k + 1] as number,
      })),
    };
  };
  it('and a web that slips off the end of an edge is one where the centre is square to it', () => {
    const other = parseJob({
      ...job.document,
      part: { outline: { rectangle: [100, 60], corner: 14 }, thickness: 12 },
      cuts: [{ id: 'hole', kind: 'bore', center: [20, 11.5], diameter: 20 }],
    });
    const { changes } = checkRange(other, { cut: 'hole', along: 'x', from: 13.1, to: 40 }, STEPS);
    expect(changes.map(({ by }) => by)).toEqual(['slip']);
  });

  const places = answer.events.map(({ at }) => at);

  it('and a right one is not', () => {
    expect(check(withPlaces(places)).changes.map(({ by }) => by)).toEqual(
      expect.arrayContaining(['graze', 'report', 'touch']),
    );
  });

  it.each(places.map((_, k) => k))('if event %i is off by two billionths of the range', (k) => {
    const off = places.map((at, n) => (n === k ? at + 2e-9 * (query.to - query.from) : at));
    expect(() => check(withPlaces(off))).toThrow('no event is there');
  });

  it('if an event is missing, or one too many', () => {
    const [first, second, ...rest] = answer.intervals;
    if (first === undefined || second === undefined) throw new Error('an answer without events');
    const missing = {
      ...answer,
      events: answer.events.slice(1),
      intervals: [{ ...first, to: second.to }, ...rest],
    };
    expect(() => check(missing)).toThrow();
    const events = [{ at: -15, changes: [] }, ...answer.events];
    const intervals = [{ ...first, to: -15 }, { ...first, from: -15 }, second, ...rest];
    expect(() => check({ ...answer, events, intervals })).toThrow('nothing changes at the event -15');
  });
});
