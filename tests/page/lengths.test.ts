import { jobJsonSchema } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import type { Json, JsonObject } from '../../packages/previewer/page/src/document/json.js';
import { concerned, converted } from '../../packages/previewer/page/src/form/lengths.js';

const root = jobJsonSchema() as JsonObject;

/** The same part in both units. An inch is 25.4 mm (1959 agreement), so these are exact. */
const jobIn = (units: 'mm' | 'inch', inch: number): JsonObject => ({
  edgebite: 1,
  units,
  part: {
    outline: {
      svgPath: `M0 0 H${4 * inch} V${2 * inch} A${inch} ${inch} 0 0 1 ${3 * inch} ${3 * inch} H0 Z`,
    },
    thickness: inch / 2,
  },
  limits: { web: inch / 8, knifeEdge: 30 },
  setups: [
    {
      id: 's',
      turn: 90,
      zero: {
        x: [{ touch: 'left', tip: inch / 4, reads: 0 }],
        y: [{ touch: 'front', tip: 2 * inch, units: 'inch', reads: 0 }],
      },
      cuts: ['a'],
    },
  ],
  cuts: [{ id: 'a', kind: 'bore', center: [inch, 2 * inch], diameter: inch / 2 }],
});

/** As the unit field does it: the unit is another, and all lengths that it concerns are turned into it. */
function turned(job: JsonObject, units: 'mm' | 'inch'): Json {
  const next = { ...job, units };
  return converted(next, concerned(job, next, root));
}

/** With a tip that has a unit of its own. */
const withTip = (job: JsonObject, tip: number): Json =>
  JSON.parse(JSON.stringify(job).replace(/"tip":[\d.]+,"units"/, `"tip":${tip},"units"`)) as Json;

/** Numbers of a path text, however it is written. */
const numbersOf = (job: Json) => {
  const text = (job as { part: { outline: { svgPath: string } } }).part.outline.svgPath;
  // The page writes nine decimals.
  return text.match(/-?[\d.]+/g)?.map((one) => Number(Number(one).toFixed(9)));
};

describe('a job whose unit changes', () => {
  const [mm, inch] = [withTip(jobIn('mm', 25.4), 2), jobIn('inch', 1)];

  it.each([
    { to: 'inch', from: mm, wanted: inch },
    { to: 'mm', from: inch, wanted: mm },
  ] as const)('to $to is the same part', ({ to, from, wanted }) => {
    const got = turned(from as JsonObject, to);
    expect(numbersOf(got)).toEqual(numbersOf(wanted));
    const without = (job: Json) => JSON.stringify(job).replace(/"svgPath":"[^"]*"/, '');
    expect(without(got)).toBe(without(wanted));
  });
});
