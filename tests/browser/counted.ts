import type { Page } from 'playwright-core';
import { placeOf } from './on-board.js';
import { middle } from './open.js';

/** With what someone works at the page. */
export type Means = 'keys' | 'pointer' | 'touch';

/** Someone at the page, whose interactions are counted: a click, a tap, a key that presses, a field typed, a drag. */
export interface Counted {
  readonly press: (selector: string) => Promise<void>;
  readonly type: (selector: string, text: string) => Promise<void>;
  readonly choose: (selector: string, label: string) => Promise<void>;
  /** Points at a place of the part. */
  readonly point: (place: readonly [number, number]) => Promise<void>;
  /** Drags what lies at a place of the part to another. */
  readonly drag: (from: readonly [number, number], to: readonly [number, number]) => Promise<void>;
  /** One finger sideways over an element. */
  readonly swipe: (selector: string, by: number) => Promise<void>;
  readonly count: () => number;
}

/** Someone who works at a page with one means. To go from field to field with the tab key is not counted. */
export function counted(page: Page, means: Means): Counted {
  let count = 0;
  const go = async (selector: string): Promise<void> => {
    count++;
    if (means === 'keys') await page.focus(selector);
    else if (means === 'touch') await page.tap(selector);
    else await page.click(selector);
  };
  return {
    press: async (selector) => {
      await go(selector);
      // A space presses buttons and sets ticks alike.
      if (means === 'keys') await page.keyboard.press('Space');
    },
    type: async (selector, text) => {
      await go(selector);
      await page.keyboard.press('Control+a');
      await page.keyboard.type(text, { delay: 10 });
    },
    choose: async (selector, label) => {
      await go(selector);
      await page.selectOption(selector, { label });
    },
    point: async (place) => {
      count++;
      const { x, y } = await placeOf(page, place);
      await (means === 'touch' ? page.touchscreen.tap(x, y) : page.mouse.click(x, y));
    },
    drag: async (from, to) => {
      count++;
      const [start, end] = [await placeOf(page, from), await placeOf(page, to)];
      await page.mouse.move(start.x, start.y);
      await page.mouse.down();
      await page.mouse.move(end.x, end.y, { steps: 8 });
      await page.mouse.up();
    },
    swipe: async (selector, by) => {
      count++;
      await swiped(page, selector, by);
    },
    count: () => count,
  };
}

/** Places on the way of a finger, as shares of it. */
const SHARES = [0.1, 0.4, 0.7, 1];

async function swiped(page: Page, selector: string, by: number): Promise<void> {
  const client = await page.context().newCDPSession(page);
  const { x, y } = await middle(page, selector);
  const from = x - by / 2;
  const touch = (type: 'touchStart' | 'touchMove', at: number) =>
    client.send('Input.dispatchTouchEvent', { type, touchPoints: [{ x: at, y }] });
  await touch('touchStart', from);
  for (const share of SHARES) await touch('touchMove', from + by * share);
  await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}
