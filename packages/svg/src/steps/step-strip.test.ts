import { readFileSync } from 'node:fs';
import { examine, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { BODY_AREA, block, GROOVE_AREA, SLUG_AREA } from '../../fixtures/block.js';
import { commands, pathArea } from '../../fixtures/path-area.js';
import { draw } from '../index.js';

/** The text of one step's picture. */
function picture(svg: string, step: number): string {
  const [, own = ''] = svg.split(`id="edgebite-step-${step}"`);
  return own.slice(0, own.search(/id="edgebite-step-\d+"|id="edgebite-plan"/));
}

/** Areas of what a picture shows in a role, in square millimetres of the sheet. */
function areas(svg: string, step: number, role: string): number[] {
  return [...picture(svg, step).matchAll(/<path ([^>]*)>/g)]
    .filter(([, attributes]) => attributes?.includes(`data-role="${role}"`))
    .map(([, attributes]) => Math.abs(pathArea(/ ?d="([^"]*)"/.exec(attributes ?? '')?.[1] ?? '')));
}

/** What a picture says, in its own order. */
function words(svg: string, step: number): string[] {
  return [...picture(svg, step).matchAll(/<text[^>]*>([^<]*)</g)].map(([, text]) => text ?? '');
}

/** Numbers of the attributes of the first element of a name in a text. */
function numbersOf(text: string, tag: string): (name: string) => number {
  const [element = ''] = new RegExp(`<${tag} [^>]*>`).exec(text) ?? [];
  return (name) => Number(new RegExp(` ${name}="([^"]*)"`).exec(element)?.[1] ?? Number.NaN);
}

/** The way of the push in a picture, degrees counter-clockwise from the right of the sheet. */
function pushAngle(svg: string, step: number): number {
  const own = picture(svg, step);
  const arrow = numbersOf(own.slice(own.indexOf('data-role="push"')), 'line');
  const angle = Math.atan2(arrow('y1') - arrow('y2'), arrow('x2') - arrow('x1'));
  return Math.round(((angle * 180) / Math.PI + 360) % 360);
}

/** Where a picture has the first circle, as a share of the width of the metal from its left; over 1 it is right of it. */
function circleAt(svg: string, step: number): number {
  const own = picture(svg, step);
  const d = /<path d="([^"]*)"[^>]*data-role="kept"/.exec(own)?.[1] ?? '';
  const xs = commands(d).flatMap(({ numbers }) => (numbers.length < 2 ? [] : [numbers.at(-2) as number]));
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  return (numbersOf(own, 'circle')('cx') - left) / (right - left);
}

describe('pictures of steps', () => {
  const svg = draw(block, { sheet: 'A3' });

  it('show what stands after the step and what it takes, in the areas that follow from right triangles and circle segments', () => {
    const bare = BODY_AREA + Math.PI * 41;
    const [after = 0] = areas(svg, 0, 'kept');
    const scale = after / bare;
    expect(scale).toBeGreaterThan(0.1);
    const expectArea = (step: number, role: string, expected: readonly number[]): void => {
      const found = areas(svg, step, role).map((area) => area / scale);
      expect(found).toHaveLength(expected.length);
      for (const [i, area] of found.entries()) expect(area / (expected[i] as number)).toBeCloseTo(1, 4);
    };
    expectArea(0, 'slug', [SLUG_AREA]);
    expectArea(1, 'kept', [bare - Math.PI * 25]);
    // The slug is taken out after the step that sets it free.
    expectArea(1, 'slug', []);
    expectArea(2, 'kept', [BODY_AREA]);
    // Under the groove the lower slab is seen.
    expectArea(3, 'kept', [BODY_AREA, BODY_AREA - GROOVE_AREA]);
  });

  it('say the tool, its place, what lets go and when', () => {
    expect(words(svg, 0)).toEqual(
      expect.arrayContaining(['1 rough', 'Ø32, wall 4.5', 'slug-1 lets go at 12 deep', 'slug-1']),
    );
    expect(words(svg, 1)).toEqual(['2 eye', 'Ø10', 'X 20.000 Y 15.000']);
    expect(words(svg, 3)).toEqual(['4 groove', 'Ø6, 4 deep', 'from X 40.000 Y 8.000']);
  });

  it('are left out where the report has no sections, which the sheet says', () => {
    const bare: Report = {
      ...block,
      steps: block.steps.map((step) => ({ ...step, before: null, after: null })),
    };
    const drawn = draw(bare);
    expect(drawn).not.toContain('id="edgebite-steps"');
    expect(drawn).toContain('too many steps for pictures: the finished part alone is drawn');
    expect(svg).not.toContain('too many steps');
  });
});

