import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { examine, parseJob, type Report } from '@edgebite/core';

const folder = fileURLToPath(new URL('../../examples/', import.meta.url));

/** The names of the example jobs. */
export const EXAMPLES: readonly string[] = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.replace(/\.json$/, ''))
  .sort();

/** The report on an example job. */
export function exampleReport(name: string): Report {
  return examine(parseJob(readFileSync(`${folder}${name}.json`, 'utf8')));
}

/** A job with all that a drawing can show of how it is cut: passes, a followed outline with leads, jaws, a readout. */
export const WORKED = {
  edgebite: 1,
  name: 'Pedal plate of a hand loom, cut in passes',
  units: 'mm',
  part: { outline: { rectangle: [90, 50] }, thickness: 10, material: 'mild steel' },
  keep: [45, 10],
  cuts: [
    {
      id: 'bearing',
      kind: 'bore',
      center: [90, 25],
      diameter: 30,
      passes: { kind: 'step in', bite: 4, finish: 0.5, spring: true },
    },
    { id: 'edge', kind: 'swept', diameter: 8, path: { along: { loop: 'outline', side: 'outside' } } },
  ],
} as const;
