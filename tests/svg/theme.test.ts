import { draw, drawView, THEME_NAMES, THEMES } from '@edgebite/svg';
import { describe, expect, it } from 'vitest';
import { exampleReport } from './cases.js';

const report = exampleReport('held-slug');

/** Contrast of two colours (W3C WCAG 2.2, relative luminance and contrast ratio). */
function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5]
    .map((i) => Number.parseInt(colour.slice(i, i + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

describe('themes', () => {
  it.each(THEME_NAMES)('%s: lettering stands out from all that it can lie on by 4.5, lines by 3', (name) => {
    const theme = THEMES[name];
    for (const ground of [theme.paper, theme.kept, theme.held, theme.loose, theme.kerf]) {
      for (const words of [theme.ink, theme.warning]) expect(contrast(words, ground)).toBeGreaterThan(4.5);
      for (const line of [theme.soft, theme.tool]) expect(contrast(line, ground)).toBeGreaterThan(3);
    }
    expect(contrast(theme.soft, theme.paper)).toBeGreaterThan(4.5);
  });

  it.each(THEME_NAMES)('%s: a drawing has its colours and no others', (name) => {
    const used = [...draw(report, { theme: name }).matchAll(/"(#[0-9a-f]{3,8})"/gi)].map(
      ([, colour]) => colour,
    );
    const own: readonly string[] = Object.values(THEMES[name]);
    expect(used.filter((colour) => !own.includes(colour ?? ''))).toEqual([]);
  });

  it('mono tells roles and dangers apart without any colour', () => {
    const colours = new Set(
      [...draw(report, { theme: 'mono' }).matchAll(/"(#[0-9a-f]{6})"/g)].map(([, colour]) => colour),
    );
    expect([...colours].sort()).toEqual(['#000000', '#ffffff']);
  });

  it('can be data of the caller, with custom properties of a page', () => {
    const own = { ...THEMES.light, ink: 'var(--ink)', paper: 'white' };
    expect(drawView(report, { theme: own })).toContain('color="var(--ink)"');
  });

  it('are refused with the colour that is none', () => {
    expect(() => draw(report, { theme: { ...THEMES.light, soft: 'url(https://example.org/x)' } })).toThrow(
      /theme\.soft/,
    );
    expect(() => draw(report, { theme: 'sepia' as 'light' })).toThrow(/light, dark, mono/);
  });
});

describe('the view for a screen', () => {
  it('has no sheet, grows with its place, and names all that can be pointed at', () => {
    const svg = drawView(report, { size: [300, 200] });
    expect(svg).toMatch(/^<svg [^>]*width="100%" height="100%" viewBox="0 0 300 200"/);
    expect(svg).not.toMatch(/SCALE|id="edgebite-view-(frame|legend|steps|side)"/);
    const about = new Set([...svg.matchAll(/ data-about="([^"]*)"/g)].map(([, name]) => name));
    const expected = [
      ...report.pieces.map(({ id }) => `piece:${id}`),
      ...report.cuts.map(({ id }) => `cut:${id}`),
      ...report.findings.map((_, i) => `finding:${i}`),
      'knifeEdge:0',
    ];
    for (const name of expected) expect(about).toContain(name);
  });

  it('leaves out dimensions and names if told so', () => {
    const bare = drawView(report, { dimensions: false, labels: false });
    expect(bare).not.toContain('<text');
    expect(bare).toContain('data-about="piece:kept"');
  });

  it('refuses sizes that are no sizes', () => {
    expect(() => drawView(report, { size: [Number.NaN, 100] })).toThrow(RangeError);
    expect(() => drawView(report, { size: [200, 5] })).toThrow(/40 to 2000/);
  });
});
