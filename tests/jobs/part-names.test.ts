import { examine, type Finding, parseJob, rangeOf } from '@edgebite/core';
import { draw, drawRange } from '@edgebite/svg';
import { describe, expect, it } from 'vitest';
import { rangeText } from '../../packages/previewer/src/text/range.js';
import { textReport } from '../../packages/previewer/src/text/report.js';

/* A plate 80 by 30, the edges of its outline named or not, with a bore 1 from its named right end and one at a named hole. */

const corners = [
  [0, 0],
  [80, 0],
  [80, 30],
  [0, 30],
] as const;

const job = (names: readonly (string | undefined)[], hole: string | undefined, by = 'outline:1') => ({
  edgebite: 1,
  units: 'mm',
  part: {
    outline: {
      edges: corners.map((a, k) => ({
        kind: 'line',
        a,
        b: corners[(k + 1) % 4],
        ...(names[k] === undefined ? {} : { name: names[k] }),
      })),
      holes: [{ circle: 8, at: [20, 15], ...(hole === undefined ? {} : { name: hole }) }],
    },
    thickness: 12,
  },
  limits: { web: 2 },
  setups: [
    {
      id: 's',
      zero: {
        x: [{ touch: by, tip: 10, reads: 0 }],
        y: [{ 'dial in': hole ?? 'hole:0' }],
      },
      cuts: ['near', 'beside', 'bite'],
    },
  ],
  cuts: [
    { id: 'near', kind: 'bore', center: [74, 10], diameter: 10 },
    { id: 'beside', kind: 'bore', center: [30, 15], diameter: 9 },
    { id: 'bite', kind: 'bore', center: { on: by, along: 25, depth: 2 }, diameter: 8 },
  ],
});

const webs = (findings: readonly Finding[]) =>
  findings.filter(({ code }) => code === 'thin-web').map(({ message }) => message);

describe('an edge or a hole that has a name', () => {
  const report = examine(parseJob(job([undefined, 'seat end'], 'dowel', 'seat end')));
  const plain = examine(parseJob(job([], undefined)));

  it('is called by it in findings, tables and the drawing', () => {
    expect(webs(report.findings).join()).toContain('between cut near and seat end:');
    expect(webs(report.findings).join()).toContain('and dowel edge 0:');
    expect(webs(plain.findings).join()).toContain('between cut near and the right end as it lies:');
    const text = textReport(report, { all: true });
    expect(text).toMatch(/cut near and seat end/);
    expect(text).toContain('touch seat end from the right');
    expect(text).toContain('dial in the middle of dowel');
    expect(text).toContain('bite deep in seat end');
    expect(text).not.toMatch(/the right end|hole 0/);
    expect(draw(report)).toContain('cut near and seat end');
    expect(draw(plain)).not.toContain('seat end');
  });

  it('is called by it in what a range says, and along a path', () => {
    const near = job([undefined, 'seat end'], 'dowel', 'seat end');
    const query = { cut: 'near', along: 'x', from: 66, to: 80 } as const;
    const answer = rangeOf(parseJob(near), query);
    for (const told of [rangeText(answer), drawRange(answer)]) {
      expect(told).toContain('seat end');
      expect(told).not.toContain('the right end');
    }
    const along = {
      id: 'round',
      kind: 'swept',
      diameter: 6,
      depth: 3,
      path: { along: { loop: 'outline', side: 'outside' } },
    };
    const path = textReport(examine(parseJob({ ...near, cuts: [...near.cuts, along] })), { all: true });
    expect(path).toMatch(/line +83\.000 +30\.000 .*seat end/);
    expect(path).toMatch(/line .*the front as it lies/);
  });

  it('may be named where a number goes, and comes to the same numbers', () => {
    expect(report.names).toEqual([
      { of: 'outline:1', name: 'seat end' },
      { of: 'hole:0', name: 'dowel' },
      { of: 'outline:0', name: 'the front as it lies' },
      { of: 'outline:2', name: 'the back as it lies' },
      { of: 'outline:3', name: 'the left end as it lies' },
    ]);
    const told = ({ cuts, webs: thin, setups }: typeof report) => ({
      cuts,
      thin,
      targets: setups.map(({ targets }) => targets),
    });
    expect(told(report)).toEqual(told(plain));
  });
});
