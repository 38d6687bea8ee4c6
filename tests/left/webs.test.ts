import { examine, parseJob, type Region, type Web, websOf } from '@edgebite/core';
import { UNMOVED } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';
import { everyWay, outlineJson, roundingUnder, seen } from './section-builder.js';
import { necks } from './web-cases-necks.js';
import { rare } from './web-cases-rare.js';
import { strips } from './web-cases-strips.js';
import type { Wanted } from './web-forms.js';

const cases = [...necks, ...strips, ...rare];

function sameWebs(
  found: readonly Web[],
  wanted: readonly Wanted[],
  slack: number,
  scale: number,
  place: (p: readonly [number, number]) => { x: number; y: number },
): void {
  expect(found.map(({ thickness }) => thickness / scale)).toHaveLength(wanted.length);
  const open = [...found];
  for (const one of wanted) {
    const k = open.findIndex(
      (web) =>
        Math.abs(web.thickness - one.thickness * scale) <= 1e-9 * web.thickness + slack &&
        (one.at === undefined ||
          Math.hypot(web.at.x - place(one.at).x, web.at.y - place(one.at).y) <= 1e-9 * 100 * scale + slack) &&
        (one.between === undefined ||
          (one.between[0] === web.between[0] && one.between[1] === web.between[1])),
    );
    expect(k, `${JSON.stringify(one)} among ${JSON.stringify(open)}`).toBeGreaterThanOrEqual(0);
    const [web] = open.splice(k, 1) as [Web];
    if (one.length !== undefined)
      expect(Math.abs(web.length / (one.length * scale) - 1)).toBeLessThan(1e-9 + (1e3 * slack) / scale);
    if (one.strip !== undefined)
      expect(Math.abs(web.strip - one.strip * scale)).toBeLessThanOrEqual(
        1e-9 * one.strip * scale + 10 * slack,
      );
  }
}

describe('webs in closed form', () => {
  it.each(cases.map((one) => [one.name, one] as const))('%s', (_, { region, limit, webs }) => {
    for (const { how, by, region: there } of everyWay(region)) {
      const found = websOf(there, limit * by.scale);
      const slack = roundingUnder(by);
      try {
        sameWebs(found, webs, slack, by.scale, (p) => seen(p, by));
      } catch (error) {
        throw new Error(`${how}: ${error instanceof Error ? error.message : error}`);
      }
    }
  });
});

describe('webs of a job', () => {
  it.each(cases.filter(({ touching }) => touching !== true).map((one) => [one.name, one] as const))(
    '%s, drawn in either direction',
    (_, one) => {
      const part = one.region[0] as Region[number];
      for (const turnedRound of [false, true]) {
        const outline = outlineJson(part, turnedRound);
        const { webs } = examine(
          parseJob({
            edgebite: 1,
            units: 'mm',
            part: { outline, thickness: 5 },
            limits: { web: one.limit },
            cuts: [],
          }),
        );
        const found = webs.map((web) => ({
          ...web,
          at: { x: web.at[0], y: web.at[1] },
          ends: web.ends.map(([x, y]) => ({ x, y })) as [Web['at'], Web['at']],
          part: 0,
        }));
        const wanted = one.webs.map(({ between: _names, ...rest }) => rest);
        sameWebs(found, wanted, roundingUnder(UNMOVED), 1, ([x, y]) => ({ x, y }));
      }
    },
  );

  it('names them thinnest first, in each slab that they stand in, with the cuts that made them', () => {
    const { webs } = examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [60, 40] }, thickness: 10 },
        limits: { web: 1 },
        cuts: [
          { id: 'a', kind: 'bore', center: [20, 5.8], diameter: 10 },
          { id: 'b', kind: 'bore', center: [40, 3.5], diameter: 6, depth: 4 },
        ],
      }),
    );
    expect(webs.map(({ slab, between }) => [slab, ...between])).toEqual([
      [1, 'cut:b', 'outline:0'],
      [0, 'cut:a', 'outline:0'],
      [1, 'cut:a', 'outline:0'],
    ]);
    expect(webs.map(({ thickness }) => thickness)).toEqual([
      expect.closeTo(0.5, 12),
      expect.closeTo(0.8, 12),
      expect.closeTo(0.8, 12),
    ]);
  });
});
