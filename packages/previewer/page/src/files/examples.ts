import rockerLink from '../../../../../examples/aims/rocker-link.json';
import { isObject, type Json, type JsonObject } from '../document/json.js';

/** A job that comes with the page. */
export interface Example {
  readonly file: string;
  readonly name: string;
  readonly job: JsonObject;
}

const files = import.meta.glob<Json>('../../../../../examples/*.json', { eager: true, import: 'default' });

/** The example jobs, by their file names. */
export const EXAMPLES: readonly Example[] = Object.entries(files).flatMap(([path, job]) => {
  const file = path.slice(path.lastIndexOf('/') + 1);
  return isObject(job) ? [{ file, name: String(job.name ?? file), job }] : [];
});

/** What is to come out, with a drawer of tools. */
export const ROCKER_LINK: Json = rockerLink;

/** What is to come out as simple as can be, to begin one's own with. */
export const BARE_AIM: Json = {
  edgebite: 1,
  units: 'mm',
  thickness: 10,
  material: 'mild steel',
  blank: { rectangle: [80, 40] },
  finished: { bites: [{ circle: 10, at: [40, 20] }] },
  drawer: [{ id: 'drill 10', kind: 'drill', toolMaterial: 'HSS', diameter: 10, reach: 60 }],
};

function bare(outline: JsonObject, thickness: number): JsonObject {
  return { edgebite: 1, name: 'New job', units: 'mm', part: { outline, thickness }, cuts: [] };
}

/** Parts without cuts, to begin a job of one's own with. */
export const BARE: readonly { readonly name: string; readonly job: JsonObject }[] = [
  { name: 'A plate', job: bare({ rectangle: [80, 40] }, 10) },
  { name: 'A bar', job: bare({ rectangle: [160, 30] }, 25) },
  { name: 'A round', job: bare({ circle: 60 }, 15) },
];
