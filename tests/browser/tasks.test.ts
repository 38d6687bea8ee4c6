import { examine, type JobDocument, parseJob } from '@edgebite/core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { type Counted, counted, type Means } from './counted.js';
import { looks } from './looks.js';
import { id, saved, settled } from './open.js';

/* What the page is for, each from an empty page, with all that a hand does counted: what is counted may become less. */

const { look } = looks();

const WAYS: readonly { readonly means: Means; readonly width: number; readonly height: number }[] = [
  { means: 'keys', width: 1440, height: 900 },
  { means: 'pointer', width: 1440, height: 900 },
  { means: 'touch', width: 390, height: 844 },
];

const COUNT_PRINTS = 'window.printed = 0; window.print = () => { window.printed++; };';

interface Work {
  readonly page: Page;
  readonly hand: Counted;
}

async function begin({ means, width, height }: (typeof WAYS)[number]): Promise<Work> {
  const page = await look({ width, height, touch: means === 'touch', init: { content: COUNT_PRINTS } });
  return { page, hand: counted(page, means) };
}

const made = async (page: Page): Promise<JobDocument> => JSON.parse(await saved(page, 'Job'));

const plate = 'button:text-is("A plate")';

/** Picks a face by a place on it, or by the keys from the list, where faces are named by their sides. */
async function face(
  { hand }: Work,
  means: Means,
  side: string,
  at: readonly [number, number],
): Promise<void> {
  if (means === 'keys') await hand.choose('#bite-face', side);
  else await hand.point(at);
}

describe.each(WAYS)('by $means, $width wide', (way) => {
  it('a plate with a bite, ring and bore stepped in, zero from stop and block, its sheet printed', async () => {
    const work = await begin(way);
    const { page, hand } = work;
    await hand.press(plate);
    await hand.type(id('/part/outline/rectangle/0'), '90');
    await hand.type(id('/part/outline/rectangle/1'), '50');
    await hand.type(id('/part/thickness'), '12');
    await page.keyboard.press('Tab');
    await page.waitForSelector('.board.full');
    await face(work, way.means, 'the front, 90.000 long', [40, 0.4]);
    await hand.type('#bite-along', '30');
    await hand.type('#bite-radius', '9');
    await hand.type('#bite-deep', '7');
    await hand.type('#bite-rough', '16');
    await hand.type('#bite-wall', '2.5');
    await hand.type('#bite-step', '1');
    await hand.press('#bite-put');
    await page.waitForSelector('#lay-put');
    await hand.type('#lay-tip', '6');
    await hand.type('#lay-block', '20');
    await hand.press('#lay-put');
    await settled(page);
    await page.waitForSelector('.step-walk .picture svg');
    await hand.press('button:text-is("Print the readouts")');
    await page.waitForFunction(() => (window as unknown as { printed: number }).printed === 1);
    // 37 were needed before, without the sizes of the plate.
    expect(hand.count()).toBeLessThanOrEqual(16);

    const report = examine(parseJob(await made(page)));
    expect(report.steps.map(({ cut }) => cut)).toEqual(['bite-1-rough', 'bite-1', 'bite-1', 'bite-1']);
    // The block bears on a stop whose face is 0: 20 and 30 along to the right. The circle of 9 goes 7 deep from the front.
    expect(report.steps.at(-1)?.stands[0]?.readout).toEqual([50, -2]);
    const sheet = await page.evaluate(
      () => document.querySelector('.readouts')?.shadowRoot?.textContent ?? '',
    );
    expect(sheet).toContain('50.000');
    expect(sheet).toContain('-2.000');
    expect(sheet).toContain('stop at the left');
  });

  it('a hole moved until its web is 2 mm', async () => {
    const { page, hand } = await begin(way);
    await hand.press(plate);
    await page.waitForSelector('.board.full');
    await hand.press('button:text-is("Add a cut")');
    await hand.type(id('/cuts/0/diameter'), '12');
    await page.waitForSelector('#web-size');
    await hand.type('#web-size', '2');
    await page.keyboard.press('Enter');
    await settled(page);
    expect(hand.count()).toBeLessThanOrEqual(4);
    const job = await made(page);
    const { webs } = examine(parseJob({ ...job, limits: { web: 3 } }));
    expect(webs.map(({ thickness }) => thickness)).toEqual([2]);
    // In the middle of the plate, 6 and 2 from the face that was next to it.
    expect(job.cuts[0]).toMatchObject({ center: [40, 8] });
  });

  it('two setups, the second turned round', async () => {
    const work = await begin(way);
    const { page, hand } = work;
    await hand.press(plate);
    await page.waitForSelector('.board.full');
    await face(work, way.means, 'the right end, 40.000 long', [79.6, 20]);
    await hand.type('#bite-radius', '8');
    await hand.type('#bite-deep', '5');
    await hand.press('#bite-put');
    await expect.poll(() => page.locator('#bite-face').inputValue()).toBe('');
    await page.waitForSelector('.step-walk');
    await face(work, way.means, 'the left end, 40.000 long', [0.4, 20]);
    await hand.press('#bite-put');
    await page.waitForSelector('.cuts-of label:has-text("bite-2") input');
    await hand.press('.cuts-of label:has-text("bite-2") input');
    await hand.press('#lay-put');
    await page.waitForSelector('.lay-panel summary:text-is("Lay it for what is left to cut")');
    await hand.press('#lay-put');
    await settled(page);
    expect(hand.count()).toBeLessThanOrEqual(10);
    const { setups, steps, findings } = examine(parseJob(await made(page)));
    expect(setups.map(({ cuts }) => cuts)).toEqual([['bite-1'], ['bite-2']]);
    // A plate of 80 by 40; the left end lies on a block of 25 against the stop. The circle of 8 goes 5 deep from the far end,
    // so its centre is 3 beyond: 25 + 80 + 3. Turned round the other end lies there, and the places are the same.
    expect(steps.map(({ stands }) => stands[0]?.readout)).toEqual([
      [108, 20],
      [108, 20],
    ]);
    expect(findings.filter(({ message }) => message.includes('in no setup'))).toEqual([]);
  });
});

