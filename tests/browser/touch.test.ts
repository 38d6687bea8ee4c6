import type { CDPSession, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { block } from './block.js';
import { looks } from './looks.js';
import { expected, jobOf, middle, openJob, sentences, settled } from './open.js';

const { look } = looks();

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Moves one finger from a spot by a vector, as a hand does: in many small moves. */
async function swipe(client: CDPSession, from: Spot, dx: number, dy: number, moves = 24): Promise<void> {
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', share: number) =>
    client.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: type === 'touchEnd' ? [] : [{ x: from.x + dx * share, y: from.y + dy * share }],
    });
  await touch('touchStart', 0);
  for (let k = 1; k <= moves; k++) await touch('touchMove', k / moves);
  await touch('touchEnd', 1);
}

const scrolled = (page: Page) => page.evaluate(() => Math.round(window.scrollY));

describe.each([390, 1024])('a finger on a screen %i wide', (width) => {
  it.each([
    ['up', 12, -70],
    ['down', -9, 66],
    ['sideways', -80, 6],
  ])('drags a centre %s over more than 60 px, and the page stays', async (_, dx, dy) => {
    const page = await look({ width, height: 844, touch: true });
    await openJob(page, block);
    await page.waitForSelector('.board.full');
    const from = await middle(page, '#handle-0 .target');
    // Two centres that are 96 apart in the part.
    const scale = (from.x - (await middle(page, '#handle-1 .target')).x) / 96;
    const before = await scrolled(page);
    const client = await page.context().newCDPSession(page);
    await swipe(client, from, dx, dy);
    await settled(page);
    expect(await scrolled(page)).toBe(before);
    const job = await jobOf(page);
    const [x, y] = job.cuts[0]?.center ?? [0, 0];
    // Where the finger let it go, to within the pixel or two that a finger's place is rounded to.
    expect(Math.abs((x - 92) * scale - dx)).toBeLessThan(2);
    expect(Math.abs((y - 20) * scale + dy)).toBeLessThan(2);
    expect(await sentences(page)).toEqual(expected(job));
    await page.click('#undo');
    await settled(page);
    expect(await jobOf(page)).toEqual(block);
  });
});

describe('a finger beside the centres', () => {
  it('moves the page on, as anywhere else', async () => {
    const page = await look({ width: 390, height: 844, touch: true });
    await openJob(page, block);
    const board = await page.locator('#board').boundingBox();
    if (board === null) throw new Error('there is no board');
    const client = await page.context().newCDPSession(page);
    await swipe(client, { x: board.x + board.width / 2, y: board.y + board.height - 12 }, 0, -150);
    await page.waitForFunction(() => window.scrollY > 60);
    expect(await jobOf(page)).toEqual(block);
  });
});
