import { parseJob, type RangeChange, type RangeInterval, type RangeReport, rangeOf } from '@edgebite/core';
import { Resvg } from '@resvg/resvg-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawRange } from '../index.js';
import { textWidth } from '../pen/text.js';

const hole = { id: 'hole', kind: 'bore', center: [50, 20], diameter: 16 };
const plate = parseJob({
  edgebite: 1,
  name: 'Breast beam cap',
  units: 'mm',
  part: { outline: { rectangle: [100, 60] }, thickness: 12 },
  limits: { web: 2, knifeEdge: 30 },
  resolution: 0.1,
  cuts: [hole],
});
const answer = rangeOf(plate, { cut: 'hole', along: 'y', from: -20, to: 30 });

interface Text {
  readonly words: string;
  readonly bold: boolean;
  readonly box: readonly [number, number, number, number];
}

/** The texts of a drawing with boxes as wide as wide faces would need them: left, top, right, bottom. */
function textsOf(svg: string): Text[] {
  return [...svg.matchAll(/<text ([^>]*)>([^<]*)</g)].map(([, attributes = '', words = '']) => {
    const get = (name: string) => new RegExp(`${name}="([^"]*)"`).exec(attributes)?.[1] ?? '';
    const [x, y, size] = [Number(get('x')), Number(get('y')), Number(get('font-size'))];
    const plain = words.replaceAll('&amp;', '&').replaceAll('&lt;', '<').replaceAll('&gt;', '>');
    const bold = get('font-weight') === 'bold';
    const width = textWidth(plain, size, bold);
    const left =
      get('text-anchor') === 'end' ? x - width : get('text-anchor') === 'middle' ? x - width / 2 : x;
    return { words: plain, bold, box: [left, y - 0.74 * size, left + width, y + 0.22 * size] };
  });
}

type Segment = readonly [number, number, number, number];

function linesOf(svg: string): Segment[] {
  return [...svg.matchAll(/<line ([^>]*)>/g)].map(([, attributes = '']) => {
    const get = (name: string) => Number(new RegExp(` ?${name}="([^"]*)"`).exec(attributes)?.[1]);
    return [get('x1'), get('y1'), get('x2'), get('y2')];
  });
}

/** Whether a line goes through a box: clipped to it, after Liang and Barsky (1984), something is left. */
function goesThrough([x1, y1, x2, y2]: Segment, [left, top, right, bottom]: Text['box']): boolean {
  let [from, to] = [0, 1];
  for (const [p, q] of [
    [x1 - x2, x1 - left],
    [x2 - x1, right - x1],
    [y1 - y2, y1 - top],
    [y2 - y1, bottom - y1],
  ] as const) {
    if (p === 0 && q < 0) return false;
    if (p < 0) from = Math.max(from, q / p);
    if (p > 0) to = Math.min(to, q / p);
  }
  return from < to;
}

/** What is wrong with where the texts stand. */
function clutterOf(svg: string): string[] {
  const texts = textsOf(svg);
  const found: string[] = [];
  const [, width = 0, height = 0] = (/viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? []).map(Number);
  for (const { words, box } of texts) {
    if (box[0] < 0 || box[1] < 0 || box[2] > width || box[3] > height)
      found.push(`"${words}" is off the sheet`);
  }
  texts.forEach((one, k) => {
    for (const other of texts.slice(k + 1)) {
      const apart =
        one.box[2] <= other.box[0] ||
        other.box[2] <= one.box[0] ||
        one.box[3] <= other.box[1] ||
        other.box[3] <= one.box[1];
      if (!apart) found.push(`"${one.words}" is over "${other.words}"`);
    }
    for (const line of linesOf(svg)) {
      if (goesThrough(line, one.box)) found.push(`a line goes through "${one.words}"`);
    }
  });
  return found;
}

const names = fc.constantFrom(
  'seat',
  'a',
  'the bore for the cloth beam roller at the far end',
  'W'.repeat(60),
);
const sources = names.map((name) => `cut:${name}`);
const changes: fc.Arbitrary<RangeChange> = fc.oneof(
  fc.constant<RangeChange>({ what: 'relation', from: 'inside', to: 'breaks out' }),
  fc
    .tuple(
      fc.constantFrom('comes' as const, 'goes' as const),
      fc.constantFrom('thin-web', 'knife-edge', 'cut-grazes'),
      sources,
    )
    .map(
      ([change, code, source]): RangeChange => ({
        what: 'finding',
        change,
        level: 'check',
        code,
        about: [source, 'outline:3'],
      }),
    ),
);

/** Ranges with many events close together, which no part would have. */
const crowded = fc
  .record({
    values: fc.uniqueArray(
      fc.oneof(fc.integer({ min: 1, max: 999_999 }), fc.integer({ min: 5000, max: 5050 })),
      {
        maxLength: 60,
      },
    ),
    all: fc.array(fc.array(changes, { minLength: 1, maxLength: 3 }), { minLength: 60, maxLength: 60 }),
    now: fc.integer({ min: -200_000, max: 1_200_000 }),
    cut: names,
    units: fc.constantFrom('mm', 'inch' as const),
    scale: fc.constantFrom(1, -1000),
  })
  .map(({ values, all, now, cut, units, scale }): RangeReport => {
    const [from, to] = scale > 0 ? [0, 1] : [-1000, -999];
    const places = [...values].sort((a, b) => a - b).map((value) => from + value / 1e6);
    const ends = [from, ...places, to];
    return {
      ...answer,
      cut,
      units,
      from,
      to,
      now: from + now / 1e6,
      present: {
        interval: places.filter((at) => at < from + now / 1e6).length,
        event: null,
        below: 0.1,
        above: 0.25,
      },
      events: places.map((at, k) => ({ at, changes: all[k] as readonly RangeChange[] })),
      intervals: ends.slice(1).map((end, k) => {
        const like = answer.intervals[k % answer.intervals.length] as RangeInterval;
        return { ...like, from: ends[k] as number, to: end };
      }),
    };
  });

