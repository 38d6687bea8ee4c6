import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { block } from './block.js';
import { looks } from './looks.js';
import { placeOf } from './on-board.js';
import { jobOf, openJob, saved, settled } from './open.js';

const { look } = looks();

const words = '.live-words';

describe('the dimensions of a cut that moves', () => {
  it('stand on the board while it is dragged, and go when the full drawing is back', async () => {
    const page = await look();
    await openJob(page, block);
    expect(await page.locator('.live').count()).toBe(0);
    const from = await placeOf(page, [60, 5.2]);
    const to = await placeOf(page, [54, 10.4]);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 8 });
    await settled(page);
    const { x, y, web } = await page.evaluate(() => {
      const number = (text: string | null | undefined) => Number(text?.replace(/[^\d.]/g, ''));
      const [across, along] = [...document.querySelectorAll('.live .edge text')];
      const told = document.querySelector('.live-words p')?.textContent ?? '';
      return { x: number(along?.textContent), y: number(across?.textContent), web: told };
    });
    await page.mouse.up();
    const [left, front] = (await jobOf(page)).cuts[3]?.center ?? [0, 0];
    // The nearest edges are the front and, of a block of 90, the right end; 4 is the radius of the pin.
    expect(y).toBeCloseTo(front, 3);
    expect(x).toBeCloseTo(90 - left, 3);
    const size = front - 4;
    expect(web).toBe(
      `Web ${size.toFixed(3)} mm to the front, ${Math.abs(size - 1.5).toFixed(3)} ${size < 1.5 ? 'under' : 'over'} the limit`,
    );
    await page.waitForSelector('.board.full');
    expect(await page.locator('.live').count()).toBe(0);
  });

  it('follow each press of a key, and are those of the bite where a face is opened', async () => {
    const page = await look({ width: 390, height: 844, touch: true });
    await openJob(page, block);
    await page.waitForSelector('.board.full');
    await page.focus('#handle-2');
    // A circle of 26 about a place 4 before the left end: 9 deep; each press is one step of 0.005 or ten of them.
    await page.keyboard.press('Shift+ArrowRight');
    await expect.poll(() => page.textContent(words)).toContain('9.050 mm deep');
    await page.keyboard.press('Shift+ArrowRight');
    await expect.poll(() => page.textContent(words)).toContain('9.100 mm deep');
    // By hand: half of it is the root of 13 by 13 less 3.9 by 3.9, 12.401.
    expect(await page.textContent(words)).toContain('opens 24.802 mm');
    await settled(page);
    const check = examine(parseJob(JSON.parse(await saved(page, 'Job')))).cuts.find(
      ({ id }) => id === 'rest',
    );
    expect(check?.center).toEqual([-3.9, 20]);
  });

  it('let the web be set where two cuts are next to each other', async () => {
    const page = await look();
    await openJob(page, {
      ...block,
      name: 'Two holes',
      cuts: [
        { id: 'a', kind: 'bore', center: [30, 20], diameter: 10 },
        { id: 'b', kind: 'bore', center: [44, 20], diameter: 12 },
      ],
    } as never);
    await page.waitForSelector('.board.full');
    await page.focus('#handle-1');
    await page.waitForSelector('#web-size');
    // 14 less 5 and 6.
    expect(await page.inputValue('#web-size')).toBe('3.000');
    expect(await page.textContent('label[for="web-size"]')).toBe('web to cut a');
    await page.fill('#web-size', '1.25');
    await page.keyboard.press('Enter');
    await settled(page);
    expect((await jobOf(page)).cuts[1]?.center).toEqual([42.25, 20]);
    // What is no length changes nothing.
    await page.fill('#web-size', 'x');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.inputValue('#web-size')).toBe('1.250');
    expect((await jobOf(page)).cuts[1]?.center).toEqual([42.25, 20]);
  });
});
