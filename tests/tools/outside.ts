/* Writes the table of docs/outside-checks.md anew: npm run outside */
import { readFileSync, writeFileSync } from 'node:fs';
import { page, rows } from '../outside/table.js';

const file = new URL('../../docs/outside-checks.md', import.meta.url);
writeFileSync(file, page(readFileSync(file, 'utf8'), await rows()));
