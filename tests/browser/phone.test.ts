import { describe, expect, it } from 'vitest';
import { block } from './block.js';
import { looks } from './looks.js';
import { expected, id, jobOf, openJob, sentences, settled } from './open.js';

const { look } = looks();

const PHONE = { width: 390, height: 844, touch: true } as const;

describe('on a phone', () => {
  it('the drawing stays in sight, and a thumb moves the cut from wherever one is', async () => {
    const page = await look(PHONE);
    await openJob(page, block);
    await page.waitForSelector('.board.full');
    // The board comes before what is to be read.
    const top = (selector: string) =>
      page.locator(selector).evaluate((one) => one.getBoundingClientRect().top);
    expect(await top('#board')).toBeLessThan(await top('.findings'));
    const cross = await page.locator('#handle-3 .target').boundingBox();
    if (cross === null) throw new Error('there is no handle');
    await page.touchscreen.tap(cross.x + cross.width / 2, cross.y + cross.height / 2);
    await page.locator('#card-takeaways').scrollIntoViewIfNeeded();
    const board = await page.locator('#board').boundingBox();
    expect([board?.y, (board?.height ?? 0) < 844 / 2]).toEqual([0, true]);
    const nudge = page.getByRole('button', { name: 'Move right by 0.05 mm' });
    const at = await nudge.boundingBox();
    // In the lower third, where the thumb of the hand that holds it reaches.
    expect(at?.y ?? 0).toBeGreaterThan((844 * 2) / 3);
    await page.touchscreen.tap((at?.x ?? 0) + 20, (at?.y ?? 0) + 20);
    await settled(page);
    expect((await jobOf(page)).cuts[3]?.center).toEqual([60.05, 5.2]);
  });

  it('a field that has the keys is under nothing', async () => {
    const page = await look(PHONE);
    await openJob(page, block);
    await page.focus('#handle-3');
    for (const pointer of ['/cuts/3/diameter', '/cuts/3/center/1', '/part/thickness', '/name']) {
      await page.focus(id(pointer));
      const free = await page.evaluate(() => {
        const box = document.activeElement?.getBoundingClientRect();
        if (box === undefined) return false;
        const there = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
        return there !== null && document.activeElement?.contains(there) === true;
      });
      expect(free, pointer).toBe(true);
    }
  });

  it('has targets of 44 pixels', async () => {
    const page = await look(PHONE);
    await openJob(page, block);
    await page.focus('#handle-3');
    const small = await page.$$eval('button, select, summary, .entry input, .handle .target', (all) =>
      all
        .filter((one) => one.getClientRects().length > 0)
        // Half a pixel is rounding. WCAG 2.2, 2.5.5: 44 by 44 CSS pixels.
        .filter((one) => one.getBoundingClientRect().height < 43.5)
        .map((one) => one.outerHTML.slice(0, 120)),
    );
    expect(small).toEqual([]);
  });

  it('needs no scrolling sideways, down to 320 pixels', async () => {
    const page = await look({ width: 320, height: 640, touch: true });
    await openJob(page, block);
    await page.focus('#handle-3');
    for (const cut of await page.locator('.cuts .strip .name').all())
      await cut.evaluate((one) => (one as HTMLElement).click());
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
    ).toBe(0);
    expect(await sentences(page)).toEqual(expected(block));
  });
});

it('goes to the parts of the page by buttons that stay under the drawing', async () => {
  const page = await look({ width: 390, height: 844, touch: true });
  await openJob(page, block);
  await page.waitForSelector('.step-walk');
  for (const [name, heading] of [
    ['Machine', 'card-steps'],
    ['Numbers', 'card-cuts'],
    ['Watch', 'card-findings'],
  ] as const) {
    await page.getByRole('button', { name, exact: true }).click();
    const seen = await page.evaluate((id) => {
      const { top, bottom } = (document.getElementById(id) as HTMLElement).getBoundingClientRect();
      const bar = (document.querySelector('.jumps') as HTMLElement).getBoundingClientRect();
      return {
        top,
        bottom,
        under: bar.bottom,
        height: window.innerHeight,
        focus: document.activeElement?.id,
      };
    }, heading);
    // Its heading is in sight, under the drawing and the buttons, and the keys go on from there.
    expect(seen.top).toBeGreaterThanOrEqual(seen.under - 1);
    expect(seen.bottom).toBeLessThan(seen.height);
    expect(seen.focus).toBe(heading);
  }
});
