import type { Region } from '../region/region.js';
import type { Booleans } from './laws.js';

/** Operations of another library on regions of its own kind, and the way there and back. */
export interface OwnGeometry<T> {
  /** An edgebite region as the library has it. */
  readonly to: (region: Region) => T;
  /** What the library returns as an edgebite region: lines and arcs, outer loops counter-clockwise. */
  readonly from: (own: T) => Region;
  readonly unite: (a: T, b: T) => T;
  readonly intersect: (a: T, b: T) => T;
  readonly subtract: (a: T, b: T) => T;
}

/**
 * The operations that the laws put to the test, made of another library's on two regions at a time. Lists are worked
 * off from the left; what only one of two regions has is their union less what they share.
 */
export function booleansOf<T>(own: OwnGeometry<T>): Booleans {
  const folded = (regions: readonly Region[], by: (a: T, b: T) => T): Region => {
    const [first, ...others] = regions;
    if (first === undefined) return [];
    return own.from(others.reduce((sum, next) => by(sum, own.to(next)), own.to(first)));
  };
  const either = (a: T, b: T): T => own.subtract(own.unite(a, b), own.intersect(a, b));
  return {
    union: (regions) => folded(regions, own.unite),
    intersect: (regions) => folded(regions, own.intersect),
    subtract: (from, cuts) => folded([from, ...cuts], own.subtract),
    xor: (regions) => folded(regions, either),
  };
}
