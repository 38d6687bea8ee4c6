import { isObject, type Json, type JsonObject } from '../state/json.js';

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

/** A part without cuts, to begin a job of one's own with. */
export const EMPTY: JsonObject = {
  edgebite: 1,
  name: 'New job',
  units: 'mm',
  part: { outline: { rectangle: [80, 40] }, thickness: 10 },
  cuts: [],
};
