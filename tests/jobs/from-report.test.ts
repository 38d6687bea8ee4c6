import {
  area,
  edgesToJson,
  examine,
  fromReport,
  type GeometryLayer,
  type Point,
  parseJob,
  type Report,
  regionToJson,
  reportSchema,
} from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jobCases } from '../fuzz/job-cases.js';
import { sheetReports } from '../sheet/hard-jobs.js';
import { runs } from '../tools/runs.js';

const place = (point: Point | null) => (point === null ? null : [point.x, point.y]);

const layers = (all: readonly GeometryLayer[] | null) =>
  all === null ? null : all.map(({ from, to, region }) => ({ from, to, region: regionToJson(region) }));

/** The geometry of a report, read and written again. */
function written(report: Report) {
  const read = fromReport(report);
  return {
    outline: regionToJson(read.outline),
    keep: place(read.keep),
    pieces: read.pieces.map(({ view, sections }) => ({
      view: regionToJson(view),
      sections: layers(sections),
    })),
    webs: read.webs.map(({ at, ends }) => ({ at: place(at), ends: ends.map(place) })),
    knifeEdges: read.knifeEdges.map(({ at }) => place(at)),
    floors: read.floors.map(({ at }) => place(at)),
    cuts: read.cuts.map(({ center, path, footprint }) => ({
      center: place(center),
      path: path === null ? null : edgesToJson(path),
      footprint: regionToJson(footprint),
    })),
    steps: read.steps.map(({ center, before, after, frees, stands, backOff }) => ({
      center: place(center),
      before: layers(before),
      after: layers(after),
      frees: frees.map(regionToJson),
      stands: stands.map(place),
      backOff: place(backOff),
    })),
    keepOut: read.keepOut.map(({ region }) => regionToJson(region)),
  };
}

/** The same, picked out of a report as it is. */
function picked(report: Report): ReturnType<typeof written> {
  const rows = {
    outline: report.outline,
    keep: report.keep,
    pieces: report.pieces.map(({ view, sections }) => ({ view, sections })),
    webs: report.webs.map(({ at, ends }) => ({ at, ends })),
    knifeEdges: report.knifeEdges.map(({ at }) => at),
    floors: report.floors.map(({ at }) => at),
    cuts: report.cuts.map(({ center, path, footprint }) => ({ center, path, footprint })),
    steps: report.steps.map(({ center, before, after, frees, stands, backOff }) => ({
      center,
      before,
      after,
      frees: frees.map(({ view }) => view),
      stands: stands.map(({ at }) => at),
      backOff: backOff.to,
    })),
    keepOut: report.keepOut.map(({ region }) => region),
  };
  return rows as unknown as ReturnType<typeof written>;
}

/** As text and back: strictly the same, so without -0, NaN or a key that is undefined. */
function checkThereAndBack(report: Report): void {
  const back = JSON.parse(JSON.stringify(report)) as Report;
  expect(back).toStrictEqual(report);
  expect(reportSchema.parse(back)).toStrictEqual(report);
  expect(written(back)).toStrictEqual(picked(report));
  expect(fromReport(back)).toStrictEqual(fromReport(report));
}

describe.each(sheetReports())('the report on %s', (_, report) => {
  it('goes to JSON text and back unchanged, and its geometry is read as it was written', () => {
    checkThereAndBack(report);
  });
});

describe('any report', () => {
  it('goes to JSON text and back unchanged, and its geometry is read as it was written', () => {
    fc.assert(
      fc.property(jobCases, (job) => checkThereAndBack(examine(parseJob(job)))),
      { numRuns: runs(40) },
    );
  });

  // A plate of 40 by 20 less a hole of 10, then a groove of 4 along 10 of it, 3 deep of 8.
  it('is read as geometry that the library can work with', () => {
    const report = examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [40, 20] }, thickness: 8 },
        keep: [2, 3],
        cuts: [
          { id: 'eye', kind: 'bore', center: [12, 10], diameter: 10 },
          { id: 'way', kind: 'swept', diameter: 4, path: { svgPath: 'M25 10 H35' }, depth: 3 },
        ],
      }),
    );
    const { outline, keep, pieces, cuts, steps } = fromReport(report);
    const groove = 40 + Math.PI * 4;
    expect([area(outline), keep]).toEqual([800, { x: 2, y: 3 }]);
    expect(area(cuts[1]?.footprint ?? [])).toBeCloseTo(groove, 9);
    expect(cuts[1]?.path).toMatchObject([{ kind: 'line', a: { x: 25, y: 10 }, b: { x: 35, y: 10 } }]);
    expect(pieces[0]?.sections.map(({ region }) => area(region).toFixed(9))).toEqual(
      [800 - Math.PI * 25, 800 - Math.PI * 25 - groove].map((size) => size.toFixed(9)),
    );
    expect(steps.map(({ center, stands }) => [center, stands.length])).toEqual([
      [{ x: 12, y: 10 }, 1],
      [null, 2],
    ]);
    expect(steps[1]?.before?.map(({ region }) => area(region).toFixed(9))).toEqual(
      [1, 2].map(() => (800 - Math.PI * 25).toFixed(9)),
    );
  });
});
