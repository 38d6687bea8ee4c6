import { aimJsonSchema, drawerJsonSchema, jobJsonSchema, reportJsonSchema } from '@edgebite/core';
import { expect, it } from 'vitest';
import { TELLING_WORDS } from './skeleton.js';

/* A net under the schemas, as net.test.ts is one under what is told: what they bound, and the words that tell. */

/** What tells in a description: words as in a sentence, bounds and frames, and numbers. */
const TELLING = new RegExp(
  `${TELLING_WORDS.source}|(?<![\\w-])(?:from|to|null|slowest|fastest|farthest|radians|positive|negative|[-+]?\\d[\\d.]*)(?![\\w-])`,
  'gi',
);

/** Each sentence of a schema by where it stands, as the words in it that tell; each bound, choice and unit as it is. */
function sayings(value: unknown, path: string): string[] {
  if (typeof value !== 'object' || value === null) return [`${path}: ${value}`];
  return Object.entries(value).flatMap(([key, one]) => {
    if (key === 'description' && typeof one === 'string')
      return [`${path}: ${(one.match(TELLING) ?? []).join(' ')}`.trimEnd()];
    const isList = Array.isArray(one) && one.every((item) => typeof item !== 'object');
    return isList ? [`${path}/${key}: ${one.join(' ')}`] : sayings(one, `${path}/${key}`);
  });
}

it('what the schemas say of signs, orders and sides, and what they bound, as it was', async () => {
  const schemas = {
    aim: aimJsonSchema(),
    drawer: drawerJsonSchema(),
    job: jobJsonSchema(),
    report: reportJsonSchema(),
  };
  const lines = sayings(schemas, '');
  expect(lines.length).toBeGreaterThan(300);
  await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('told/schemas.snap');
});
