import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { longRun } from '../../tools/runs.js';
import type { ToldReport, ToldStand } from './compare/told.js';
import { alongJob } from './made/along.js';
import { lieOf, partOf } from './sim/job.js';
import { drawn, type Lie, laid } from './sim/lie.js';
import type { Place } from './sim/shapes.js';

/*
 * Cuts that follow an outline, held against the outline itself as it lies on the table: how far off the tool's centre is,
 * and on which side of its way the metal lies. A spindle that turns clockwise seen from above climbs where the metal is to
 * the right of the way: a tooth there moves against the feed and leaves the metal thin. Common practice, no source.
 */

const JOBS = longRun() ? 500 : 25;

/** The places that the way comes to along the outline, and the one before each. */
function wayOf(report: ToldReport, k: number): [ToldStand, ToldStand][] {
  const stands = report.steps[k]?.stands ?? [];
  return stands.flatMap((stand, n): [ToldStand, ToldStand][] => {
    const last = stands[n - 1];
    return stand.what === 'path' && last !== undefined ? [[last, stand]] : [];
  });
}

/** How the way runs where it comes to a place, on the table; the readout tells of arcs to half a step of it. */
function directionAt([last, { at, readout, arc }]: [ToldStand, ToldStand], lie: Lie): Place {
  const [a, b] = [laid(lie, last.at), laid(lie, at)];
  const [dx, dy] =
    arc === null
      ? [b[0] - a[0], b[1] - a[1]]
      : arc.sense === 'counter-clockwise'
        ? [arc.center[1] - readout[1], readout[0] - arc.center[0]]
        : [readout[1] - arc.center[1], arc.center[0] - readout[0]];
  const length = Math.hypot(dx, dy);
  return [dx / length, dy / length];
}

describe('a cut that follows the outline', () => {
  it.each(Array.from({ length: JOBS }, (_, k) => k))('stays off it and mills as it says: job %i', (seed) => {
    const { job, following } = alongJob(seed);
    const report = examine(parseJob(job)) as unknown as ToldReport;
    following.forEach(({ id, diameter, allowance, milling }, k) => {
      const step = report.steps.findIndex(({ cut }) => cut === id);
      const off = diameter / 2 + allowance;
      const way = wayOf(report, step);
      expect(way.length, id).toBeGreaterThan(0);
      for (const [, { at }] of way) expect(-partOf(job)(...at), id).toBeCloseTo(off, 6);
      // A little to the right of the way one is nearer to the metal than a little to the left, or the other way round.
      const lie = lieOf(job.setups?.[k]);
      for (const [last, stand] of way) {
        if (Math.hypot(last.at[0] - stand.at[0], last.at[1] - stand.at[1]) < 0.1) continue;
        const [dx, dy] = directionAt([last, stand], lie);
        const [x, y] = laid(lie, stand.at);
        const seen = (by: number) => partOf(job)(...drawn(lie, [x + by * dy, y - by * dx]));
        const found = seen(off / 4) > seen(-off / 4) ? 'climb' : 'conventional';
        expect(found, `${id} to ${stand.at}`).toBe(milling);
      }
      expect(report.steps[step]?.milling).toBe(milling);
    });
  });
});
