import { parseJob, rangeOf } from '@edgebite/core';
import { drawRange } from '@edgebite/svg';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../packages/previewer/page/src/panels/verdict.js';
import { block } from './block.js';
import { type Look, openJob, saved, settled } from './open.js';

/** Tests of looking for safe values of a cut. */
export function rangeCases(look: (how?: Look) => Promise<Page>): void {
  describe('safe intervals', () => {
    const asked = { cut: 'pin', along: 'y', from: 0, to: 15.5 } as const;

    it('are found by keys alone, as the library finds them, with the present value marked', async () => {
      const page = await look();
      await openJob(page, block);
      await page.focus('#handle-3');
      const panel = page.locator('#range-panel');
      await panel.locator('summary').focus();
      await page.keyboard.press('Enter');
      await page.waitForSelector('#range-along');
      await page.keyboard.press('Tab');
      await page.keyboard.press('ArrowDown');
      // The range that suggests itself: a diameter to either side of 5.2.
      expect([await page.inputValue('#range-from'), await page.inputValue('#range-to')]).toEqual([
        '-2.8',
        '13.2',
      ]);
      await page.keyboard.press('Tab');
      await page.keyboard.type('0');
      await page.keyboard.press('Tab');
      await page.keyboard.type('15,5');
      await page.keyboard.press('Enter');
      await page.waitForSelector('.range svg');
      const report = rangeOf(parseJob(block), asked);
      const title = await page.locator('.range svg > title').textContent();
      expect(title).toContain('cut pin, centre along y');
      expect(await page.locator('.range svg > desc').textContent()).toBe(
        /<desc[^>]*>([^<]*)</.exec(drawRange(report))?.[1],
      );
      expect(await page.locator('#range-present').isVisible()).toBe(true);
      // The sheet has it as well, or says that it has no room.
      await page.waitForSelector('.paper:not(.old, .range) svg');
      expect(await saved(page, 'Drawing')).toMatch(/id="edgebite-range"|safe values of pin: left out/);
      expect(await page.locator('.sheet desc').first().textContent()).toContain('centre along y of cut pin');
      const { head, next, stretches } = verdictOf(report);
      expect(head).toBe('Not safe at 5.200 mm');
      expect(await page.locator('#range-state .answer').textContent()).toBe(`${head} ${next}`);
      expect(await page.locator('#range-state li').allTextContents()).toEqual(stretches);
    });

    it('are drawn in the colours of the page, so that they are as dark as it is', async () => {
      const page = await look({ dark: true });
      await openJob(page, block);
      await page.focus('#handle-3');
      await page.locator('#range-panel summary').click();
      await page.getByRole('button', { name: 'Find safe values' }).click();
      await page.waitForSelector('.range svg');
      const [own, wanted] = await page.evaluate(() => {
        const style = (selector: string) => getComputedStyle(document.querySelector(selector) as Element);
        const card = style('#range-panel');
        return [
          [
            style('.range svg > rect').fill,
            style('.range svg text').fill,
            style('.range pattern line').stroke,
          ],
          [card.backgroundColor, card.color, card.color],
        ];
      });
      expect(own).toEqual(wanted);
    });

    it('go as soon as the job changes, and say why there are none', async () => {
      const page = await look();
      await openJob(page, block);
      await page.focus('#handle-3');
      await page.locator('#range-panel summary').click();
      await page.getByRole('button', { name: 'Find safe values' }).click();
      await page.waitForSelector('.range svg');
      await page.focus('#handle-3');
      await page.keyboard.press('ArrowRight');
      await page.waitForFunction(() =>
        document.querySelector('#range-state')?.textContent?.includes('has changed'),
      );
      expect(await page.locator('.range').count()).toBe(0);
      await settled(page);
      await page.fill('#range-from', '90');
      await page.getByRole('button', { name: 'Find safe values' }).click();
      await page.waitForFunction(() =>
        document.querySelector('#range-state')?.textContent?.includes('must be over from'),
      );
      await page.fill('#range-from', 'x');
      expect(await page.locator('#range-from').getAttribute('aria-invalid')).toBe('true');
      expect(await page.getByRole('button', { name: 'Find safe values' }).isDisabled()).toBe(true);
      // The tool of a path has no diameter to look for.
      await page.focus('#handle-4');
      expect(await page.locator('#range-along option').count()).toBe(2);
      expect(await page.locator('#range-state').textContent()).not.toContain('must be over from');
    });
  });
}
