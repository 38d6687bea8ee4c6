import { examine, parseJob, rangeOf } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import type { JsonObject } from '../../packages/previewer/page/src/document/json.js';
import { alongsOf, spanOf } from '../../packages/previewer/page/src/panels/spans.js';
import { workedOf } from '../../packages/previewer/page/src/worker/worked.js';
import { placed } from '../browser/placed.js';

describe('the range that suggests itself', () => {
  const ring = { id: 'ring', kind: 'annular', center: [20, 26], diameter: 12, wall: 4 };
  const job = parseJob({ ...placed, cuts: [...placed.cuts, ring] });
  const report = examine(job);
  const cuts = [...placed.cuts, ring] as unknown as readonly JsonObject[];

  it('can be asked for, and has the present value in its middle', () => {
    for (const [k, cut] of cuts.entries()) {
      const worked = workedOf(report, report.cuts[k] as (typeof report.cuts)[number]);
      for (const along of alongsOf(cut)) {
        const [from, to] = spanOf(along, cut, worked, 0.005);
        const { now } = rangeOf(job, { cut: String(cut.id), along, from, to });
        expect(from, `${cut.id} ${along}`).toBeLessThan(now);
        expect(to, `${cut.id} ${along}`).toBeGreaterThan(now);
        if (along !== 'diameter') expect(Math.abs((from + to) / 2 - now)).toBeLessThanOrEqual(0.005);
      }
    }
  });

  it('leaves the tool of a path as it is, and a cutter its core', () => {
    expect(alongsOf({ kind: 'swept' })).toEqual(['x', 'y']);
    const worked = workedOf(report, report.cuts.at(-1) as (typeof report.cuts)[number]);
    expect(spanOf('diameter', ring as unknown as JsonObject, worked, 0.005)).toEqual([8.4, 18]);
  });
});
