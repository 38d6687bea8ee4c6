import { knifeMarks, type Report, webMarks } from '@edgebite/core';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { BODY_AREA, block, SLUG_AREA } from '../../fixtures/block.js';
import { pathArea } from '../../fixtures/path-area.js';
import { draw, SHEET_SIZES } from '../index.js';

const drawing = draw(block);

/** All values of an attribute, in the order of the text. */
function attributes(svg: string, name: string): string[] {
  return [...svg.matchAll(new RegExp(` ${name}="([^"]*)"`, 'g'))].map(([, value]) => value ?? '');
}

/** What a reader sees as text, entities resolved, one entry an element. */
function texts(svg: string): string[] {
  return [...svg.matchAll(/<(?:text|title|desc)[^>]*>([^<]*)</g)].map(([, text]) =>
    (text ?? '')
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&amp;', '&'),
  );
}

/** Parses with another program's strict XML and SVG parser; throws if the text is not well-formed. */
function parsed(svg: string): Resvg {
  return new Resvg(svg, { font: { loadSystemFonts: false } });
}

const HOSTILE = '"><script>alert(1)</script>&amp;\u0000\u001b[2J\ud800\u202e</svg><!--]]>';

function hostile(report: Report): Report {
  return {
    ...report,
    name: HOSTILE,
    material: HOSTILE,
    pieces: report.pieces.map((piece) => ({ ...piece, id: HOSTILE, label: HOSTILE })),
    cuts: report.cuts.map((cut) => ({ ...cut, id: HOSTILE, source: `cut:${HOSTILE}` })),
    webs: report.webs.map((web) => ({ ...web, between: [HOSTILE, `cut:${HOSTILE}`], piece: HOSTILE })),
    findings: report.findings.map((finding) => ({ ...finding, message: HOSTILE })),
  };
}

