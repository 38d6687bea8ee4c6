// Draws the examples, a range of one of them, how zeros are found, and how an arc is measured, into docs/images, as PNG, for the README and the guides. Run it with `npm run figures` after a
// change to the drawing, and look at what it made.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { examine, parseJob, rangeOf } from '@edgebite/core';
import { draw, drawCheck, drawRange, drawZero } from '@edgebite/svg';
import { Resvg } from '@resvg/resvg-js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const images = join(root, 'docs', 'images');
mkdirSync(images, { recursive: true });

const examples = join(root, 'examples');
for (const file of readdirSync(examples)) {
  if (file.endsWith('.json')) picture(basename(file, '.json'), draw(examine(jobIn(file))));
}
const rail = examine(parseJob(jobOfGuide('measuring.md', 'rail.json')));
picture('measuring-rail', draw(rail));
picture('measuring-ways', drawCheck(rail, 0));
picture(
  'safe-interval',
  drawRange(rangeOf(jobIn('row-of-bites.json'), { cut: 'bite-3', along: 'x', from: 48, to: 58 })),
);
const zeros = examine(jobIn('ways-to-zero.json'));
for (const { id } of zeros.setups) picture(`zero-${id}`, drawZero(zeros, { setup: id }));

/** @param {string} file */
function jobIn(file) {
  return parseJob(readFileSync(join(examples, file), 'utf8'));
}

/**
 * The job that a guide tells its reader to save under a name.
 * @param {string} guide
 * @param {string} name
 */
function jobOfGuide(guide, name) {
  const text = readFileSync(join(root, 'docs', guide), 'utf8');
  const [, job] = text.split(`\`\`\`json ${name}\n`);
  if (job === undefined) throw new Error(`docs/${guide}: there is no ${name}`);
  return job.split('```')[0] ?? '';
}

/**
 * @param {string} name
 * @param {string} svg
 */
function picture(name, svg) {
  const image = new Resvg(svg, { background: 'white', fitTo: { mode: 'width', value: 1400 } });
  const out = join(images, `${name}.png`);
  writeFileSync(out, image.render().asPng());
  console.log(out.slice(root.length));
}
