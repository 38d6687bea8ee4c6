import { examine, type JobDocument, parseJob, reportSchema } from '@edgebite/core';
import { expect, it } from 'vitest';

it('nothing is loose once all that came loose is taken, and never less than nothing', () => {
  // Four slugs come loose, and four bores take them: sums in another order leave a last digit behind.
  const seats = [22.7, 60.8, 98.9, 137];
  const at = (x: number): [number, number] => [x, -2.3];
  const job: JobDocument = {
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [160, 32] }, thickness: 12 },
    cuts: [
      ...seats.map((x, k) => ({
        id: `ring ${k}`,
        kind: 'annular' as const,
        center: at(x),
        diameter: 20,
        wall: 3,
      })),
      ...seats.map((x, k) => ({ id: `seat ${k}`, kind: 'bore' as const, center: at(x), diameter: 21.5 })),
    ],
  };
  const report = examine(parseJob(job));
  const loose = report.steps.map(({ volumes }) => volumes.loose);
  expect(loose[3]).toBeGreaterThan(1000);
  expect(loose.at(-1)).toBe(0);
  expect(reportSchema.safeParse(report).success).toBe(true);
});
