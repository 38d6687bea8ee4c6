import { outlineRegion, parseJob, toSvgDocument } from '@edgebite/core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { block } from './block.js';
import { looks } from './looks.js';
import { jobOf, openJob, openText, saved, settled, shows, typeOver } from './open.js';

const { look } = looks();

const svg = (inside: string, head = 'width="100mm" height="60mm" viewBox="0 0 100 60"'): string =>
  `<?xml version="1.0"?>\n<svg xmlns="http://www.w3.org/2000/svg" ${head}>${inside}</svg>`;

/** A link of 80 by 40 with a bite in its upper edge and a hole, drawn as programs do: groups, transforms, styles. */
const LINK = svg(
  `<title>Link</title><metadata><x:y xmlns:x="urn:x"/></metadata><x:view xmlns:x="urn:x" z="1"/><style>path{fill:red}</style>
   <g transform="translate(10 10)"><path style="fill:none" d="M0 0h30a10 10 0 0 0 20 0h30v40h-80z"/>
   <g transform="rotate(90 40 20)"><circle cx="40" cy="20" r="4"/></g></g>`,
);

const choose = async (page: Page, text: string, name = 'link.svg'): Promise<void> => {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open an outline…' }).click(),
  ]);
  await chooser.setFiles({ name, mimeType: 'image/svg+xml', buffer: Buffer.from(text) });
  await page.waitForSelector('.outline-read, [role=alert]');
};

const paste = async (page: Page, text: string): Promise<void> => {
  await page.evaluate((words) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', words);
    document.body.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
    );
  }, text);
  await page.waitForSelector('.outline-read, [role=alert]');
};

