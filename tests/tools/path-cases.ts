import type { Region } from '@edgebite/core';
import { extentOf } from '@edgebite/core/testing';
import fc from 'fast-check';
import { offsetCases } from './offset-cases.js';

/** An outline and a tool that is to follow it. JSON-safe, so a failure can be kept. */
export interface PathCase {
  readonly region: Region;
  readonly side: 'outside' | 'inside';
  readonly radius: number;
  readonly allowance: number;
  readonly milling: 'climb' | 'conventional';
}

/** Outlines of every kind, plain, cut and heaped, with tools of all sizes, half of them with an allowance. */
export const pathCases: fc.Arbitrary<PathCase> = fc
  .record({
    one: offsetCases,
    allowance: fc.constantFrom(0, 0, 0.01, 0.125, 0.7),
    milling: fc.constantFrom<PathCase['milling']>('climb', 'conventional'),
  })
  .map(
    ({ one, allowance, milling }): PathCase => ({
      region: one.region,
      side: one.distance > 0 ? 'outside' : 'inside',
      radius: Math.abs(one.distance),
      allowance: allowance * Math.abs(one.distance),
      milling,
    }),
  )
  // What is left of a gap by rounding is no tool.
  .filter((one) => one.radius > 1e-7 * sizeOf(one));

/** The size that tolerances are shares of: that of the outline and the room of the tool round it. */
export function sizeOf({ region, radius, allowance }: PathCase): number {
  return extentOf(region) + 2 * (2 * radius + allowance);
}
