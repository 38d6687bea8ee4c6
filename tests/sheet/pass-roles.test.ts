import { examine, parseJob } from '@edgebite/core';
import { expect, it } from 'vitest';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../packages/previewer/src/sheet/text.js';

/* A bore of 20 that steps in square to the front of a plate: it touches 10 under the face and goes 9 from there. */
const report = examine(
  parseJob({
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [80, 40] }, thickness: 10 },
    cuts: [
      {
        ...{ id: 'seat', kind: 'bore', center: [40, -1], diameter: 20 },
        passes: { kind: 'step in', approach: 90, bite: 2, finish: 0.4, spring: true },
      },
    ],
  }),
);

// By hand: 8.6 before the finish are five bites of 1.72; then 0.4 to finish, and once more over it.
const ROLES = ['rough', 'rough', 'rough', 'rough', 'rough', 'finish', 'spring'];

it('the sheet says of each pass which it is of how many, and what it is for', () => {
  const sheet = sheetOf(report);
  const passes = sheet.blocks.flatMap(({ steps }) => steps.map(({ pass }) => pass));
  expect(passes).toEqual(ROLES.map((role, k) => ({ number: k + 1, count: 7, role })));
  const text = sheetText(sheet);
  expect([...text.matchAll(/\bpass (\d) of 7, (\w+)/g)].map(([, number, role]) => [number, role])).toEqual(
    ROLES.map((role, k) => [`${k + 1}`, role]),
  );
});
