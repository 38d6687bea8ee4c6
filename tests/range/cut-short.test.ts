import { readFileSync } from 'node:fs';
import { parseJob, type RangeQuery, type RangeReport, rangeOf } from '@edgebite/core';
import { drawRange } from '@edgebite/svg';
import { describe, expect, it } from 'vitest';
import { ran } from '../../packages/previewer/fixtures/ran.js';
import { rangeText } from '../../packages/previewer/src/text/range.js';

const document = {
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [120, 60] }, thickness: 12 },
  limits: { web: 3, knifeEdge: 30 },
  cuts: [
    { id: 'own', kind: 'bore', center: [20, 30], diameter: 14 },
    { id: 'a', kind: 'bore', center: [45, 32], diameter: 12 },
    { id: 'b', kind: 'annular', center: [85, 28], diameter: 26, wall: 4 },
  ],
};
const query: RangeQuery = { cut: 'own', along: 'x', from: -5, to: 125 };
const job = parseJob(document);
const whole = rangeOf(job, query);

/** Stopped when it has been asked so often. */
function stopped(times: number): RangeReport {
  let asked = 0;
  return rangeOf(job, query, () => ++asked > times);
}

describe('a range that is stopped', () => {
  it.each([0, 1, 2, 5, 9, 20])(
    'after being asked %i times tells the beginning of the whole answer',
    (times) => {
      const short = stopped(times);
      expect(short.knownTo).toBeLessThan(short.to);
      expect(short.events).toEqual(whole.events.slice(0, short.events.length));
      expect(short.intervals).toHaveLength(short.events.length + 1);
      short.intervals.forEach((interval, k) => {
        const { to, ...rest } = interval;
        const { to: end, ...full } = whole.intervals[k] as (typeof whole.intervals)[number];
        expect(rest).toEqual(full);
        // The last one known may go on; it says no more than it knows.
        if (k < short.events.length) expect(to).toBe(end);
        else {
          expect(to).toBe(short.knownTo);
          expect(to).toBeLessThanOrEqual(end);
        }
      });
    },
  );

  it('knows more the longer it is left, and all of it in the end', () => {
    const known = [0, 5, 20, 60, 10_000].map((times) => stopped(times).knownTo);
    expect(known).toEqual([...known].sort((a, b) => a - b));
    expect(known.at(-1)).toBe(query.to);
    expect(stopped(10_000)).toEqual(whole);
  });

  it('says so first, in words and in the drawing, and nothing of a value that it has not come to', () => {
    const short = stopped(0);
    const text = rangeText(short);
    expect(text.indexOf('CUT SHORT: known up to')).toBeLessThan(text.indexOf('NOW'));
    expect(text).toContain('NOW 20.000: not looked at');
    expect(text).not.toContain('the range comes to the same');
    expect(drawRange(short)).toContain('CUT SHORT');
    expect(rangeText(whole)).not.toContain('CUT SHORT');
    expect(drawRange(whole)).not.toContain('CUT SHORT');
  });

  it('by the command ends with 3 where nothing is known to be safe', async () => {
    const command = (...more: readonly string[]) =>
      ran(
        ['range', '-', '--cut', 'own', '--along', 'x', '--to', '125', ...more],
        '/',
        JSON.stringify(document),
      );
    // It misses the part there, which is not safe.
    const none = await command('--from', '-30', '--seconds', '0');
    expect(none.out).toContain('CUT SHORT');
    expect(none.code).toBe(3);
    const all = await command('--from', '-5', '--seconds', '100', '--json');
    expect(JSON.parse(all.out)).toEqual(JSON.parse(JSON.stringify(whole)));
    expect((await command('--from', '-5', '--seconds', 'soon')).code).toBe(2);
  });
});

describe('a range of a part with tools, passes, setups and jaws that is stopped', () => {
  const url = new URL('../../examples/saddle-block.json', import.meta.url);
  const saddle = parseJob(readFileSync(url, 'utf8'));
  // Where a job has tools or jaws, other dangers are looked for in whole reports.
  const asking: RangeQuery = { cut: 'rest-ring', along: 'y', from: 20, to: 22.4 };

  it('says of an interval whether it is safe only if all was asked', () => {
    let all = 0;
    const full = rangeOf(saddle, asking, () => {
      all += 1;
      return false;
    });
    expect(full.intervals.length).toBeGreaterThan(1);
    for (const times of [0, Math.floor(all / 3), all - 1]) {
      let asked = 0;
      const short = rangeOf(saddle, asking, () => ++asked > times);
      expect(short.knownTo).toBeLessThan(full.knownTo);
      expect(short.events).toEqual(full.events.slice(0, short.events.length));
      short.intervals.forEach(({ to: _, ...known }, k) => {
        const { to: _end, ...whole } = full.intervals[k] as (typeof full.intervals)[number];
        expect(known).toEqual(whole);
      });
    }
  });
});
