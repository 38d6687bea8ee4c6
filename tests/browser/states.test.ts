import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { looks } from './looks.js';
import { STATES } from './states.js';

const { look } = looks();

const path = createRequire(import.meta.url).resolve('axe-core');

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** What axe finds, each with the first of its elements. */
async function found(page: Page, isPaper: boolean): Promise<readonly string[]> {
  return page.evaluate(async (isPaper) => {
    const { axe } = window as unknown as {
      axe: { run: (options: object) => Promise<{ violations: Violation[] }> };
    };
    // Nobody goes from heading to heading on paper; the drawing has a title of its own.
    const rules = isPaper ? { 'page-has-heading-one': { enabled: false } } : {};
    const { violations } = await axe.run({ rules });
    return violations.map(
      ({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)} ${nodes[0]?.failureSummary}`,
    );
  }, isPaper);
}

const sideways = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe.each([
  { width: 1440, height: 900, dark: false, touch: false },
  { width: 390, height: 844, dark: true, touch: true },
])('$width wide, dark: $dark', ({ width, height, dark, touch }) => {
  it.each(STATES)('axe finds nothing in $name', async ({ name, reach }) => {
    const page = await look({ width, height, dark, touch, init: { path } });
    await reach(page);
    const isPaper = name.startsWith('the printed');
    expect(await found(page, isPaper)).toEqual([]);
    if (!isPaper) expect(await sideways(page)).toBe(0);
  });
});

describe('the narrowest screen, and a page twice as large', () => {
  // WCAG 2.2, 1.4.10: 320 CSS pixels wide; 1.4.4: 200 %, which leaves half of a desk's 1280.
  it.each(STATES.filter(({ name }) => !name.startsWith('the printed')))(
    'need no scrolling sideways in $name',
    async ({ reach }) => {
      const page = await look({ width: 640, height: 450 });
      await reach(page);
      expect(await sideways(page), 'at 640').toBe(0);
      await page.setViewportSize({ width: 320, height: 640 });
      await page.waitForFunction(() => document.documentElement.clientWidth <= 320);
      expect(await sideways(page), 'at 320').toBe(0);
    },
  );
});
