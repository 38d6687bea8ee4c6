import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { block } from './block.js';
import { id, middle, openJob, openText, settled, typeOver } from './open.js';
import { placed } from './placed.js';

const example = (file: string): { readonly name: string } =>
  JSON.parse(readFileSync(new URL(`../../examples/${file}`, import.meta.url), 'utf8'));

const saddle = example('saddle-block.json');

/** A state that the page can be in, and how one comes to it from the start. */
export interface State {
  readonly name: string;
  readonly reach: (page: Page) => Promise<void>;
}

const plate = async (page: Page): Promise<void> => {
  await page.click('button:text-is("A plate")');
  await page.waitForSelector('.board.full');
  await page.waitForSelector('#bite-face');
};

const walked = async (page: Page): Promise<void> => {
  await openJob(page, saddle);
  await page.waitForSelector('.step-walk .picture svg');
};

const openAll = async (page: Page, selector: string): Promise<void> => {
  // By script, as what opens moves what is below it.
  for (const one of await page.locator(selector).all()) {
    const isShut = await one.evaluate((button) => {
      const box = button.closest('details');
      return box === null ? button.getAttribute('aria-expanded') === 'false' : !box.open;
    });
    if (isShut) await one.evaluate((button) => (button as HTMLElement).click());
  }
};

/** Every state of the page that differs from the others in what stands on it. */
export const STATES: readonly State[] = [
  { name: 'the start', reach: async () => {} },
  {
    name: 'the start after a job was put away',
    reach: async (page) => {
      await openJob(page, block);
      await page.click('#afresh');
      await page.waitForSelector('.put-away');
    },
  },
  {
    name: 'an outline that was read',
    reach: async (page) => {
      await openText(page, 'M0 0H80V40H50A10 10 0 0 0 30 40H0Z', 'outline.txt');
      await page.waitForSelector('.outline-read .thumb .piece');
    },
  },
  { name: 'a part without cuts', reach: plate },
  { name: 'a bar without cuts', reach: (page) => page.click('button:text-is("A bar")') },
  {
    name: 'a round, which has no face to bite into',
    reach: async (page) => {
      await page.click('button:text-is("A round")');
      await page.waitForSelector('.board.full');
    },
  },
  {
    name: 'a bite that is being made',
    reach: async (page) => {
      await plate(page);
      await page.selectOption('#bite-face', { index: 1 });
      await typeOver(page, '#bite-rough', '16');
      await page.waitForSelector('.bite-mark');
    },
  },
  {
    name: 'a bite that cannot be put',
    reach: async (page) => {
      await plate(page);
      await page.selectOption('#bite-face', { index: 1 });
      await page.selectOption('#bite-how', 'opening');
      await typeOver(page, '#bite-deep', 'x');
    },
  },
  {
    name: 'a bite that was put, to be held for',
    reach: async (page) => {
      await plate(page);
      await page.selectOption('#bite-face', { index: 1 });
      await page.click('#bite-put');
      await page.waitForSelector('#lay-put');
      await page.waitForSelector('.step-walk');
      await typeOver(page, '#lay-tip', '0');
    },
  },
  {
    name: 'a cut that was just added',
    reach: async (page) => {
      await plate(page);
      await page.click('button:text-is("Add a cut")');
      await page.waitForSelector('#web-size');
    },
  },
  {
    name: 'a finding that is looked at',
    reach: async (page) => {
      await openJob(page, block);
      await page.click('.finding:has-text("metal between") button');
      await page.waitForSelector('.loupe');
    },
  },
  {
    name: 'every row and everything behind a step open',
    reach: async (page) => {
      await walked(page);
      for (let k = 0; k < 3; k++) {
        await openAll(page, '.strip .name');
        await openAll(page, '.work details > summary');
      }
    },
  },
  {
    name: 'all figures open',
    reach: async (page) => {
      await walked(page);
      await openAll(page, '.figures summary');
    },
  },
  {
    name: 'a range that was asked for',
    reach: async (page) => {
      await openJob(page, placed);
      await page.focus('#handle-0');
      await page.click('#range-panel summary');
      await page.click('text="Find safe values"');
      await page.waitForSelector('.range svg');
    },
  },
  {
    name: 'readings of a bite',
    reach: async (page) => {
      await openJob(page, placed);
      await page.focus('#handle-0');
      await page.click('#measure-panel summary');
      await page.waitForSelector('#measure-panel .ways input');
      await page.locator('#measure-panel .ways input').first().fill('6.1');
    },
  },
  { name: 'the first step', reach: walked },
  {
    name: 'a step on the way',
    reach: async (page) => {
      await walked(page);
      await page.click('button[aria-label="Next step"]');
    },
  },
  {
    name: 'the last step',
    reach: async (page) => {
      await walked(page);
      for (let k = 0; k < 12; k++) await page.click('button[aria-label="Next step"]', { force: true });
    },
  },
  {
    name: 'the pictures of a zero',
    reach: async (page) => {
      await walked(page);
      await page.click('.zero-pictures summary');
      await page.waitForSelector('.zero-pictures svg');
    },
  },
  {
    name: 'a cut in the hand',
    reach: async (page) => {
      await openJob(page, block);
      await page.waitForSelector('.board.full');
      const { x, y } = await middle(page, '#handle-3 .target');
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x + 10, y - 6, { steps: 3 });
      await page.waitForSelector('.live');
    },
  },
  {
    name: 'a fault in a field',
    reach: async (page) => {
      await openJob(page, block);
      await page.click(id('/cuts/3'));
      await page.fill(id('/cuts/3/diameter'), 'x');
      await page.waitForSelector('.faults');
      await page.waitForSelector('.step-walk.outdated, .board.outdated');
    },
  },
  {
    name: 'what is still to be filled in',
    reach: async (page) => {
      await openJob(page, block);
      await page.click('.missing button:has-text("setup")');
      await page.waitForSelector('.pending');
    },
  },
  {
    name: 'the question whether figures change with their unit',
    reach: async (page) => {
      await openJob(page, block);
      await page.selectOption(id('/units'), 'inch');
      await page.waitForSelector('.question');
    },
  },
  {
    name: 'a file that cannot be opened',
    reach: async (page) => {
      await openText(page, 'no job', 'bad.json');
      await page.waitForSelector('[role=alert]');
    },
  },
  {
    name: 'a key that does not belong',
    reach: async (page) => {
      await openText(page, JSON.stringify({ ...block, strange: 1 }));
      await page.waitForSelector('.strangers');
    },
  },
  {
    name: 'a link to pass on',
    reach: async (page) => {
      await openJob(page, block);
      await page.click('text="Copy a link"');
      await page.waitForSelector('.link-text');
    },
  },
  {
    name: 'ways to make a part',
    reach: async (page) => {
      await page.click('text="A plate with a hole"');
      await page.waitForSelector('#ways-state[data-fresh="true"]', { timeout: 150_000 });
    },
  },
  {
    name: 'the printed drawing',
    reach: async (page) => {
      await openJob(page, saddle);
      await page.waitForSelector('.paper svg');
      await page.emulateMedia({ media: 'print' });
    },
  },
  {
    name: 'the printed readouts',
    reach: async (page) => {
      await page.evaluate(() => {
        window.print = () => {};
      });
      await openJob(page, saddle);
      await page.click('text="Print the readouts"');
      await page.waitForSelector('.readouts', { state: 'attached' });
      await page.emulateMedia({ media: 'print' });
    },
  },
  {
    name: 'a job in which nothing was found',
    reach: async (page) => {
      await plate(page);
      await settled(page);
    },
  },
];
