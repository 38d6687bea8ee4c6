import { described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import type { JobDocument } from '../document/schema.js';
import type { Faults } from '../job/faults.js';
import type { PartName } from '../job/job.js';
import { loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** Words that mean a face of any part. */
const TAKEN: readonly string[] = ['left', 'right', 'front', 'back', 'top', 'bottom', 'outline'];

/** What the library names edges and holes by. */
const OWN = /^(outline|hole|cut|stop):/;

const OUTLINE = '/part/outline';

/** The names that a job gives edges and holes of its part; what is at fault is taken down and left out. */
export function readNames(document: JobDocument, region: Region | null, faults: Faults): PartName[] {
  if (region === null || !faults.sound(OUTLINE)) return [];
  const { outline } = document.part;
  const holes = outline.holes ?? [];
  // An outline drawn as path data may have holes of its own, which come first.
  const inner = loopsOf(region).length - 1 - holes.length;
  const given = [
    ...edgesOf(outline, OUTLINE, 'outline'),
    ...holes.flatMap((hole, i) => {
      const path = `${OUTLINE}/holes/${i}`;
      const of = `hole:${inner + i}`;
      return [{ name: hole.name, of, path: `${path}/name` }, ...edgesOf(hole, path, of)];
    }),
  ].filter((one): one is Given => one.name !== undefined);
  faults.add(nameIssues(given));
  return given.map(({ of, name }) => ({ of, name }));
}

type Given = PartName & { readonly path: string };

function edgesOf(shape: object, path: string, owner: string) {
  const { edges = [] } = shape as { readonly edges?: readonly { readonly name?: string }[] };
  return edges.map(({ name }, i) => ({ name, of: `${owner}:${i}`, path: `${path}/edges/${i}/name` }));
}

function nameIssues(given: readonly Given[]): JobIssue[] {
  const first = new Map<string, string>();
  return given.flatMap(({ name, of, path }): JobIssue[] => {
    const known = first.get(name);
    first.set(name, known ?? of);
    const message =
      known !== undefined
        ? `is ${described(name)} like that of ${known}; give every edge and hole a name of its own`
        : TAKEN.includes(name) || OWN.test(name)
          ? `is ${described(name)}, which means a face of any part or an edge by its number; give it another name`
          : null;
    return message === null ? [] : [{ path, message }];
  });
}
