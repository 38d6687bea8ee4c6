import type { Point } from './point.js';

/** Refuses what is not a finite number. */
export function checkFinite(where: string, name: string, value: number): void {
  if (!Number.isFinite(value))
    throw new RangeError(`${where}: ${name} is ${value}; it must be a finite number`);
}

/** Refuses what is not a finite number over 0. */
export function checkOverZero(where: string, name: string, value: number): void {
  if (!(value > 0) || !Number.isFinite(value)) {
    throw new RangeError(`${where}: ${name} is ${value}; it must be a finite number over 0`);
  }
}

/** Refuses what is not a finite number, or is under 0. */
export function checkNotNegative(where: string, name: string, value: number): void {
  if (!(value >= 0) || !Number.isFinite(value)) {
    throw new RangeError(`${where}: ${name} is ${value}; it must be a finite number, 0 or more`);
  }
}

/** Refuses a place whose coordinates are not finite. */
export function checkPlace(where: string, name: string, p: Point): void {
  if (!Number.isFinite(p.x) || !Number.isFinite(p.y)) {
    throw new RangeError(`${where}: ${name} is (${p.x}, ${p.y}); coordinates must be finite numbers`);
  }
}
