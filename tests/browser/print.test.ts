import { inflateSync } from 'node:zlib';
import { examine, parseJob } from '@edgebite/core';
import { draw, type SheetSize } from '@edgebite/svg';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EXAMPLES, exampleReport } from '../svg/cases.js';
import { launched } from './chromium.js';

/** A point of PDF is 1/72 inch (ISO 32000-1, 8.3.2.3). */
const POINT = 25.4 / 72;

let browser: Browser;

beforeAll(async () => {
  browser = await launched();
});

afterAll(() => browser?.close());

/** A plate 100 by 50, of which the sheet shows a dimension of 50 mm. */
const plate = examine(
  parseJob({
    edgebite: 1,
    name: 'Plate',
    units: 'mm',
    part: { outline: { rectangle: [100, 50] }, thickness: 8 },
    cuts: [{ id: 'eye', kind: 'bore', center: [30, 20], diameter: 12 }],
  }),
);

async function opened(svg: string): Promise<Page> {
  const page = await browser.newPage();
  await page.setContent(
    `<!doctype html><style>@page{margin:0}body{margin:0}svg{display:block}</style>${svg}`,
  );
  return page;
}

describe('a printed sheet', () => {
  it.each<[SheetSize, number, number]>([
    ['A4', 297, 210],
    ['A3', 420, 297],
    ['Letter', 279.4, 215.9],
  ])('%s has its true size, and a 50 mm dimension measures 50.0 mm on it', async (sheet, width, height) => {
    const svg = draw(plate, { sheet });
    const [, over, under] = /SCALE (\d+):(\d+)/.exec(svg) ?? [];
    const scale = Number(over) / Number(under);
    const page = await opened(svg);
    const pdf = await page.pdf({ width: `${width}mm`, height: `${height}mm`, printBackground: true });
    await page.close();
    const box =
      /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf.toString('latin1'))?.slice(1).map(Number) ?? [];
    expect((box[0] ?? 0) * POINT).toBeCloseTo(width, 0);
    expect((box[1] ?? 0) * POINT).toBeCloseTo(height, 0);

    // The only lines of that length that stand upright are the dimension's; the bar to check a print by lies.
    const lines = linesOf(pdf);
    const upright = lines.filter(({ from, to }) => Math.abs(from[0] - to[0]) < 0.01);
    const dimension = upright.map(lengthOf).filter((length) => Math.abs(length - 50 * scale) < 0.5);
    expect(dimension.length).toBeGreaterThan(0);
    for (const length of dimension) expect(length / scale).toBeCloseTo(50, 1);
    const bar = lines.filter(({ from, to }) => Math.abs(from[1] - to[1]) < 0.01).map(lengthOf);
    expect(bar.some((length) => Math.abs(length - 50) < 0.05)).toBe(true);
  });
});

describe('lettering in the faces of a browser', () => {
  it.each(EXAMPLES)('%s: no words overlap, none leaves the sheet', async (name) => {
    const page = await opened(draw(exampleReport(name)));
    const boxes = await page.$$eval('text', (all) =>
      all.map((one) => {
        const { left, right, top, bottom } = one.getBoundingClientRect();
        return { text: one.textContent ?? '', left, right, top, bottom };
      }),
    );
    const sheet = await page.$eval('svg', (svg) => svg.getBoundingClientRect().toJSON());
    await page.close();
    expect(boxes.length).toBeGreaterThan(10);
    const over = boxes.flatMap((a, i) =>
      boxes
        .slice(i + 1)
        .filter(
          (b) => overlap(a.left, a.right, b.left, b.right) && overlap(inner(a)[0], inner(a)[1], ...inner(b)),
        )
        .map((b) => `${a.text} / ${b.text}`),
    );
    expect(over).toEqual([]);
    const off = boxes.filter(
      ({ left, right, top, bottom }) =>
        left < sheet.left || right > sheet.right || top < sheet.top || bottom > sheet.bottom,
    );
    expect(off).toEqual([]);
  });
});

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

// A browser's box is as high as the face's line, with room over capitals: a tenth at either end holds no ink.
function inner({ left, right, top, bottom }: Box): readonly [number, number] {
  const share = right - left > bottom - top ? 0.1 : 0;
  return [top + (bottom - top) * share, bottom - (bottom - top) * share];
}

function overlap(a: number, b: number, c: number, d: number): boolean {
  return a < d - 0.05 && c < b - 0.05;
}

type Xy = readonly [number, number];
type Matrix = readonly [number, number, number, number, number, number];

interface Line {
  readonly from: Xy;
  readonly to: Xy;
}

function lengthOf({ from, to }: Line): number {
  return Math.hypot(from[0] - to[0], from[1] - to[1]);
}

/** The straight lines of a PDF's page in millimetres, read from its content streams (ISO 32000-1, 8.3 to 8.5). */
function linesOf(pdf: Buffer): readonly Line[] {
  return streamsOf(pdf).flatMap((content) => {
    const lines: Line[] = [];
    const kept: Matrix[] = [];
    let matrix: Matrix = [POINT, 0, 0, POINT, 0, 0];
    let at: Xy = [0, 0];
    let operands: number[] = [];
    for (const word of content.split(/\s+/)) {
      if (/^[-+]?[\d.]+$/.test(word)) {
        operands.push(Number(word));
        continue;
      }
      const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = operands;
      if (word === 'q') kept.push(matrix);
      if (word === 'Q') matrix = kept.pop() ?? matrix;
      if (word === 'cm') matrix = times([a, b, c, d, e, f], matrix);
      if (word === 'm') at = [a, b];
      if (word === 'l') {
        lines.push({ from: placed(at, matrix), to: placed([a, b], matrix) });
        at = [a, b];
      }
      operands = [];
    }
    return lines;
  });
}

function streamsOf(pdf: Buffer): readonly string[] {
  const text = pdf.toString('latin1');
  return [...text.matchAll(/\/FlateDecode[^>]*>>\s*stream\r?\n/g)].flatMap((found) => {
    const start = found.index + found[0].length;
    const data = pdf.subarray(start, text.indexOf('endstream', start));
    const content = inflateSync(data).toString('latin1');
    return / cm\s/.test(content) ? [content] : [];
  });
}

function times([a, b, c, d, e, f]: Matrix, [p, q, r, s, t, u]: Matrix): Matrix {
  return [a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u];
}

function placed([x, y]: Xy, [a, b, c, d, e, f]: Matrix): Xy {
  return [x * a + y * c + e, x * b + y * d + f];
}
