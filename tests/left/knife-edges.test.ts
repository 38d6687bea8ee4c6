import { examine, interiorAngles, type KnifeEdge, knifeEdgesOf, parseJob, subtract } from '@edgebite/core';
import { type CutCase, cutRegions, extentOf, families, metalAngles } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';
import { bitten, type Case, cases, DEGREE } from './knife-cases.js';
import { Boundary } from './neck-sampler.js';
import { gap } from './sampler-edges.js';
import { everyWay, roundingUnder, seen } from './section-builder.js';
import { thinParts } from './thin-parts.js';
import { isFar, isTooFine } from './web-check.js';

function sameEdges(
  found: readonly KnifeEdge[],
  one: Case,
  scale: number,
  slack: number,
  place: (p: readonly [number, number]) => { x: number; y: number },
): void {
  expect(found.map(({ angle }) => angle)).toHaveLength(one.edges.length);
  const open = [...found];
  for (const wanted of one.edges) {
    // A tangent angle is the square root of a rounding: a gap g between circles of radius r is an angle of sqrt(2 g / r).
    const near = wanted.angle === 0 ? 1e-6 : 1e-9 + slack / scale;
    const k = open.findIndex(
      (edge) =>
        Math.abs(edge.angle - wanted.angle) <= near &&
        gap(edge.at, place(wanted.at)) <= 1e-8 * 100 * scale + slack &&
        (wanted.between === undefined ||
          (edge.between[0] === wanted.between[0] && edge.between[1] === wanted.between[1])),
    );
    expect(k, `${JSON.stringify(wanted)} among ${JSON.stringify(open)}`).toBeGreaterThanOrEqual(0);
    const [edge] = open.splice(k, 1) as [KnifeEdge];
    if (wanted.feather === null) expect(edge.feather).toBeNull();
    else if (wanted.feather !== undefined) {
      const off = Math.abs((edge.feather as number) / (wanted.feather * scale) - 1);
      expect(off, `feather ${edge.feather} for ${wanted.feather * scale}`).toBeLessThan(
        1e-8 + (1e4 * slack) / scale,
      );
    }
  }
}

describe('knife edges in closed form', () => {
  it.each(cases.map((one) => [one.name, one] as const))('%s', (_, one) => {
    for (const { how, by, region } of everyWay(one.region)) {
      const found = knifeEdgesOf(region, one.limit ?? 30 * DEGREE, (one.web ?? 1.5) * by.scale);
      try {
        sameEdges(found, one, by.scale, roundingUnder(by), (p) => seen(p, by));
      } catch (error) {
        throw new Error(`${how}: ${error instanceof Error ? error.message : error}`);
      }
    }
  });

  it('horns of a bore with its centre outside are blunt: 180 degrees less acos(|e| / r)', () => {
    for (const e of [-1, -5, -9]) {
      const blunt = interiorAngles(bitten(e)).filter((angle) => Math.abs(angle - Math.PI / 2) > 1e-6);
      expect(blunt).toHaveLength(2);
      for (const angle of blunt) expect(Math.abs(angle - (Math.PI - Math.acos(-e / 10)))).toBeLessThan(1e-9);
    }
  });

  it('in a report: degrees, named, sharpest first', () => {
    const report = examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [60, 40] }, thickness: 10 },
        limits: { web: 1.5, knifeEdge: 40 },
        cuts: [
          { id: 'a', kind: 'bore', center: [15, 8], diameter: 20 },
          { id: 'b', kind: 'bore', center: [45, 9], diameter: 20 },
        ],
      }),
    );
    const sharp = Math.acos(0.9) / DEGREE;
    const dull = Math.acos(0.8) / DEGREE;
    expect(report.knifeEdges.map(({ angle }) => angle)).toEqual(
      [sharp, sharp, dull, dull].map((a) => expect.closeTo(a, 8)),
    );
    expect(report.knifeEdges.map(({ between }) => between[0])).toEqual(['cut:b', 'cut:b', 'cut:a', 'cut:a']);
    expect(report.pieces[0]?.horns).toEqual([0, 1, 2, 3]);
  });
});

describe('knife edges against other computations', () => {
  const sections = fc.oneof(
    thinParts,
    ...families
      .filter((family) => !isTooFine(family))
      .map((family) =>
        family.cases
          .filter(({ outline }: CutCase) => !isFar(outline))
          .map((cutCase) => subtract(cutCase.outline, cutRegions(cutCase))),
      ),
  );

  it('angles are those of the checker of regions', () => {
    fc.assert(
      fc.property(sections, (region) => {
        const mine = interiorAngles(region).sort((a, b) => a - b);
        const theirs = region.flatMap(metalAngles).sort((a, b) => a - b);
        expect(mine).toHaveLength(theirs.length);
        // Angles of tangent edges are told from each other by bends alone, up to 1e-6.
        mine.forEach((angle, k) => {
          expect(Math.abs(angle - (theirs[k] as number))).toBeLessThan(2e-6);
        });
      }),
      { numRuns: runs(600) },
    );
  });

  it('feathers are what rolling a disc along either edge finds', () => {
    let compared = 0;
    fc.assert(
      fc.property(sections, (region) => {
        if (region.length === 0) return;
        const web = 0.04 * extentOf(region);
        const boundary = new Boundary(region);
        for (const edge of knifeEdgesOf(region, 80 * DEGREE, web)) {
          const feather = rolled(boundary, edge, web / 2);
          if (feather === null) continue;
          compared += 1;
          expect(Math.abs((edge.feather ?? 0) - feather), JSON.stringify(edge)).toBeLessThan(
            1e-7 * extentOf(region),
          );
        }
      }),
      { numRuns: runs(400) },
    );
    expect(compared).toBeGreaterThan(100);
  });
});

/** The feather at a tip by rolling a disc away from it along the two edges; null where a walk ends in another tip. */
function rolled(boundary: Boundary, { at: tip }: KnifeEdge, radius: number): number | null {
  const leaving = boundary.chains.filter((chain) => !chain.closed && sameTip(chain.pieces[0], 'a', tip));
  const arriving = boundary.chains.filter((chain) => !chain.closed && sameTip(chain.pieces.at(-1), 'b', tip));
  // Where more than one wedge of metal ends here it takes more than this to pair their edges.
  const [out, back] = [leaving[0], arriving[0]];
  if (leaving.length !== 1 || arriving.length !== 1 || out === undefined || back === undefined) return null;
  const start = { chain: out, t: 2e-9 };
  const end = { chain: back, t: back.pieces.length - 2e-9 };
  const p = boundary.reachOf(start, radius, 1, end);
  const q = boundary.reachOf(end, radius, -1, start);
  return p === null || q === null ? null : Math.min(gap(p, tip), gap(q, tip));
}

function sameTip(
  piece: Boundary['chains'][number]['pieces'][number] | undefined,
  end: 'a' | 'b',
  tip: KnifeEdge['at'],
): boolean {
  return piece?.kind === 'edge' && gap(piece.edge[end], tip) === 0;
}
