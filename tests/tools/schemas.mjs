// Writes the JSON Schemas that core has as files beside its built code, for readers of other languages. In core's folder, after
// it is bundled.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { cwd } from 'node:process';
import { pathToFileURL } from 'node:url';

const dist = join(cwd(), 'dist');
const core = await import(pathToFileURL(join(dist, 'index.js')).href);
mkdirSync(join(dist, 'schemas'), { recursive: true });
for (const name of ['job', 'report', 'aim', 'drawer']) {
  const text = `${JSON.stringify(core[`${name}JsonSchema`](), null, 2)}\n`;
  writeFileSync(join(dist, 'schemas', `${name}.schema.json`), text);
}