describe('an outline file', () => {
  it('becomes a part by a click, with its thickness typed', async () => {
    const page = await look();
    await choose(page, LINK);
    expect(await page.locator('.outline-read').textContent()).toMatch(
      /An outline from link.svg.*80 by 40 mm, one hole; its lower left corner is at zero/,
    );
    // It says how large it is, so nobody is asked.
    expect(await page.locator('#outline-units').count()).toBe(0);
    await typeOver(page, '#outline-thickness', '12,5');
    await page.getByRole('button', { name: 'Cut into it' }).click();
    await shows(page, 'link');
    const made = parseJob(await jobOf(page));
    expect(made.thickness).toBe(12.5);
    expect(made.units).toBe('mm');
    const drawn = made.outline.flatMap(({ outer, holes }) => [outer, ...holes].flat());
    const arcs = drawn.flatMap((edge) => (edge.kind === 'arc' ? [[edge.center, edge.radius]] : []));
    // By hand: the bite is from x 30 to 50 of the upper edge, the hole in the middle.
    expect(arcs).toEqual([
      [{ x: 40, y: 40 }, 10],
      [{ x: 40, y: 20 }, 4],
      [{ x: 40, y: 20 }, 4],
    ]);
    // The first bite can be put at once.
    await page.waitForSelector('#bite-panel[open]');
  });

  it('becomes a part by keys alone, pasted, in inches', async () => {
    const page = await look({ width: 390, height: 800 });
    const text = 'POLYGON((0 0, 4 0, 4 2, 0 2, 0 0))';
    await paste(page, text);
    await page.waitForFunction(() => document.activeElement?.id === 'outline-thickness');
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('ArrowDown');
    expect(await page.locator('.outline-read').textContent()).toMatch(/4 by 2 in, no hole/);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('5/8');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await settled(page);
    expect(await jobOf(page)).toMatchObject({
      units: 'inch',
      part: { outline: { wkt: text }, thickness: 0.625 },
      cuts: [],
    });
  });

  it('becomes a blank, or what is to be left of a plate', async () => {
    const page = await look();
    const text = 'M0 0 H60 V30 H40 A10 10 0 0 0 20 30 H0 Z';
    await choose(page, text, 'rest.txt');
    await page.getByRole('button', { name: 'Take it as a blank' }).click();
    await page.waitForSelector('#ways-state');
    const blank = JSON.parse(await saved(page, 'Save as a file'));
    expect(blank).toMatchObject({
      blank: { svgPath: text },
      finished: { bites: [{ circle: 7.5, at: [30, 15] }] },
      thickness: 10,
    });
    // From there another one, over what stands there.
    await openText(page, text, 'rest.txt');
    await page.getByRole('button', { name: 'Make it from a plate' }).click();
    await page.waitForSelector('#ways-state');
    const left = JSON.parse(await saved(page, 'Save as a file'));
    expect(left).toMatchObject({
      blank: { rectangle: [60, 30], at: [0, 0] },
      finished: { svgPath: text },
    });
    await openText(page, text, 'rest.txt');
    await page.getByRole('button', { name: 'Cut into it' }).click();
    await shows(page, 'rest');
  });

  it('and a job alike take the place of what ways were looked for', async () => {
    const page = await look();
    await page.getByRole('button', { name: 'A plate with a hole' }).click();
    await page.waitForSelector('#ways-state');
    await openJob(page, block);
    expect(await jobOf(page)).toEqual(block);
  });

  it('gives back what the library wrote', async () => {
    const page = await look();
    const plate = outlineRegion([
      { kind: 'line', a: { x: 0, y: 0 }, b: { x: 2, y: 0 } },
      { kind: 'line', a: { x: 2, y: 0 }, b: { x: 2, y: 1 } },
      { kind: 'arc', a: { x: 2, y: 1 }, b: { x: 0, y: 1 }, center: { x: 1, y: 1 }, radius: 1, ccw: true },
      { kind: 'line', a: { x: 0, y: 1 }, b: { x: 0, y: 0 } },
    ]);
    await choose(page, toSvgDocument(plate, { unit: 'in' }));
    await page.getByRole('button', { name: 'Cut into it' }).click();
    await shows(page, 'link');
    const made = parseJob(await jobOf(page));
    expect(made.units).toBe('inch');
    expect(made.thickness).toBe(0.375);
    expect(made.outline[0]?.outer.map(({ a }) => [a.x, a.y])).toEqual(
      plate[0]?.outer.map(({ a }) => [expect.closeTo(a.x, 12), expect.closeTo(a.y, 12)]),
    );
  });

  it.each([
    [svg('<path d="M0 0 C1 2 3 4 5 6 Z"/>'), /at position 5: "C" draws a Bézier curve/],
    [svg('<path d="M0 0 A5 4 0 0 1 9 0 Z"/>'), /the arc has two radii, 5 and 4/],
    [svg('<path d="M0 0H9V9Z" transform="scale(2 1)"/>'), /stretched or slanted/],
    [svg('<path d="M0 0H9V9Z"/><text>9</text>'), /holds a text; leave only the outline/],
    [svg('<path d="M0 0H9V9"/>'), /open|close/],
    [svg('<defs><path d="M0 0H9V9Z"/></defs>'), /draws no path/],
    [svg('<path d="M0 0'), /draws no path/],
    ['<html><path d="M0 0H9V9Z"/></html>', /is no SVG picture/],
    ['POLYGON((0 0, 9 0))', /could not be opened/],
    ['what is this', /"WHAT" is named here; these are read/],
  ])('is refused in one sentence where it cannot be read, and nothing is lost: %s', async (text, words) => {
    const page = await look();
    await openJob(page, block);
    await openText(page, text, 'bad.svg');
    const note = page.locator('[role=alert]');
    expect(await note.textContent()).toMatch(words);
    expect(await note.locator('li').count()).toBe(1);
    expect(await page.locator('.outline-read').count()).toBe(0);
    await page.getByRole('button', { name: 'Put this note away' }).click();
    expect(await jobOf(page)).toEqual(block);
  });

  it('can be left, and what is open stays', async () => {
    const page = await look();
    await openJob(page, block);
    await openText(page, LINK, 'link.svg');
    await page.getByRole('button', { name: 'Leave it' }).click();
    expect(await page.locator('.outline-read').count()).toBe(0);
    expect(await jobOf(page)).toEqual(block);
    await openText(page, LINK, 'link.svg');
    await page.getByRole('button', { name: 'Cut into it' }).click();
    await shows(page, 'link');
    await page.click('#undo');
    await shows(page, block.name);
  });
});
