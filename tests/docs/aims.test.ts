import { readdirSync, readFileSync } from 'node:fs';
import { parseAim, propose } from '@edgebite/core';
import { expect, it } from 'vitest';
import { blocksOf, ROOT } from './pages.js';

const folder = `${ROOT}examples/aims`;

it.each(readdirSync(folder))('the aim %s has ways', (file) => {
  const { ways, refusals } = propose(parseAim(readFileSync(`${folder}/${file}`, 'utf8')));
  expect(refusals).toEqual([]);
  expect(ways.length).toBeGreaterThan(1);
});

it('the guide goes through the aim that the page begins with', () => {
  const block = blocksOf('docs/from-drawing-to-steps.md').find(({ rest }) => rest === 'link.json');
  expect(JSON.parse(block?.text ?? '')).toEqual(
    JSON.parse(readFileSync(`${folder}/rocker-link.json`, 'utf8')),
  );
});
