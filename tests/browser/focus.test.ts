import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { block } from './block.js';
import { looks } from './looks.js';
import { id, openJob, openText, settled } from './open.js';

const { look } = looks();

/** What has the keys: its id, its name for screen readers or its words; `nothing` where they went astray. */
const focus = (page: Page) =>
  page.evaluate(() => {
    const one = document.activeElement;
    if (one === null || one === document.body) return 'nothing';
    const name = one.id || one.getAttribute('aria-label') || one.textContent || one.tagName;
    // What cannot be seen or worked is no place for the keys.
    return one.getClientRects().length === 0 ? `hidden ${name}` : name;
  });

describe('the keys stay with something', () => {
  it('where cuts are added, taken out, and both are taken back', async () => {
    const page = await look();
    await openJob(page, block);
    const add = page.locator('.cuts .add').first();
    await add.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => focus(page)).toMatch(/^at\/cuts\/5/);
    await page.focus('button[aria-label="Take out cut-6"]');
    await page.keyboard.press('Enter');
    await expect.poll(() => focus(page)).toBe('at/cuts/4');
    // Back to the beginning by the button, which has nothing more to take back then.
    await page.focus('#undo');
    for (let k = 0; k < 2; k++) {
      await page.keyboard.press('Enter');
      await settled(page);
      expect(await focus(page)).toBe('undo');
    }
    expect(await page.getAttribute('#undo', 'aria-disabled')).toBe('true');
    await page.keyboard.press('Enter');
    expect(await focus(page)).toBe('undo');
    await page.focus('#redo');
    for (let k = 0; k < 3; k++) await page.keyboard.press('Enter');
    expect(await focus(page)).toBe('redo');
  });

  it('where all cuts are taken out', async () => {
    const page = await look();
    await openJob(page, block);
    for (const { id: name } of block.cuts) {
      await page.focus(`button[aria-label="Take out ${name}"]`);
      await page.keyboard.press('Enter');
      await page.waitForFunction(
        (gone) => document.querySelector(`[aria-label="${gone}"]`) === null,
        `Take out ${name}`,
      );
      await expect.poll(() => focus(page)).not.toBe('nothing');
    }
    expect(await focus(page)).toBe('Add a cut');
  });

  it('where a row is opened and closed', async () => {
    const page = await look();
    await openJob(page, block);
    await page.focus(id('/cuts/2'));
    for (const open of ['true', 'false']) {
      await page.keyboard.press('Enter');
      await page.waitForSelector(`${id('/cuts/2')}[aria-expanded="${open}"]`);
      expect(await focus(page)).toBe('at/cuts/2');
    }
  });

  it('where a part of the job is added, and taken out', async () => {
    const page = await look();
    await openJob(page, block);
    await page.focus('.missing button:has-text("setup")');
    await page.keyboard.press('Enter');
    await expect.poll(() => focus(page)).toMatch(/^at\/setups/);
    await page.click(id('/cuts/3'));
    await page.click('.cuts details.more > summary');
    await page.focus('.cuts button:text-is("Add passes")');
    await page.keyboard.press('Enter');
    await expect.poll(() => focus(page)).toMatch(/^at\/cuts\/3\/passes/);
    await page.focus('.cuts button:text-is("Take out passes")');
    await page.keyboard.press('Enter');
    await expect.poll(() => focus(page)).toBe('at/cuts/3/passes-add');
  });

  it('where a bite is put, and where it is held for', async () => {
    const page = await look();
    await page.click('button:text-is("A plate")');
    await page.waitForSelector('.board.full');
    await page.selectOption('#bite-face', { index: 1 });
    await page.focus('#bite-put');
    await page.keyboard.press('Enter');
    await page.waitForSelector('#lay-put');
    expect(await focus(page)).toBe('bite-put');
    await page.waitForSelector('.step-walk');
    await page.focus('#lay-put');
    await page.keyboard.press('Enter');
    await page.waitForSelector('#lay-put', { state: 'detached' });
    await expect.poll(() => focus(page)).toBe('card-steps');
  });

  it('where a cut is let go of', async () => {
    const page = await look({ width: 390, height: 844, touch: true });
    await openJob(page, block);
    await page.waitForSelector('.board.full');
    await page.focus('#handle-3');
    await page.focus('button[aria-label="Let go of pin"]');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.center-panel.idle');
    await expect.poll(() => focus(page)).toBe('at/cuts/3');
  });

  it('where the web is typed', async () => {
    const page = await look();
    await openJob(page, block);
    await page.waitForSelector('.board.full');
    await page.focus('#handle-3');
    await page.focus('#web-size');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('2');
    await page.keyboard.press('Enter');
    await settled(page);
    expect(await focus(page)).toBe('web-size');
    expect(await page.inputValue('#web-size')).toBe('2.000');
  });

  it('where notes are put away, the page is begun anew, and work is taken back', async () => {
    const page = await look();
    await openJob(page, block);
    await openText(page, 'no job', 'bad.json');
    await page.focus('text="Put this note away"');
    await page.keyboard.press('Enter');
    await page.waitForSelector('[role=alert]', { state: 'detached' });
    await expect.poll(() => focus(page)).not.toBe('nothing');
    await page.focus('#afresh');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.put-away');
    await expect.poll(() => focus(page)).not.toBe('nothing');
    await page.focus('text="Take it back"');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.bench');
    await expect.poll(() => focus(page)).not.toBe('nothing');
  });

  it('where a job is begun', async () => {
    for (const words of ['A plate', 'A bar', 'A round', 'A plate with a hole']) {
      const page = await look();
      await page.focus(`button:text-is("${words}")`);
      await page.keyboard.press('Enter');
      await page.waitForSelector('.start', { state: 'detached' });
      await expect.poll(() => focus(page)).not.toBe('nothing');
    }
  });

  it('where an example is opened, and a finding is looked at', async () => {
    const page = await look();
    await page.focus('.examples button');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.findings');
    await expect.poll(() => focus(page)).not.toBe('nothing');
    await page.focus('#finding-0 button');
    await page.keyboard.press('Enter');
    await page.waitForSelector('#finding-0.chosen');
    expect(await focus(page)).not.toBe('nothing');
  });
});

describe('what a change brings', () => {
  it('is told to those who do not see it, once, when the hand rests', async () => {
    const page = await look();
    await openJob(page, block);
    await expect.poll(() => page.textContent('#news')).toMatch(/^\d+ findings\.$/);
    await page.waitForSelector('.board.full');
    await page.focus('#handle-3');
    // The pin 5.2 from the front, 4 in radius: four tenths nearer to it, the web is another one.
    for (let k = 0; k < 8; k++) await page.keyboard.press('Shift+ArrowDown');
    await settled(page);
    await expect.poll(() => page.textContent('#news')).toMatch(/New .*0\.800 mm of metal/);
    await page.click('#undo');
    await settled(page);
    await page.fill(id('/cuts/3/diameter'), 'x');
    await expect.poll(() => page.textContent('#news')).toContain('1 fault in the job');
  });
});

describe('someone who wants no motion', () => {
  it('has none where a finding is shown, and others have', async () => {
    const page = await look();
    await openJob(page, block);
    const moving = async (): Promise<number> => {
      await page.click('.finding:has-text("metal between") button');
      await page.waitForSelector('.pin .ring', { state: 'attached' });
      return page.evaluate(() => document.getAnimations().length);
    };
    expect(await moving()).toBe(0);
    await page.click('.finding:has-text("metal between") button');
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    expect(await moving()).toBeGreaterThan(0);
  });
});
