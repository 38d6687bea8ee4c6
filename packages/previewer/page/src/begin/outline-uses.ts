import { isObject, type JsonObject } from '../document/json.js';
import { BARE_AIM } from '../files/examples.js';
import type { ReadOutline } from '../state/outline.js';

/** An outline with a unit, and what it is called. */
type Sized = Pick<ReadOutline, 'outline' | 'box' | 'file'> & { readonly units: 'mm' | 'inch' };

/** A bore to begin with, as a share of the shorter side. */
const BORE = 1 / 4;

/** A job that has the outline as its part, with nothing cut yet. */
export function partJob({ outline, units, file }: Sized, thickness: number): JsonObject {
  return { edgebite: 1, name: nameOf(file), units, part: { outline, thickness }, cuts: [] };
}

/** What is to be left of the outline: all but a hole in its middle, to be changed. */
export function blankAim(read: Sized, thickness: number): JsonObject {
  const [minX, minY, maxX, maxY] = read.box;
  const circle = tidy(BORE * Math.min(maxX - minX, maxY - minY));
  const at = [tidy((minX + maxX) / 2), tidy((minY + maxY) / 2)];
  return aimOf(read, thickness, read.outline, { bites: [{ circle, at }] }, circle);
}

/** The outline as what is to be left of the plate that just holds it. */
export function finishedAim(read: Sized, thickness: number): JsonObject {
  const [minX, minY, maxX, maxY] = read.box;
  const blank = { rectangle: [maxX - minX, maxY - minY], at: [minX, minY] };
  return aimOf(read, thickness, blank, read.outline, tidy(BORE * Math.min(maxX - minX, maxY - minY)));
}

function aimOf(
  { units, file }: Sized,
  thickness: number,
  blank: JsonObject,
  finished: JsonObject,
  diameter: number,
): JsonObject {
  const material = isObject(BARE_AIM) ? (BARE_AIM.material ?? '') : '';
  const reach = tidy(Math.max(4 * diameter, 2 * thickness));
  const drill = { id: 'drill', kind: 'drill', toolMaterial: 'HSS', diameter, reach };
  return {
    edgebite: 1,
    name: nameOf(file),
    units,
    thickness,
    material,
    blank,
    finished,
    drawer: [drill],
  };
}

// Three digits: a size to begin with, not one to be kept.
function tidy(value: number): number {
  return Number(value.toPrecision(3));
}

function nameOf(file: string): string {
  return file.replace(/\.[a-z]+$/i, '');
}
