import type { Place } from '../worker/sketch.js';
import type { Size } from './view.js';

/** Pixels from a marked place to the number that stands for it. */
const LEAD = 30;

/** Half the side of a number, pixels. */
const HALF = 13;

/** Directions to try, as shares of a turn: up and to the right first, as a draughtsman would. */
const DIRECTIONS = [0.125, 0.375, 0.875, 0.625, 0.25, 0.75, 0, 0.5];

/** How much longer a lead may get where numbers crowd, in steps. */
const STRETCHES = [1, 1.7, 2.5, 3.4];

/**
 * Where the numbers of marked places go: beside their place, off each other and off the places to be kept free, on
 * the drawing. Where there is no such room, right on the place.
 */
export function pinsFor(places: readonly Place[], free: readonly Place[], size: Size): readonly Place[] {
  const taken: Place[] = [];
  return places.map((place) => {
    const spot = candidates(place).find(
      (at) => inside(at, size) && clear(at, taken, 2 * HALF + 2) && clear(at, free, HALF + 9),
    );
    const at = spot ?? place;
    taken.push(at);
    return at;
  });
}

function candidates([x, y]: Place): Place[] {
  return STRETCHES.flatMap((stretch) =>
    DIRECTIONS.map((share): Place => {
      const angle = share * 2 * Math.PI;
      return [x + Math.cos(angle) * LEAD * stretch, y - Math.sin(angle) * LEAD * stretch];
    }),
  );
}

function inside([x, y]: Place, { width, height }: Size): boolean {
  return x > HALF + 2 && y > HALF + 2 && x < width - HALF - 2 && y < height - HALF - 2;
}

function clear([x, y]: Place, others: readonly Place[], room: number): boolean {
  return others.every(([u, v]) => Math.max(Math.abs(u - x), Math.abs(v - y)) >= room);
}
