import { examine, JobError, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import type { Json } from '../../packages/previewer/page/src/document/json.js';
import { oneCutChanged, Standing } from '../../packages/previewer/page/src/worker/standing.js';

const bore = (id: string, x: number, y: number, more: object = {}) => ({
  id,
  kind: 'bore',
  center: [x, y],
  diameter: 8,
  ...more,
});

const job = (...cuts: readonly object[]): Json =>
  ({
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [80, 40] }, thickness: 10 },
    cuts,
  }) as unknown as Json;

describe('the difference of two jobs', () => {
  it('is a change of one cut where it is', () => {
    const before = job(bore('a', 10, 10), bore('b', 40, 20, { depth: 4 }));
    expect(oneCutChanged(before, job(bore('a', 10, 10), bore('b', 41, 20, { depth: 4 })))).toEqual({
      id: 'b',
      values: { center: [41, 20] },
    });
    expect(oneCutChanged(before, job(bore('a', 10, 10), bore('b', 40, 20)))).toEqual({
      id: 'b',
      values: { depth: undefined },
    });
  });

  it('is none of one cut where more changed, or nothing did, or a name, a kind or the number of cuts', () => {
    const before = job(bore('a', 10, 10), bore('b', 40, 20));
    for (const after of [
      before,
      job(bore('a', 11, 10), bore('b', 41, 20)),
      job(bore('a', 10, 10)),
      job(bore('b', 40, 20), bore('a', 10, 10)),
      job(bore('a', 10, 10), bore('c', 40, 20)),
      job(bore('a', 10, 10), bore('b', 40, 20, { kind: 'annular', wall: 2 })),
      { ...(before as object), units: 'inch' } as Json,
    ]) {
      expect(oneCutChanged(before, after)).toBeNull();
    }
  });
});

describe('the job that stands', () => {
  it('gives the findings that the whole examination gives, move by move', () => {
    const standing = new Standing();
    for (let k = 0; k < 24; k++) {
      const next = job(bore('a', 10, 10), bore('b', 40 + 2.1 * k, 20), bore('c', 60, 20, { depth: 3 }));
      expect(standing.report(next).findings).toEqual(examine(parseJob(next)).findings);
    }
  });

  it('stands as it did where the next job has faults', () => {
    const standing = new Standing();
    const good = job(bore('a', 10, 10));
    standing.report(good);
    expect(() => standing.report(job(bore('a', 10, 10, { diameter: -1 })))).toThrow(JobError);
    const next = job(bore('a', 12, 10));
    expect(standing.report(next).findings).toEqual(examine(parseJob(next)).findings);
  });
});
