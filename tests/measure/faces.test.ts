import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/*
 * A plate 100 by 40 of which the left end is rounded as a drawing program writes it: by facets of about 0.6. Of very
 * many faces the longest are told: those on which a gauge stands.
 */

const FACETS = 100;

const round = Array.from({ length: FACETS - 1 }, (_, k) => {
  const angle = Math.PI / 2 + (Math.PI * (k + 1)) / FACETS;
  return [20 + 20 * Math.cos(angle), 20 + 20 * Math.sin(angle)];
});

function waysOf(center: readonly [number, number]) {
  const points = [[20, 0], [100, 0], [100, 40], [20, 40], ...round];
  const svgPath = `M ${points.map((at) => at.join(' ')).join(' L ')} Z`;
  const report = examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { svgPath }, thickness: 10 },
      cuts: [{ id: 'a', kind: 'bore', center, diameter: 16 }],
    }),
  );
  return report.checks[0]?.ways ?? [];
}

describe('an arc in a part of many facets', () => {
  it('is measured from the face that it opens, and to the one across', () => {
    // 3 inside the back face: 11 deep, and 40 - 11 left to the front one.
    const ways = waysOf([70, 37]);
    const readings = (kind: string) => ways.filter((way) => way.kind === kind).map(({ reading }) => reading);
    expect(readings('depth')).toContainEqual(expect.closeTo(11, 9));
    expect(readings('left')).toContainEqual(expect.closeTo(29, 9));
  });
});