describe('a part that lies turned or turned over', () => {
  const bitten = (from: 'top' | 'bottom') =>
    draw(
      examine(
        parseJob({
          edgebite: 1,
          units: 'mm',
          part: { outline: { rectangle: [60, 30] }, thickness: 8 },
          keep: [10, 10],
          cuts: [{ id: 'bite', kind: 'bore', center: [62, 15], diameter: 16, from, depth: 5 }],
        }),
      ),
    );

  it('is drawn so, with its push: a bite at the right end of the drawing lies at the left of a part turned over', () => {
    // Seen from above teeth run clockwise. Right of the metal they cut upwards through it, so the push is away from the
    // person; left of the metal, where the bite is once the part is turned over about y, it is towards the person.
    expect(circleAt(bitten('top'), 0)).toBeCloseTo(62 / 60, 3);
    expect(pushAngle(bitten('top'), 0)).toBe(90);
    expect(words(bitten('top'), 0)).toContain('pushes the part away from you');
    expect(circleAt(bitten('bottom'), 0)).toBeCloseTo(-2 / 60, 3);
    expect(pushAngle(bitten('bottom'), 0)).toBe(270);
    expect(words(bitten('bottom'), 0)).toEqual(
      expect.arrayContaining(['turned over about y', 'X -62.000 Y 15.000', 'pushes the part towards you']),
    );
  });

  it('is drawn so in a setup: both ends of the saddle block lie at the right, one of them turned by 180', () => {
    const document = readFileSync(new URL('../../../../examples/saddle-block.json', import.meta.url), 'utf8');
    const report = examine(parseJob(document));
    const svg = draw(report);
    const of = (cut: string): number => report.steps.findIndex((step) => step.cut === cut);
    expect(report.cuts.map(({ center }) => center?.[0]).slice(0, 3)).toEqual([-4, -4, 92]);
    expect(circleAt(svg, of('rest-ring'))).toBeCloseTo(94 / 90, 3);
    // The part is 90 long, and the first cut leaves it so; the cuts after it do not.
    expect(circleAt(svg, of('seat-ring'))).toBeGreaterThan(1);
    expect(pushAngle(svg, of('rest-ring'))).toBe(90);
    expect(pushAngle(svg, of('seat-ring'))).toBe(90);
  });
});

describe('what lies in the way', () => {
  it('is drawn as it lay before the step that meets it, which says to take it out first', () => {
    // The ring frees its core, 4 in radius; the bore after it would cut into that, all but a circle of 3 in radius.
    const report = examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [60, 30] }, thickness: 8 },
        keep: [50, 15],
        cuts: [
          { id: 'ring', kind: 'annular', center: [20, 15], diameter: 12, wall: 2 },
          { id: 'eye', kind: 'bore', center: [20, 15], diameter: 6 },
        ],
      }),
    );
    const svg = draw(report);
    expect(report.steps[1]?.meets).toHaveLength(1);
    expect(words(svg, 1)).toContain(`take ${report.steps[1]?.meets[0]?.body} out first`);
    const [kept = 0] = areas(svg, 1, 'kept');
    const [slug = 0] = areas(svg, 1, 'slug');
    expect(slug / kept).toBeCloseTo((16 * Math.PI) / (1800 - 36 * Math.PI), 4);
  });
});