describe('the strip of a range', () => {
  it('says of each interval whether it is safe and of each event where it is, and where the value is now', () => {
    const texts = textsOf(drawRange(answer));
    const words = texts.map((text) => text.words);
    // The legend has the words once more, in plain type.
    const verdicts = texts.filter((text) => text.bold && ['SAFE', 'not safe'].includes(text.words));
    expect(verdicts.map((text) => text.words)).toEqual(
      answer.intervals.map(({ safe }) => (safe ? 'SAFE' : 'not safe')).reverse(),
    );
    // The circle touches the edge at its radius, 8; crosses it at 30 degrees at 8 cos 30; web 2; grazes within 0.1.
    for (const value of ['-8.100', '-7.900', '6.928', '8.000', '10.000', '20.000'])
      expect(words).toContain(value);
    expect(words.join(' ').replaceAll('\u00a0', ' ')).toContain('NOW, safe; next change: 10.000 mm down');
  });

  it('hatches what is safe and leaves the rest open, in black and white, with the present value marked', () => {
    const svg = drawRange(answer);
    const picture = new Resvg(svg, { background: 'white', fitTo: { mode: 'zoom', value: 4 } }).render();
    const { pixels, width } = picture;
    for (let k = 0; k < pixels.length; k += 4) {
      if (pixels[k] !== pixels[k + 1] || pixels[k] !== pixels[k + 2])
        throw new Error(`a pixel with a colour at ${k}`);
    }
    const sheet = Number(/viewBox="0 0 ([\d.]+)/.exec(svg)?.[1]);
    const strip =
      /id="edgebite-strip".*?<rect width="14" height="([\d.]+)" [^>]*fill="none"[^>]*x="([\d.]+)" y="([\d.]+)"/.exec(
        svg,
      );
    const [high = 0, x = 0, y = 0] = (strip ?? []).slice(1).map(Number);
    const dark = (value: number) => {
      // A row of pixels across the strip within its side bars.
      const row = Math.round(((y + (high * (30 - value)) / 50) * width) / sheet);
      const columns = Array.from({ length: 40 }, (_, n) => Math.round(((x + 2 + n * 0.25) * width) / sheet));
      return (
        columns.filter((column) => (pixels[(row * width + column) * 4] as number) < 128).length /
        columns.length
      );
    };
    expect(high).toBeGreaterThan(80);
    for (const { from, to, safe } of answer.intervals) {
      if (to - from < 2) continue;
      const at = from + (to - from) * 0.3;
      const share = dark(at);
      if (safe) {
        expect(share).toBeGreaterThan(0.1);
        expect(share).toBeLessThan(0.5);
      } else expect(share).toBe(0);
    }
    expect(dark(20)).toBe(1);
  });

  it('has a title and a description that tell all of it', () => {
    const svg = drawRange(answer, { idPrefix: 'one-' });
    expect(svg).toContain('aria-labelledby="one-title one-description"');
    expect(/<title id="one-title">([^<]*)</.exec(svg)?.[1]).toBe(
      'Breast beam cap: safe intervals of cut hole, centre along y',
    );
    const description = /<desc id="one-description">([^<]*)</.exec(svg)?.[1];
    expect(description).toContain('from -20.000 to 30.000 mm; now 20.000.');
    expect(description).toContain('10.000 to 30.000 safe: inside; kept piece.');
    expect(description).toContain('At 10.000: goes: thin web between cut hole and the front.');
  });

  it('has no text over another or under a line, however many events there are and wherever the value is', () => {
    expect(clutterOf(drawRange(answer))).toEqual([]);
    fc.assert(
      fc.property(crowded, fc.constantFrom(120, 180, 400), (range, width) => {
        const svg = drawRange(range, { width });
        new Resvg(svg, { font: { loadSystemFonts: false } });
        expect(clutterOf(svg)).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  it('keeps hostile names as text', () => {
    const name = '"><script>alert(1)</script>&amp;\u0000</svg>';
    const svg = drawRange({ ...answer, name, cut: name });
    new Resvg(svg, { font: { loadSystemFonts: false } });
    expect(svg).not.toContain('<script');
    expect(svg.match(/<\/svg>/g)).toHaveLength(1);
  });

  it('is the same every time', () => {
    const svg = drawRange(answer, { width: 150 });
    expect(svg).toMatch(/^<svg [^>]*width="150mm"/);
    expect(drawRange(answer, { width: 150 })).toBe(svg);
  });

  it('refuses ids and widths that it cannot use', () => {
    expect(() => drawRange(answer, { idPrefix: '1 ' })).toThrow('drawRange: options.idPrefix is "1 "');
    for (const width of [119, 1001, Number.NaN]) {
      expect(() => drawRange(answer, { width })).toThrow(
        `drawRange: options.width is ${width}; it must be from 120`,
      );
    }
  });
});
