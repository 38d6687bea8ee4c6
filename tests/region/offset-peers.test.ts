import { type Edge, offset, offsetPath } from '@edgebite/core';
import { edgesOf, extentOf, outlines } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bracketed, offsetDifference, sagittaFor } from '../tools/compare-offsets.js';
import { comparableCases } from '../tools/offset-cases.js';
import { clipperOffset } from '../tools/offset-clipper.js';
import { geosOffsets } from '../tools/offset-geos.js';
import { runs } from '../tools/runs.js';

/** Height of the peers' chords, as a share of the size. */
const CHORDS = 1e-4;

const geos = await geosOffsets();
const clipper = await clipperOffset();

describe('offset agrees, within what chords of 1e-4 of the size can tell', () => {
  it.each([
    ['clipper2-wasm, InflatePathsD with round joins', clipper, 300],
    ['GEOS 3.13, union of discs, rectangles and sectors', geos.offset, 200],
  ])('with %s', (_, peer, cases) => {
    const agrees = fc.property(comparableCases, (one) => {
      const sagitta = sagittaFor(one, CHORDS);
      expect(offsetDifference(one, peer(one.region, one.distance, sagitta), sagitta)).toBeNull();
    });
    fc.assert(agrees, { numRuns: runs(cases) });
  });
});

describe('inward and out again', () => {
  it('is the opening that GEOS finds', () => {
    const agrees = fc.property(outlines, fc.integer({ min: 10, max: 120 }), (region, thousandths) => {
      const size = extentOf(region);
      const radius = (thousandths / 1000) * size;
      const sagitta = CHORDS * size;
      // The shrunk region is off by two heights at most, and so is what is grown from it.
      const opened = (by: number) => offset(offset(region, -radius + by * sagitta), radius + by * sagitta);
      const theirs = geos.opening(region, radius, sagitta);
      expect(bracketed(opened(-2), opened(0), opened(2), theirs, sagitta, size)).toBeNull();
    });
    fc.assert(agrees, { numRuns: runs(25) });
  });
});

describe('offsetPath agrees with GEOS', () => {
  it('on chains of edges of outlines, joined or not', () => {
    const agrees = fc.property(
      outlines,
      fc.nat(20),
      fc.integer({ min: 1, max: 20 }),
      fc.nat(1),
      fc.integer({ min: 5, max: 300 }),
      (region, from, count, skip, thousandths) => {
        const path = chosen(edgesOf(region), from, count, skip);
        const size = extentOf(region);
        const distance = (thousandths / 1000) * size;
        const sagitta = Math.min(CHORDS * size, distance / 20);
        const at = (by: number) => offsetPath(path, distance + by * 2 * sagitta);
        const theirs = geos.band(path, distance, sagitta);
        expect(bracketed(at(-1), at(0), at(1), theirs, sagitta, size + 2 * distance)).toBeNull();
      },
    );
    fc.assert(agrees, { numRuns: runs(100) });
  });
});

/** Some of the edges, every second of them if `skip` is 1. */
function chosen(edges: readonly Edge[], from: number, count: number, skip: number): Edge[] {
  const rotated = edges.map((_, k) => edges[(k + from) % edges.length] as Edge);
  return rotated.slice(0, count).filter((_, k) => k % (skip + 1) === 0);
}
