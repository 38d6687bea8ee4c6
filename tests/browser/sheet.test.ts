import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sheetHtml } from '../../packages/previewer/src/sheet/html.js';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { picturesOf } from '../../packages/previewer/src/sheet/pictures.js';
import { shownText } from '../../packages/previewer/src/step/readout.js';
import { sheetReports } from '../sheet/hard-jobs.js';
import { launched } from './chromium.js';

/** Papers, mm (ISO 216; ANSI/ASME Y14.1: 8.5 by 11 in), and their size in points of 1/72 in as a PDF has it. */
const PAPERS = [
  { format: 'A4', width: 210, height: 297, points: [595.28, 841.89] },
  { format: 'Letter', width: 215.9, height: 279.4, points: [612, 792] },
] as const;

/** Margin of the sheet, mm; and CSS pixels in a millimetre (CSS Values: 96 to the inch). */
const MARGIN = 12;
const PIXELS = 96 / 25.4;

let browser: Browser;

beforeAll(async () => {
  browser = await launched();
});

afterAll(async () => {
  await browser?.close();
});

/** What sticks out of the printed width, or out of its own cell; and targets that are broken over lines. */
async function faultsOf(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const faults: string[] = [];
    const width = document.documentElement.clientWidth;
    for (const element of document.querySelectorAll('body *')) {
      const box = element.getBoundingClientRect();
      const name = `${element.tagName}: ${(element.textContent ?? '').slice(0, 40)}`;
      const figure = element.closest('figure')?.getBoundingClientRect();
      if (element instanceof SVGElement && figure !== undefined) {
        // Of a picture its lettering: shapes are clipped where they go on. Fonts differ by a few pixels.
        const isOut =
          box.right > figure.right + 3 || box.left < figure.left - 3 || box.bottom > figure.bottom + 3;
        if (element.tagName === 'text' && isOut) faults.push(`out of its picture, ${name}`);
        continue;
      }
      // Half a pixel is rounding.
      if (box.right > width + 0.5 || box.left < -0.5) faults.push(`off the page, ${name}`);
      if (element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0)
        faults.push(`too wide, ${name}`);
      if (element.scrollHeight > element.clientHeight + 1 && element.clientHeight > 0)
        faults.push(`too tall, ${name}`);
    }
    // Half of a collapsed border lies outside of its table, and a printer cuts at the page's edge without mercy.
    for (const table of document.querySelectorAll('table')) {
      if (table.getBoundingClientRect().right > width - 1) faults.push('border cut off');
    }
    for (const cell of document.querySelectorAll('td.t, td.n')) {
      const range = document.createRange();
      range.selectNodeContents(cell);
      const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
      if (lines.size > 1) faults.push(`broken over lines: ${cell.textContent}`);
    }
    return faults;
  });
}

/** Width and height of the pages of a PDF, points. Chromium writes them without compression. */
function pagesOf(pdf: Buffer): number[][] {
  return [...pdf.toString('latin1').matchAll(/\/Type\s*\/Page\b[\s\S]*?\/MediaBox\s*\[([^\]]*)\]/g)].map(
    ([, box]) => (box as string).trim().split(/\s+/).slice(2).map(Number),
  );
}

describe.each(sheetReports())('the sheet of %s', (_, report) => {
  const sheet = sheetOf(report);

  it.each(PAPERS)('on $format: nothing is cut off', async ({ format, width, height, points }) => {
    const page = await browser.newPage({
      viewport: {
        width: Math.floor((width - 2 * MARGIN) * PIXELS),
        height: Math.floor((height - 2 * MARGIN) * PIXELS),
      },
    });
    const said: string[] = [];
    page.on('console', (message) => said.push(message.text()));
    page.on('request', (request) => said.push(`asks for ${request.url()}`));
    await page.setContent(sheetHtml(sheet, picturesOf(report, sheet)));
    await page.emulateMedia({ media: 'print' });
    expect(await faultsOf(page)).toEqual([]);
    expect(said).toEqual([]);
    const text = await page.evaluate(() => document.body.textContent);
    for (const block of sheet.blocks)
      for (const { target } of block.steps.flatMap(({ stands }) => stands))
        for (const value of target) expect(text).toContain(shownText(value, block));
    const colors = await page.evaluate(() =>
      [...document.querySelectorAll('body, body *')].map((element) => {
        const { color, backgroundColor } = getComputedStyle(element);
        return `${color} on ${backgroundColor}`;
      }),
    );
    for (const color of new Set(colors)) {
      expect(color).toMatch(/^rgb\(0, 0, 0\) on (rgb\(255, 255, 255\)|rgba\(0, 0, 0, 0\))$/);
    }
    const pages = pagesOf(await page.pdf({ format }));
    expect(pages.length).toBeGreaterThanOrEqual(sheet.blocks.length);
    for (const size of pages)
      size.forEach((length, k) => {
        // Chromium rounds to whole pixels, up to 0.75 points each.
        expect(Math.abs(length - (points[k] as number))).toBeLessThan(1);
      });
    await page.close();
  });
});

it('the check finds what is cut off', async () => {
  const page = await browser.newPage({ viewport: { width: 300, height: 300 } });
  await page.setContent(
    '<table style="table-layout: fixed; width: 100px"><tr><td class="n">1234567890123456789</td></tr></table>' +
      '<p style="width: 400px">wide</p><table><tr><td class="t">12<br>34</td></tr></table>',
  );
  const faults = await faultsOf(page);
  for (const fault of ['too wide, TD: 1234', 'off the page, P: wide', 'broken over lines: 1234']) {
    expect(faults.some((found) => found.startsWith(fault))).toBe(true);
  }
  await page.close();
});
