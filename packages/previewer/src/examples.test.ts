import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { examine, knifeMarks, parseJob, type Report, webMarks } from '@edgebite/core';
import { draw } from '@edgebite/svg';
import { describe, expect, it, vi } from 'vitest';
import { textReport } from './text/report.js';

const folder = fileURLToPath(new URL('../../../examples/', import.meta.url));
const jobs = readdirSync(folder).filter((name) => name.endsWith('.json'));

function reportOn(name: string): Report {
  return examine(parseJob(readFileSync(`${folder}${name}`, 'utf8')));
}

/** Area of a circle segment cut off at a distance from the centre (Machinery's Handbook, circle segments). */
function segment(radius: number, distance: number): number {
  return radius ** 2 * Math.acos(distance / radius) - distance * Math.sqrt(radius ** 2 - distance ** 2);
}

const roles = (report: Report): string[] => report.pieces.map((piece) => piece.role);

describe('each example', () => {
  it.each(jobs)('%s is drawn and told with all that its report has', (name) => {
    const report = reportOn(name);
    const text = textReport(report, { all: true });
    const svg = draw(report);
    for (const { id } of [...webMarks(report), ...knifeMarks(report)]) {
      expect(text).toMatch(new RegExp(`^${id} `, 'm'));
      expect(svg.split(`>${id}</text>`).length).toBeGreaterThan(1);
    }
    for (const cut of report.cuts) expect(text).toMatch(new RegExp(`^${cut.id} `, 'm'));
    expect(`${text}${svg}`).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('the examples show what they are for', () => {
  it('saddle-block: a loose slug at one end, none at the other, a thin web, a groove with a floor', () => {
    const report = reportOn('saddle-block.json');
    expect(roles(report)).toEqual(['kept', 'slug']);
    const [, slug] = report.pieces;
    expect(slug?.freedBy).toBe('seat-ring');
    expect(slug?.area).toBeCloseTo(segment(13.5, 2), 9);
    expect(slug?.volume).toBeCloseTo(16 * segment(13.5, 2), 8);
    // 5.2 from the edge to the centre, less the radius of 4.
    expect(webMarks(report).map(({ web }) => web.thickness.toFixed(6))).toEqual(['1.200000']);
    expect(report.floors.map(({ under, thickness }) => [under, thickness])).toEqual([
      ['oilway', 12],
      ['felt', 14],
    ]);
    expect(report.findings.some(({ level }) => level === 'danger')).toBe(true);
  });

  it('saddle-block: a hole placed by its depth, opened out in passes, and a groove along an edge', () => {
    const report = reportOn('saddle-block.json');
    const [rest, felt] = ['rest', 'felt'].map((name) => report.cuts.find(({ id }) => id === name));
    expect(rest?.bites.map(({ depth }) => depth)).toEqual([expect.closeTo(9, 12)]);
    // c = 2 sqrt(h (2 r - h)), Machinery's Handbook, 31st ed., p. 83.
    expect(rest?.bites[0]?.opening).toBeCloseTo(2 * Math.sqrt(9 * 17), 12);
    expect(rest?.passes?.list.map(({ role }) => role)).toEqual(['rough', 'rough', 'finish', 'spring']);
    expect(rest?.passes?.list.at(-1)?.center).toEqual([-4, 20]);
    // Tool radius and allowance in from the front edge.
    expect(felt?.path?.map(({ a, b }) => [a, b])).toEqual([
      [
        [48, 5],
        [20, 5],
      ],
    ]);
    const text = textReport(report, { all: true });
    for (const head of ['STEPS', 'BODIES', 'BITES', 'PLACED', 'PASSES of cut rest', 'PATH of the tool']) {
      expect(text).toContain(`\n${head}`);
    }
  });

  it('held-slug: a cutter with a reach of 17 in 20 leaves a slug on a floor of 3', () => {
    const report = reportOn('held-slug.json');
    expect(roles(report)).toContain('held slug');
    const slug = report.pieces.find(({ role }) => role === 'held slug');
    const floor = report.floors.find(({ holds }) => holds === slug?.id);
    expect(floor?.thickness).toBeCloseTo(3, 12);
    // The whole core stays in: its rim, pi d, is where the floor would break.
    expect(floor?.kerfLength).toBeCloseTo(Math.PI * 28, 9);
  });

  it('row-of-bites: one thin web, between two of the bites', () => {
    const report = reportOn('row-of-bites.json');
    expect(roles(report)).toEqual(['kept']);
    // Distance of the centres less the diameter: 14.8 - 14.
    expect(report.webs.map(({ thickness }) => thickness.toFixed(6))).toEqual(['0.800000']);
    expect([...(report.webs[0]?.between ?? [])].sort()).toEqual(['cut:bite-2', 'cut:bite-3']);
  });

  it('tangent-bore: a knife edge of angle 0 on both sides of the place where it touches', () => {
    const report = reportOn('tangent-bore.json');
    expect(report.knifeEdges.map(({ angle, at }) => [angle, ...at])).toEqual([
      [0, 30, 32],
      [0, 30, 32],
    ]);
  });

  it('treadle-bracket-inch: inches, a loose slug, a thin web, a seat from below', () => {
    const report = reportOn('treadle-bracket-inch.json');
    expect(report.units).toBe('inch');
    expect(roles(report)).toEqual(['kept', 'slug']);
    expect(report.pieces[1]?.area).toBeCloseTo(segment(0.475, 0.05), 12);
    // 3.5 less 3.325 and the radius of 0.125.
    expect(webMarks(report)[0]?.web.thickness).toBeCloseTo(0.05, 12);
    expect(report.cuts.find(({ id }) => id === 'seat')).toMatchObject({ from: 'bottom', depth: 0.2 });
  });

  it('what-is-left.ts prints the pieces and the thin web', async () => {
    const log = vi.spyOn(console, 'log').mockImplementation(() => undefined);
    try {
      await import('../../../examples/what-is-left.js');
      const slug = Math.PI * 49 - segment(7, 2);
      // The ring's disc less its segment beyond the end, and less the slug, is gone.
      const kept = 70 * 26 - (Math.PI * 121 - segment(11, 2));
      expect(log.mock.calls.map((words) => words.join(' ').trim())).toEqual([
        `kept ${kept.toFixed(2)}`,
        `slug ${slug.toFixed(2)} journal`,
        expect.stringMatching(/^web 1\.20 (cut:journal to outline:0|outline:0 to cut:journal)$/),
      ]);
    } finally {
      log.mockRestore();
    }
  });
});
