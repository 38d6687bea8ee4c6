import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { looks } from './looks.js';
import { placeOf } from './on-board.js';
import { jobOf, openJob, saved, settled, typeOver } from './open.js';

const { look } = looks();

/* An L-shaped plate, so that no two faces are alike, its edges counter-clockwise. */
const CORNERS = [
  [0, 0],
  [100, 0],
  [100, 30],
  [60, 30],
  [60, 70],
  [0, 70],
] as const;

const job = {
  edgebite: 1,
  name: 'Plate to bite into',
  units: 'mm',
  part: {
    outline: {
      edges: CORNERS.map((a, k) => ({ kind: 'line', a, b: CORNERS[(k + 1) % CORNERS.length] })),
    },
    thickness: 12,
  },
  setups: [
    {
      id: 'flat',
      zero: { x: [{ touch: 'left', tip: 10, reads: 0 }], y: [{ touch: 'front', tip: 10, reads: 0 }] },
      cuts: ['hole'],
    },
  ],
  cuts: [{ id: 'hole', kind: 'bore', center: [30, 50], diameter: 10 }],
};

/** Waits until the panel says so: it is drawn anew after the key that changed it. */
const says = (page: Awaited<ReturnType<typeof look>>, words: string) =>
  expect.poll(() => page.textContent('#bite-state')).toContain(words);

describe('biting into a face', () => {
  it('takes a click on a face, radius and depth, and puts ring and bore about one centre', async () => {
    const page = await look();
    await openJob(page, job);
    await page.click('#bite-panel summary');
    // The right face of the lower arm, x = 100, half way up.
    const { x, y } = await placeOf(page, [100, 15]);
    await page.mouse.click(x + 6, y);
    await page.waitForFunction(() =>
      (document.getElementById('bite-face') as HTMLSelectElement).selectedOptions[0]?.textContent?.includes(
        'the right end',
      ),
    );
    await typeOver(page, '#bite-along', '15');
    await typeOver(page, '#bite-radius', '9');
    await typeOver(page, '#bite-deep', '7');
    await typeOver(page, '#bite-rough', '16');
    await typeOver(page, '#bite-wall', '2.5');
    await says(page, '7.000 mm deep, opens 17.550 mm of the face');
    await page.waitForSelector('.bite-mark');
    await page.click('#bite-put');
    await settled(page);
    const made = JSON.parse(await saved(page, 'Job')) as typeof job & { cuts: { id: string }[] };
    expect(made.cuts.map(({ id }) => id)).toEqual(['hole', 'bite-1-rough', 'bite-1']);
    expect(made.setups[0]?.cuts).toEqual(['hole', 'bite-1-rough', 'bite-1']);
    const { cuts } = examine(parseJob(made));
    // Into the metal is to the left here: the circle's far place lies at 100 - 7, its centre 9 to the right of that.
    for (const { center } of cuts.slice(1)) {
      expect(center?.[0]).toBeCloseTo(102, 9);
      expect(center?.[1]).toBeCloseTo(15, 9);
    }
    expect(cuts.slice(1).map(({ diameter }) => diameter)).toEqual([16, 18]);
    // One step back takes both out again.
    await page.keyboard.press('Control+z');
    await settled(page);
    expect((await jobOf(page)).cuts.map(({ id }) => id)).toEqual(['hole']);
  });

  it('takes an opening too, and all of it by keys', async () => {
    const page = await look({ width: 390, height: 844 });
    await openJob(page, job);
    await page.focus('#bite-panel summary');
    await page.keyboard.press('Enter');
    await page.selectOption('#bite-face', { index: 1 });
    await typeOver(page, '#bite-radius', '10');
    await page.selectOption('#bite-how', 'opening');
    await typeOver(page, '#bite-deep', '16');
    await page.focus('#bite-put');
    await page.keyboard.press('Enter');
    await settled(page);
    const cut = examine(parseJob(JSON.parse(await saved(page, 'Job')))).cuts.at(-1);
    // The front face, y = 0, in its middle; half an opening of 8 on a radius of 10: the centre 6 in front of it.
    expect(cut?.center?.[0]).toBeCloseTo(50, 9);
    expect(cut?.center?.[1]).toBeCloseTo(-6, 9);
  });

  it('says what is missing, and puts nothing until it is there', async () => {
    const page = await look();
    await openJob(page, job);
    await page.click('#bite-panel summary');
    await says(page, 'No face is chosen yet');
    await page.selectOption('#bite-face', { index: 2 });
    // What suggests itself: an eighth of the face of 30, half of that deep.
    await says(page, 'Radius 4.000 mm, 2.000 mm deep');
    await page.fill('#bite-radius', '');
    await says(page, 'The radius takes a number over 0');
    await typeOver(page, '#bite-radius', '8');
    await typeOver(page, '#bite-deep', '17');
    await says(page, 'at most twice the radius');
    await typeOver(page, '#bite-deep', '5');
    await typeOver(page, '#bite-rough', '4');
    await says(page, 'over 6.000');
    await page.click('#bite-put', { force: true });
    expect((await jobOf(page)).cuts.map(({ id }) => id)).toEqual(['hole']);
  });
});

describe('a swipe over the steps', () => {
  it('turns to the next one and back, and up and down does not', async () => {
    const page = await look({ width: 390, height: 844, touch: true });
    await openJob(page, {
      ...job,
      setups: undefined,
      cuts: [8, 20].map((along, k) => ({
        id: `c${k}`,
        kind: 'bore',
        diameter: 8,
        center: { on: 'outline:1', along, depth: 3 },
      })),
    } as never);
    const head = () => page.textContent('.step-walk .walk p');
    await page.waitForSelector('.step-walk .walk');
    const swipe = (dx: number, dy: number) =>
      page.$eval(
        '.step-walk',
        (card, [x, y]) => {
          const at = (clientX: number, clientY: number) =>
            new Touch({ identifier: 1, target: card, clientX, clientY });
          card.dispatchEvent(
            new TouchEvent('touchstart', {
              touches: [at(200, 300)],
              changedTouches: [at(200, 300)],
              bubbles: true,
            }),
          );
          card.dispatchEvent(
            new TouchEvent('touchend', {
              touches: [],
              changedTouches: [at(200 + (x as number), 300 + (y as number))],
              bubbles: true,
            }),
          );
        },
        [dx, dy],
      );
    await expect.poll(head).toContain('Step 1 of 2');
    await swipe(-90, 10);
    await expect.poll(head).toContain('Step 2 of 2');
    await swipe(20, -120);
    await expect.poll(head).toContain('Step 2 of 2');
    await swipe(90, 0);
    await expect.poll(head).toContain('Step 1 of 2');
  });
});
