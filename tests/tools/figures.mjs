// Draws the examples into docs/images, as PNG, for the README and the guides. Run it with `npm run figures` after a
// change to the drawing, and look at what it made.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { examine, parseJob } from '@edgebite/core';
import { draw } from '@edgebite/svg';
import { Resvg } from '@resvg/resvg-js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const images = join(root, 'docs', 'images');
mkdirSync(images, { recursive: true });

for (const file of readdirSync(join(root, 'examples'))) {
  if (!file.endsWith('.json')) continue;
  const svg = draw(examine(parseJob(readFileSync(join(root, 'examples', file), 'utf8'))));
  const picture = new Resvg(svg, { background: 'white', fitTo: { mode: 'width', value: 1400 } });
  const out = join(images, `${basename(file, '.json')}.png`);
  writeFileSync(out, picture.render().asPng());
  console.log(out.slice(root.length));
}
