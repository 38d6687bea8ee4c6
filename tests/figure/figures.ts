import type { Region } from '@edgebite/core';
import { extentOf, outlines, transformed } from '@edgebite/core/testing';
import fc from 'fast-check';
import { evenly } from '../tools/evenly.js';

/** From a thousandth of the size of drawn outlines to ten thousand times it. */
export const SCALES = [1e-3, 0.1, 1, 100, 1e4] as const;

/** Cases of each of the scales that make a thousand in all. */
export const EACH = 200;

const unit = evenly(-Math.PI, Math.PI);

/** An outline turned and shifted anyhow, at a scale. */
export function figuresAt(scale: number): fc.Arbitrary<Region> {
  return fc
    .tuple(outlines, unit, fc.boolean(), fc.integer({ min: -2, max: 2 }))
    .map(([outline, angle, mirror, off]) => {
      const by = off * extentOf(outline) * scale;
      const turn = [Math.cos(angle), Math.sin(angle)] as const;
      return transformed(outline, { mirror, turn, scale, shift: [by, -by / 3] });
    });
}

/** Two of them, near each other. */
export function pairsAt(scale: number): fc.Arbitrary<readonly [Region, Region]> {
  const share = evenly(-1.5, 1.5);
  return fc.tuple(figuresAt(scale), outlines, unit, share, share).map(([first, second, angle, x, y]) => {
    const turn = [Math.cos(angle), Math.sin(angle)] as const;
    const size = extentOf(first);
    const at = first[0]?.outer[0]?.a ?? { x: 0, y: 0 };
    const small = 0.6 * (size / extentOf(second));
    const shift = [at.x + x * size, at.y + y * size] as const;
    return [first, transformed(second, { mirror: false, turn, scale: small, shift })] as const;
  });
}
