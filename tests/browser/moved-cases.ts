import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expected, id, jobOf, type Look, middle, openJob, sentences, settled } from './open.js';
import { placed, shownInInch } from './placed.js';

/** Tests of moving what is not placed by a centre of its own. */
export function movedCases(look: (how?: Look) => Promise<Page>): void {
  describe('what is placed by other numbers than its own', () => {
    /** Drags something by a vector in the unit of the part, y up. The view may be another once it is drawn in full. */
    async function drag(page: Page, selector: string, dx: number, dy: number): Promise<void> {
      await page.waitForSelector('.board.full');
      // Two centres that stay where they are, 16 apart in x.
      const [a, b] = [await middle(page, '#handle-4 .target'), await middle(page, '#handle-1 .target')];
      const scale = (b.x - a.x) / 16;
      const from = await middle(page, selector);
      await page.mouse.move(from.x, from.y);
      await page.mouse.down();
      await page.mouse.move(from.x + dx * scale, from.y - dy * scale, { steps: 6 });
      await page.mouse.up();
      await settled(page);
    }

    /** A step of the pointer in the unit of the part, at the scale of these tests: some 7 pixels for each. */
    const POINTER = 0.3;

    const cutsOf = async (page: Page) => (await jobOf(page)).cuts as unknown as typeof placed.cuts;

    it('goes where it is dragged by the numbers that are free, as one step', async () => {
      const page = await look();
      await openJob(page, placed);
      await drag(page, '#handle-0 .target', 6, -3);
      await drag(page, '#handle-2 .target', 4, 2);
      await drag(page, '#handle-3 .target', 3, -1);
      const cuts = await cutsOf(page);
      const near = (value: number | undefined, wanted: number) =>
        expect(Math.abs((value ?? Number.NaN) - wanted)).toBeLessThan(POINTER);
      // The back runs from right to left.
      expect(cuts[0]?.center).toMatchObject({ on: 'outline:4' });
      near(cuts[0]?.center?.along, 24);
      near(cuts[0]?.center?.depth, 9);
      const [first, second] = cuts[2]?.center?.distances ?? [];
      near(first?.distance, 14);
      near(second?.distance, 24);
      // A path goes as a whole: it is the same but for where it starts.
      const [x, y, u, v] = (cuts[3]?.path?.svgPath?.match(/[\d.]+/g) ?? []).map(Number);
      near(x, 33);
      near(y, 11);
      expect(u).toBeCloseTo((x ?? 0) + 22, 6);
      expect(v).toBe(y);
      expect(await sentences(page)).toEqual(expected(await jobOf(page)));
      for (let k = 0; k < 3; k++) await page.click('#undo');
      await settled(page);
      expect(await jobOf(page)).toEqual(placed);
    });

    it('says so where no number is free, and stays', async () => {
      const page = await look();
      await openJob(page, placed);
      // The full drawing has a view of its own: a handle is elsewhere once it is there.
      await page.waitForSelector('.board.full');
      for (const [handle, words] of [
        ['#handle-1', /It touches the front and the right end/],
        ['#handle-4', /follows the outline/],
      ] as const) {
        const from = await middle(page, `${handle} .target`);
        await page.mouse.move(from.x, from.y);
        await page.mouse.down();
        await page.mouse.move(from.x - 40, from.y - 30, { steps: 4 });
        await page.mouse.up();
        expect(await page.locator('.center-panel').textContent()).toMatch(words);
        expect(await page.locator(handle).getAttribute('aria-label')).toMatch(words);
        await page.keyboard.press('ArrowLeft');
      }
      expect(await page.locator('#undo').isDisabled()).toBe(true);
      expect(await jobOf(page)).toEqual(placed);
    });

    it('moves by keys, a number at a time, and through the passes of the cut', async () => {
      const page = await look();
      await openJob(page, placed);
      await page.focus('#handle-0');
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('Shift+ArrowDown');
      await settled(page);
      expect((await cutsOf(page))[0]?.center).toEqual({ on: 'outline:4', along: 29.995, depth: 6.05 });
      await page.focus('#handle-0');
      await page.keyboard.press('PageDown');
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('handle-0-pass-1');
      await page.keyboard.press('Shift+ArrowDown');
      await settled(page);
      expect((await cutsOf(page))[0]?.passes?.bite).toBe(2.05);
      // With a bite as deep as the cut there is one pass, and no place of its own is left for the keys to be at.
      await page.fill(id('/cuts/0/passes/bite'), '6.045');
      await settled(page);
      await page.focus('#handle-0-pass-1');
      await page.keyboard.press('ArrowDown');
      await settled(page);
      await page.waitForFunction(() => document.activeElement?.id === 'handle-0');
      await page.focus('#handle-3');
      await page.keyboard.press('ArrowUp');
      await settled(page);
      expect((await cutsOf(page))[3]?.path).toEqual({
        svgPath: 'M30 12.005 L52 12.005 A4 4 0 0 1 56 16.005',
      });
    });

    it('sets the largest bite where a pass is dragged along its way in', async () => {
      const page = await look();
      await openJob(page, placed);
      await page.waitForSelector('.board.full');
      await page.focus('#handle-0');
      expect(await page.locator('.handle.pass').count()).toBe(2);
      // It starts at y = 53 and goes 6 down: where pass 1 has gone 3, there are two of them.
      await drag(page, '#handle-0-pass-1 .target', 0, -1);
      expect((await cutsOf(page))[0]?.passes?.bite).toBe(3);
      expect(await page.locator('.handle.pass').count()).toBe(1);
      expect(await page.locator('.bite').textContent()).toMatch(/3\.000 mm, 2 passes/);
      // Dragged on to the end and beyond, it stays with the hand until it is let go, and comes back with it.
      await page.waitForSelector('.board.full');
      const [centre, at] = [
        await middle(page, '#handle-0 .target'),
        await middle(page, '#handle-0-pass-1 .target'),
      ];
      const perUnit = (centre.y - at.y) / 3;
      await page.mouse.move(at.x, at.y);
      await page.mouse.down();
      await page.mouse.move(at.x, at.y + 5 * perUnit, { steps: 6 });
      await page.waitForFunction(() => document.querySelector('.bite')?.textContent?.includes('one pass'));
      await page.mouse.move(at.x, at.y - 1.5 * perUnit, { steps: 6 });
      await page.mouse.up();
      await settled(page);
      expect((await cutsOf(page))[0]?.passes?.bite).toBe(1.5);
      await page.click('#undo');
      await page.getByRole('button', { name: 'Larger bite by' }).click();
      await settled(page);
      expect((await cutsOf(page))[0]?.passes?.bite).toBe(3.05);
    });

    it('shows the unit of the readout beside the step of the readout of a setup', async () => {
      const page = await look();
      await openJob(page, shownInInch);
      await page.click(id('/setups/0'));
      const unitBeside = (pointer: string) => page.locator(`.entry:has(${id(pointer)}) .unit`).textContent();
      expect(await unitBeside('/setups/0/readout/resolution')).toBe('in');
      expect(await unitBeside('/readout/resolution')).toBe('in');
      expect(await unitBeside('/part/thickness')).toBe('mm');
      await page.selectOption(id('/readout/units'), 'mm');
      await page.getByRole('button', { name: /Turn them into millimetres/ }).click();
      await settled(page);
      expect(await unitBeside('/setups/0/readout/resolution')).toBe('mm');
    });
  });
}
