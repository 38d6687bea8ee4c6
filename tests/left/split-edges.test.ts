import { type Edge, knifeEdgesOf, type Loop, pointAlong, type Region, websOf } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { DEGREE, cases as knifeCases } from './knife-cases.js';
import { necks } from './web-cases-necks.js';
import { strips } from './web-cases-strips.js';

/*
 * A drawing may cut its edges into pieces: what is thin and sharp does not change, however many joints one comes past on
 * the way to where the metal is thick enough.
 */

function split(edge: Edge, n: number): Edge[] {
  const places = Array.from({ length: n + 1 }, (_, k) => pointAlong(edge, k / n));
  return places.slice(1).map((b, k) => ({ ...edge, a: places[k] as Edge['a'], b }));
}

const inPieces = (region: Region, n: number): Region => {
  const cut = (loop: Loop) => loop.flatMap((edge) => split(edge, n));
  return region.map(({ outer, holes }) => ({ outer: cut(outer), holes: holes.map(cut) }));
};

/** Places of joints are rounded, and lengths hang on them by their square roots. */
const close = (value: number | null) => (value === null ? null : expect.closeTo(value, 5));

describe('with edges in pieces', () => {
  it.each([...necks, ...strips].map((one) => [one.name, one] as const))('webs are the same: %s', (_, one) => {
    const rows = (region: Region) =>
      websOf(region, one.limit)
        .map(({ thickness, length, strip, between }) => ({ thickness, length, strip, between }))
        .sort((a, b) => a.thickness - b.thickness || a.length - b.length);
    const whole = rows(one.region);
    for (const n of [2, 5]) {
      expect(rows(inPieces(one.region, n))).toEqual(
        whole.map(({ between, ...sizes }) => ({
          thickness: close(sizes.thickness),
          length: close(sizes.length),
          strip: close(sizes.strip),
          between,
        })),
      );
    }
  });

  it.each(knifeCases.map((one) => [one.name, one] as const))('knife edges are the same: %s', (_, one) => {
    const rows = (region: Region) =>
      knifeEdgesOf(region, one.limit ?? 30 * DEGREE, one.web ?? 1.5).map(({ angle, feather, between }) => ({
        angle,
        feather,
        between,
      }));
    const whole = rows(one.region);
    for (const n of [2, 5]) {
      expect(rows(inPieces(one.region, n))).toEqual(
        whole.map(({ between, angle, feather }) => ({
          angle: close(angle),
          feather: close(feather),
          between,
        })),
      );
    }
  });
});
