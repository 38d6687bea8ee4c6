import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { block } from './block.js';
import { looks } from './looks.js';
import { expected, jobOf, openJob, sentences, settled } from './open.js';

const { look } = looks();

const COLUMNS = 90;

function crowd(count: number) {
  return {
    edgebite: 1,
    name: `${count} holes`,
    units: 'mm',
    part: {
      outline: { rectangle: [COLUMNS * 10 + 10, Math.ceil(count / COLUMNS) * 10 + 10] },
      thickness: 8,
    },
    cuts: Array.from({ length: count }, (_, k) => ({
      id: `hole-${k}`,
      kind: 'bore',
      center: [10 + (k % COLUMNS) * 10, 10 + Math.floor(k / COLUMNS) * 10],
      diameter: 6,
    })),
  };
}

/** Where a place of the part lies on the screen, by the box of the metal that is drawn. */
async function placeOf(page: Page, [x, y]: readonly [number, number], width: number) {
  await page.locator('#board').scrollIntoViewIfNeeded();
  const box = await page.locator('#metal .gone').boundingBox();
  if (box === null) throw new Error('there is no part');
  const scale = box.width / width;
  return { x: box.x + x * scale, y: box.y + box.height - y * scale, scale };
}

describe('a part with thousands of holes', () => {
  it('is shown by few elements, however many holes it has, and the full drawing where it is asked for', async () => {
    const page = await look();
    const counted = async (count: number) => {
      await openJob(page, crowd(count));
      // Any full drawing would be there a little after the job rests.
      await page.waitForTimeout(600);
      return page.evaluate(() => document.querySelectorAll('*').length);
    };
    const [some, many] = [await counted(400), await counted(2000)];
    expect(many).toBeLessThan(some + 50);
    expect(await page.locator('.board.full').count()).toBe(0);
    expect(await sentences(page)).toEqual(expected(crowd(2000)));
    await openJob(page, crowd(310));
    await page.getByRole('button', { name: 'Draw the sheet' }).click();
    await page.waitForSelector('.sheet .paper:not(.old) svg');
  });

  it('lets each hole be taken hold of, by pointer and by keys', async () => {
    const page = await look();
    const job = crowd(600);
    await openJob(page, job);
    const at = await placeOf(page, [410, 40], COLUMNS * 10 + 10);
    await page.mouse.move(at.x + 1, at.y);
    await page.mouse.down();
    await page.waitForSelector('.handle.chosen');
    await page.mouse.move(at.x + 63, at.y - 4, { steps: 12 });
    await page.mouse.up();
    await settled(page);
    const [x = 0] = (await jobOf(page)).cuts[310]?.center ?? [];
    expect(Math.abs(x - 410 - 62 / at.scale)).toBeLessThan(1.5 / at.scale);
    await page.focus('#handle-310');
    await page.keyboard.press('PageDown');
    await page.waitForFunction(() => document.activeElement?.id === 'handle-311');
    await page.keyboard.press('ArrowRight');
    await settled(page);
    expect((await jobOf(page)).cuts[311]?.center).toEqual([420.005, 40]);
    await page.focus('#handle-311');
    await page.keyboard.press('PageUp');
    await page.waitForFunction(() => document.activeElement?.id === 'handle-310');
  });

  it('does not hold up another file', async () => {
    const page = await look();
    const files = [crowd(5000), block].map((job) => ({
      name: 'job.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(job)),
    }));
    for (const file of files) await page.setInputFiles('#file', file);
    await page.waitForFunction(
      (name) => (document.getElementById('at/name') as HTMLInputElement | null)?.value === name,
      block.name,
    );
    await settled(page);
    expect(await jobOf(page)).toEqual(block);
    expect(await sentences(page)).toEqual(expected(block));
  });
});