it('at the machine with a phone: the numbers of a step, the next one by a swipe, a nudge', async () => {
  const page = await look({ width: 390, height: 844, touch: true });
  const hand = counted(page, 'touch');
  await hand.press('.examples button:has-text("Saddle block")');
  await page.waitForSelector('.step-walk .picture svg');
  await hand.press('.jumps button:text-is("Machine")');
  const head = page.locator('.step-walk .walk p');
  const number = page.locator('.places td').first();
  // Both can be read where one is: under the drawing, which stays.
  await expect.poll(() => head.textContent()).toContain('Step 1 of');
  const screen = await page.evaluate(() => {
    const box = (selector: string) => document.querySelector(selector)?.getBoundingClientRect();
    return { under: box('.jumps')?.bottom ?? 0, top: box('.places')?.top ?? 0, board: box('#board')?.top };
  });
  expect(screen.board).toBe(0);
  expect(screen.top).toBeGreaterThan(screen.under);
  expect(screen.top).toBeLessThan(844);
  await hand.swipe('.places', -140);
  await expect.poll(() => head.textContent()).toContain('Step 2 of');
  const before = Number(await number.textContent());
  // The bore of step 2, then half a tenth to the left as drawn; it lies turned round, so that is to the right.
  await hand.press('#handle-1 .target');
  await hand.press('button[aria-label^="Move left"]');
  await settled(page);
  await page.waitForFunction(() => document.querySelector('.step-walk.outdated') === null);
  expect(Number(await number.textContent()) - before).toBeCloseTo(0.05, 9);
  expect(hand.count()).toBeLessThanOrEqual(5);
});
