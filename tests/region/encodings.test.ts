import { parseSvgPath, parseWkt } from '@edgebite/core';
import { fromFlatten } from '@edgebite/core/flatten';
import {
  type CutCase,
  cutRegion,
  difference,
  type Encoding,
  encodedCircle,
  extentOf,
  families,
  familyNamed,
  validateRegion,
} from '@edgebite/core/testing';
import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { longRun, runs } from '../tools/runs.js';
import { type Loop, normalize, type Point, type Region, subtract } from './kernel.js';

/** A circle of two, three or four arcs, begun at any angle, run either way. */
const encodings: fc.Arbitrary<Encoding & { ccw: boolean }> = fc.record({
  arcs: fc.constantFrom<2 | 3 | 4>(2, 3, 4),
  start: fc.oneof(
    fc.constantFrom(0, Math.PI / 2, Math.PI, -Math.PI / 2),
    fc.integer({ min: 0, max: 6283 }).map((milliradians) => milliradians / 1000),
  ),
  ccw: fc.boolean(),
});

/** Families with planted contacts: where the seam lies must not matter there. */
const touchy = families.filter((family) => !family.marginal);

/** Each circle written anew; clockwise ones come in through `normalize`, which takes loops of either direction. */
function rewritten({ cuts }: CutCase, { ccw, ...encoding }: Encoding & { ccw: boolean }): Region[] {
  return cuts.map((cut) => {
    if (cut.kind === 'shape') return cut.region;
    if (ccw) return cutRegion(cut, encoding);
    const circle = (radius: number): Loop => encodedCircle(cut.center, radius, encoding, false);
    return cut.kind === 'disc'
      ? normalize([circle(cut.radius)], 'nonzero')
      : normalize([circle(cut.outer), circle(cut.inner)], 'evenodd');
  });
}

describe('how a circle is written does not matter', () => {
  it.each(touchy.map((family) => [family.name, family] as const))('in %s', (name, family) => {
    const property = fc.property(family.cases, encodings, (cutCase, encoding) => {
      const plain = cutCase.cuts.map((cut) => cutRegion(cut));
      const extent = extentOf(cutCase.outline, ...plain);
      const expected = subtract(cutCase.outline, plain);
      const got = subtract(cutCase.outline, rewritten(cutCase, encoding));
      validateRegion(got, { extent });
      expect(difference(got, expected, extent)).toBeNull();
    });
    fc.assert(property, { ...(longRun() ? {} : { seed: name.length }), numRuns: runs(40) });
  });
});

/** A circle as interchange forms write it: one arc that ends where it starts, or two. */
const forms: Record<string, (center: Point, radius: number, start: number, ccw: boolean) => Region> = {
  'one arc of @flatten-js/core': (center, radius, start, ccw) => {
    const polygon = new Flatten.Polygon();
    const end = ccw ? start + 2 * Math.PI : start - 2 * Math.PI;
    polygon.addFace([new Flatten.Arc(Flatten.point(center.x, center.y), radius, start, end, ccw)]);
    return fromFlatten(polygon);
  },
  'two arcs of SVG path data': (center, radius, start, ccw) => {
    const [dx, dy] = [radius * Math.cos(start), radius * Math.sin(start)];
    const arc = (x: number, y: number): string => `A ${radius} ${radius} 0 0 ${ccw ? 1 : 0} ${x} ${y}`;
    const [x, y] = [center.x - dx, center.y - dy];
    const data = `M ${center.x + dx} ${center.y + dy} ${arc(x, y)} ${arc(center.x + dx, center.y + dy)} Z`;
    return normalize(
      parseSvgPath(data).map((chain) => chain.edges),
      'nonzero',
    );
  },
  'one circular string of three points': (center, radius, start) => {
    const [dx, dy] = [radius * Math.cos(start), radius * Math.sin(start)];
    const from = `${center.x + dx} ${center.y + dy}`;
    const text = `CURVEPOLYGON(CIRCULARSTRING(${from}, ${center.x - dx} ${center.y - dy}, ${from}))`;
    const shape = parseWkt(text);
    if (shape.kind === 'polygons') throw new Error('several polygons');
    const rings = shape.kind === 'polygon' ? shape.rings : [shape.chain];
    return normalize(
      rings.map((ring) => ring.edges),
      'nonzero',
    );
  },
};

describe.each(Object.entries(forms))('a circle that comes in as %s', (_, form) => {
  it.each([
    'centre-on-edge',
    'centre-on-corner',
    'through-corner',
    'tangent-inside',
    'recut',
    'adjacent-rings',
  ])('cuts like any other in %s', (name) => {
    const starts = fc.record({ start: fc.integer({ min: -3141, max: 3141 }), ccw: fc.boolean() });
    const property = fc.property(familyNamed(name).cases, starts, (cutCase, { start, ccw }) => {
      const plain = cutCase.cuts.map((cut) => cutRegion(cut));
      const extent = extentOf(cutCase.outline, ...plain);
      const read = cutCase.cuts.map((cut) => {
        if (cut.kind === 'shape') return cut.region;
        const disc = (radius: number): Region => form(cut.center, radius, start / 1000, ccw);
        return cut.kind === 'disc' ? disc(cut.radius) : subtract(disc(cut.outer), [disc(cut.inner)]);
      });
      const got = subtract(cutCase.outline, read);
      validateRegion(got, { extent });
      expect(difference(got, subtract(cutCase.outline, plain), extent)).toBeNull();
    });
    fc.assert(property, { ...(longRun() ? {} : { seed: name.length }), numRuns: runs(30) });
  });
});
