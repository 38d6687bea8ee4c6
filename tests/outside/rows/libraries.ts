import { area, disc, examine, parseJob, type Region, rectangle, subtract } from '@edgebite/core';
import { type CutCase, cutRegions, extentOf, familyNamed, OBLIQUE_THIRDS } from '@edgebite/core/testing';
import fc from 'fast-check';
import { seeded } from '../../datum/drawn-errors.js';
import { cutsOf, exactCases, outlineOf } from '../../tools/exact-cases.js';
import { geosMeasures } from '../../tools/geos-measure.js';
import type { Peer } from '../../tools/peer.js';
import { clipperPeer } from '../../tools/peer-clipper.js';
import { flattenPeer } from '../../tools/peer-flatten.js';
import { loosely, type Pair, type Reference } from '../reference.js';

/** Generated cases that each library works out. */
const CASES = 40;

/** The same cases every time: discs and rings that lie anywhere, where all libraries are at their best. */
const drawn = (): readonly CutCase[] =>
  ['generic-discs', 'generic-rings'].flatMap((name) =>
    fc.sample(familyNamed(name).cases, { numRuns: CASES / 2, seed: 11 }),
  );

/** Area left by another library, as a share of the squared extent, so that cases of all sizes can be compared. */
function against(peer: Peer): Pair[] {
  return drawn().map((one) => {
    const cuts = cutRegions(one, OBLIQUE_THIRDS);
    const operands = [one.outline, ...cuts];
    const square = extentOf(...operands) ** 2;
    return {
      got: area(subtract(one.outline, cuts)) / square,
      wanted: peer.subtract(one.outline, cuts).area / square,
      within: peer.areaSlack(operands) / square,
    };
  });
}

/** How near chords stay to their arcs. */
const SAGITTA = 1e-5;

/** A plate with two holes near each other, or near its edge: the same ones every time. */
function thinned(count: number): { holes: readonly [number, number, number][] }[] {
  const next = seeded(3);
  const between = (low: number, high: number) => low + (high - low) * next();
  return Array.from({ length: count }, (_, k) => {
    const [r, s] = [between(4, 9), between(4, 9)];
    const web = between(0.05, 1.9);
    const turn = between(0, 2 * Math.PI);
    const [x, y] = k % 2 === 0 ? [40, 25] : [between(20, 60), r + web];
    const away = r + s + (k % 2 === 0 ? web : 3);
    const one: [number, number, number] = [x, y, r];
    return k % 2 === 0
      ? { holes: [one, [x + away * Math.cos(turn), y + away * Math.sin(turn), s]] }
      : { holes: [one] };
  });
}

/** The thinnest web told, against the distance of the holes, or of a hole from what lies outside of the plate. */
async function websByGeos(): Promise<Pair[]> {
  const geos = await geosMeasures();
  return thinned(16).map(({ holes }) => {
    const { webs } = examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [80, 50] }, thickness: 10 },
        limits: { web: 2 },
        cuts: holes.map(([x, y, r], k) => ({ id: `h${k}`, kind: 'bore', center: [x, y], diameter: 2 * r })),
      }),
    );
    const discs = holes.map(([x, y, r]) => disc({ x, y }, r));
    const outside: Region = [
      {
        outer: rectangle(120, 90, { at: { x: -20, y: -20 } }),
        holes: [[...rectangle(80, 50)].reverse().map((edge) => ({ ...edge, a: edge.b, b: edge.a }))],
      },
    ];
    const wanted = geos.distance(discs[0] as Region, discs[1] ?? outside, SAGITTA);
    return loosely(webs[0]?.thickness ?? Number.NaN, wanted, 3 * SAGITTA);
  });
}

/** Libraries that work out the same by other means. Deviations are shares of the squared extent of a case. */
export const libraryReferences: readonly Reference[] = [
  {
    quantity: 'area left',
    source: 'CGAL, Boolean set operations of circle and line segments, exact arithmetic',
    kind: 'library',
    checks: 'area left in 89 cases, tangent, coincident and touching ones among them',
    pairs: () =>
      exactCases().map((one) => {
        const outline = outlineOf(one);
        const cuts = cutsOf(one);
        const square = extentOf(outline, ...cuts) ** 2;
        return {
          got: area(subtract(outline, cuts)) / square,
          wanted: one.expect.remainingArea / square,
          within: 1e-9,
        };
      }),
  },
  {
    quantity: 'area left',
    source: '@flatten-js/core 1.6.15',
    kind: 'library',
    checks: `area left in ${CASES} generated cases of discs and rings`,
    pairs: () => against(flattenPeer),
  },
  {
    quantity: 'area left',
    source: 'Clipper2 (clipper2-wasm)',
    kind: 'library',
    checks: `the same ${CASES} cases with arcs cut into chords of a millionth of the extent`,
    pairs: async () => against(await clipperPeer()),
  },
  {
    quantity: 'web thickness',
    source: 'geos-wasm',
    kind: 'library',
    checks:
      'distance of fine polygons: between two holes, and from a hole to the edge of the plate, 16 generated parts',
    pairs: websByGeos,
  },
];