describe('the drawing', () => {
  it('is well-formed, prints at its true scale, and is the same every time', () => {
    const { width, height } = parsed(drawing);
    // resvg works in CSS pixels: 96 to the inch (CSS Values 4).
    expect(width).toBeCloseTo((297 / 25.4) * 96, 0);
    expect(height).toBeCloseTo((210 / 25.4) * 96, 0);
    expect(drawing).toMatch(/^<svg [^>]*width="297mm" height="210mm" viewBox="0 0 297 210"/);
    expect(draw(block)).toBe(drawing);
  });

  it('names its namespace once, and refers to nothing outside itself', () => {
    expect(drawing.match(/xmlns="http:\/\/www\.w3\.org\/2000\/svg"/g)).toHaveLength(1);
    expect(drawing.replace('http://www.w3.org/2000/svg', '')).not.toMatch(
      /https?:|href|<script|<style|<image| on\w+=/,
    );
    const ids = attributes(drawing, 'id');
    for (const [, id] of drawing.matchAll(/url\(#([^)]*)\)/g)) expect(ids).toContain(id);
  });

  it('has ids that are unique and begin as asked', () => {
    const ids = attributes(draw(block, { idPrefix: 'second-' }), 'id');
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.every((id) => id.startsWith('second-'))).toBe(true);
    expect(() => draw(block, { idPrefix: '"><script>' })).toThrow(RangeError);
    expect(() => draw(block, { idPrefix: '' })).toThrow(RangeError);
  });

  it('keeps hostile names as plain text', () => {
    const svg = draw(hostile(block));
    parsed(svg);
    expect(svg).not.toMatch(/<script|<!--|\u202e/);
    expect([...svg].every((sign) => sign >= ' ')).toBe(true);
    expect(svg.match(/<svg/g)).toHaveLength(1);
    expect(texts(svg).some((text) => text.includes('<script>alert(1)</script>&amp;\ufffd'))).toBe(true);
  });

  it('says for those who do not see it what is left and what is grave', () => {
    const [title, description] = texts(drawing);
    expect(title).toContain(block.name);
    for (const piece of block.pieces) expect(description).toContain(piece.id);
    expect(description).toContain('0.800 mm');
    expect(description).toContain(block.findings[0]?.message);
    const named = attributes(drawing, 'aria-labelledby')[0]?.split(' ') ?? [];
    expect(named).toHaveLength(2);
    for (const id of named) expect(attributes(drawing, 'id')).toContain(id);
  });
});

describe('what the drawing shows', () => {
  it('marks every web and knife edge of the report, on the plan and in the table', () => {
    const shown = texts(drawing);
    const marks = [...webMarks(block), ...knifeMarks(block)].map(({ id }) => id);
    expect(marks).toEqual(['W1', 'W2', 'K1', 'K2']);
    for (const mark of marks) expect(shown.filter((text) => text === mark)).toHaveLength(2);
    for (const { id } of webMarks(block)) expect(attributes(drawing, 'data-mark')).toContain(id);
  });

  it('names every cut on the plan and in the table, and every piece by its role', () => {
    const shown = texts(drawing);
    for (const cut of block.cuts) expect(shown.filter((text) => text === cut.id)).toHaveLength(2);
    expect(shown.filter((text) => text === 'loose slug')).toHaveLength(2);
    expect(shown.filter((text) => text === 'breaks out')).toHaveLength(1);
    expect(shown).toContain('SCALE 1:1 · A4 · lengths in mm');
  });

  it('draws the pieces with their areas, at the scale that it names', () => {
    const face = (id: string): number => {
      const [, d] = new RegExp(`<path d="([^"]*)" id="edgebite-${id}"`).exec(drawing) ?? [];
      return -pathArea(d ?? '');
    };
    expect(face('piece-0') / BODY_AREA).toBeCloseTo(1, 7);
    expect(face('piece-1') / SLUG_AREA).toBeCloseTo(1, 7);
    // The slug's section goes through both slabs; it is painted once.
    expect(drawing).toContain('"edgebite-piece-1-slab-1"');
    expect(drawing).not.toContain('"edgebite-piece-1-slab-0"');
  });

  it('hatches what is cut through alone, at 45 degrees, each piece with a pattern of its own', () => {
    const [kept, slug] = block.pieces;
    if (kept === undefined || slug === undefined) throw new Error('the fixture has pieces');
    const copies = (['slug', 'slug', 'held slug', 'offcut', 'offcut'] as const).map((role, i) => ({
      ...slug,
      id: `more-${i}`,
      role,
    }));
    const svg = draw({ ...block, pieces: [kept, slug, ...copies] });
    const hatches = [...svg.matchAll(/<pattern (.*? id="[^"]*hatch-[^"]*".*?)>(.*?)<\/pattern>/g)].map(
      ([, head = '', body]) => ({
        angle: / patternTransform="rotate\((-?\d+)\)"/.exec(head)?.[1],
        look: `${head.replace(/ id="[^"]*"/, '')}${body}`,
      }),
    );
    for (const { angle } of hatches) expect(['45', '-45']).toContain(angle);
    // Kept, three slugs, one held slug, two offcuts.
    expect(new Set(hatches.map(({ look }) => look)).size).toBe(7);
    expect(hatches).toHaveLength(7);
    // Only faces of the section have one, and the sample in the legend (ISO 128-50).
    const hatched = [...svg.matchAll(/<(\w+) [^>]*fill="url\(#[^"]*hatch-/g)].map(({ index }) => index);
    const [from, to] = [svg.indexOf('id="edgebite-section"'), svg.indexOf('id="edgebite-side"')];
    const outside = hatched.filter((at) => at < from || at > to);
    expect(hatched.length).toBeGreaterThan(7);
    expect(outside.every((at) => at > svg.indexOf('id="edgebite-legend"'))).toBe(true);
    expect(outside).toHaveLength(1);
  });

  it('shades a face the more the deeper it lies', () => {
    // The groove's floor is 4 under the top of 12; its plan is painted with the metal and then shaded.
    const shades = [...drawing.matchAll(/fill-opacity="([\d.]+)"[^>]* id="edgebite-piece-0-slab-(\d)"/g)];
    expect(shades.map(([, , slab]) => slab)).toEqual(['0']);
    // From 0.07 just under the top to 0.25 at the very bottom: a third of the way.
    expect(Number(shades[0]?.[1])).toBeCloseTo(0.07 + 0.18 / 3, 6);
  });

  it('has a section where cuts stop short, with the depths, and none where all go through', () => {
    expect(drawing).toContain('id="edgebite-section"');
    // Depths from the top face down, each at its height: 0 at the top, the groove of 4 over the bottom, 12.
    const section = drawing.slice(
      drawing.indexOf('id="edgebite-section"'),
      drawing.indexOf('id="edgebite-side"'),
    );
    const depths = [...section.matchAll(/<text [^>]*y="([^"]*)"[^>]*>([\d.]+(?: \w+)?)<\/text>/g)].map(
      ([, y, text]) => [Number(y), text] as const,
    );
    const placed = ['0', '4 groove', '12'].map((text) => depths.find(([, own]) => own === text)?.[0]);
    expect(placed.map((y) => Number((Number(y) - Number(placed[0])).toFixed(3)))).toEqual([0, 4, 12]);
    const heights = [
      ...drawing.matchAll(/<rect width="[^"]*" height="([^"]*)"[^>]*fill="url\(#edgebite-hatch-slug-0\)"/g),
    ]
      .map(([, height]) => Number(height))
      .filter((height) => height > 3.5);
    // The slug is as thick as the part: 12 at 1:1, in slabs of 8 and 4.
    expect(heights).toEqual([8, 4]);
    const through: Report = {
      ...block,
      slabs: [{ from: 0, to: 12, area: BODY_AREA }],
      cuts: block.cuts.filter((cut) => cut.through),
    };
    expect(draw(through)).not.toContain('id="edgebite-section"');
  });

  it.each(SHEET_SIZES)('fits %s, lying and upright', (sheet) => {
    for (const upright of [false, true]) {
      const svg = draw(block, { sheet, upright });
      const [width = 0, height = 0] = (attributes(svg, 'viewBox')[0] ?? '').split(' ').slice(2).map(Number);
      expect(upright ? height > width : width > height).toBe(true);
      parsed(svg);
    }
  });
});

describe('odd reports', () => {
  it('of which nothing is left, or in which nothing is cut, are drawn', () => {
    const nothing = draw({ ...block, pieces: [], webs: [], knifeEdges: [], floors: [], slabs: block.slabs });
    expect(texts(nothing)[1]).toContain('Nothing is left.');
    parsed(nothing);
    parsed(draw({ ...block, cuts: [], webs: [], knifeEdges: [], findings: [], name: '' }));
  });

  it('with more rows than there is room for say how many are not shown', () => {
    const cuts = Array.from({ length: 60 }, (_, i) => ({
      ...block.cuts[1],
      id: `eye-${i}`,
    })) as Report['cuts'];
    const svg = draw({ ...block, cuts });
    const shown = texts(svg).filter((text) => /^eye-\d+$/.test(text)).length;
    expect(texts(svg)).toContain(`and ${60 - shown} more on sheet 2`);
  });

  it('with a centre far from the part keep the part in view', () => {
    const [rough] = block.cuts;
    if (rough === undefined) throw new Error('the fixture has cuts');
    const far = { ...rough, center: [1e6, 15] as const, diameter: 2 * (1e6 - 77) };
    const svg = draw({ ...block, cuts: [far] });
    expect(texts(svg)).toContain('SCALE 1:1 · A4 · lengths in mm');
    expect(svg).not.toMatch(/NaN|Infinity/);
    parsed(svg);
  });
});
