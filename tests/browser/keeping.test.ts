import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { block } from './block.js';
import { looks } from './looks.js';
import { id, jobOf, openJob, settled, shows, typeOver } from './open.js';

const { look, place } = looks();

/** What stands on the start page and nowhere else. */
const START = '#start-empty';

const widened = { ...block, cuts: block.cuts.map((cut, k) => (k === 3 ? { ...cut, diameter: 9.25 } : cut)) };

async function linkOf(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Copy a link' }).click();
  return page.inputValue('.link-text');
}

describe('a reload', () => {
  it('goes on with the job, and with what can be taken back and done again', async () => {
    const page = await look();
    await openJob(page, block);
    await page.click(id('/cuts/3'));
    await typeOver(page, id('/cuts/3/diameter'), '9.25');
    await settled(page);
    await typeOver(page, id('/cuts/3/center/0'), '58');
    await settled(page);
    await page.click('#undo');
    await settled(page);
    await page.reload();
    await shows(page, block.name);
    expect(await jobOf(page)).toEqual(widened);
    await page.click('#redo');
    await settled(page);
    expect((await jobOf(page)).cuts[3]?.center).toEqual([58, 5.2]);
    await page.click('#undo');
    await page.click('#undo');
    await settled(page);
    expect(await jobOf(page)).toEqual(block);
  });

  it('has the faults of a job as well', async () => {
    const page = await look();
    await openJob(page, block);
    await page.click(id('/cuts/3'));
    await typeOver(page, id('/cuts/3/diameter'), 'x');
    await page.waitForSelector('.faults');
    await page.reload();
    await page.waitForSelector(`${id('/cuts/3/diameter')}[aria-invalid=true]`);
    await typeOver(page, id('/cuts/3/diameter'), '9.25');
    await settled(page);
    expect(await jobOf(page)).toEqual(widened);
  });

  it('shows another tab the last job, and gives each tab its own back', async () => {
    const page = await look();
    await openJob(page, block);
    const other = await page.context().newPage();
    await other.goto(place().address);
    await shows(other, block.name);
    await typeOver(other, id('/name'), 'Of the other tab');
    await settled(other);
    await page.reload();
    await shows(page, block.name);
    await other.reload();
    await shows(other, 'Of the other tab');
    expect(await jobOf(page)).toEqual(block);
    expect(await jobOf(other)).toEqual({ ...block, name: 'Of the other tab' });
  });

  it('begins anew where one started afresh; until then all can be had back', async () => {
    const page = await look();
    await openJob(page, block);
    await page.click('#afresh');
    await page.waitForSelector(START);
    await page.getByRole('button', { name: 'Take it back' }).click();
    await shows(page, block.name);
    expect(await jobOf(page)).toEqual(block);
    await page.click('#afresh');
    await page.waitForSelector(START);
    await page.reload();
    await page.waitForSelector(START);
    expect(await page.getByRole('button', { name: 'Take it back' }).count()).toBe(0);
  });

  it('does without a browser that keeps things', async () => {
    const page = await look({
      init: { content: "Object.defineProperty(window, 'indexedDB', { get() { throw new Error('no'); } });" },
    });
    await openJob(page, block);
    expect(await jobOf(page)).toEqual(block);
  });
});

describe('a link', () => {
  it('holds the whole job, which is sent nowhere', async () => {
    const page = await look();
    await openJob(page, block);
    const asked: string[] = [];
    page.context().on('request', (request) => asked.push(request.url()));
    const link = await linkOf(page);
    expect(link.startsWith(`${place().address}#job=`)).toBe(true);
    expect(asked).toEqual([]);
    const other = await look();
    other.on('request', (request) => asked.push(request.url()));
    await other.goto('about:blank');
    await other.goto(link);
    await shows(other, block.name);
    expect(await jobOf(other)).toEqual(block);
    expect(asked.some((url) => url.includes('job='))).toBe(false);
    // Later changes are not those of the link.
    expect(other.url()).toBe(place().address);
    await typeOver(other, id('/name'), 'Changed since');
    await settled(other);
    await other.reload();
    await shows(other, 'Changed since');
  });

  it('comes over the job that is open, which can be had back', async () => {
    const page = await look();
    await openJob(page, { ...block, name: 'The first' });
    const link = await linkOf(page);
    await openJob(page, block);
    await page.evaluate((to) => location.assign(to), link);
    await shows(page, 'The first');
    await page.click('#undo');
    await shows(page, block.name);
    expect(await jobOf(page)).toEqual(block);
  });

  it.each([
    ['cut short', (link: string) => link.slice(0, -40)],
    ['changed', (link: string) => `${link.slice(0, 60)}AAAA${link.slice(64)}`],
    ['of another kind', (link: string) => `${link.split('=')[0]}=%%%`],
  ])('that was %s says so, and leaves what is open', async (_, spoil) => {
    const page = await look();
    await openJob(page, block);
    const link = spoil(await linkOf(page));
    await page.evaluate((to) => location.assign(to), link);
    expect(await page.locator('[role=alert]').textContent()).toMatch(/link could not be opened/);
    expect(await jobOf(page)).toEqual(block);
  });

  it('is not made of a job that is too large for one', async () => {
    const page = await look();
    const cuts = Array.from({ length: 1500 }, (_, k) => ({
      id: `hole-${k}-${Math.sin(k)}`,
      kind: 'bore',
      center: [10 + (k % 50) * 10, 10 + Math.floor(k / 50) * 10],
      diameter: 4,
    }));
    await openJob(page, {
      ...block,
      name: 'Crowd',
      part: { outline: { rectangle: [520, 320] }, thickness: 8 },
      cuts,
    } as unknown as typeof block);
    await page.getByRole('button', { name: 'Copy a link' }).click();
    await page.waitForFunction(() => document.body.textContent?.includes('too large for a link'));
    expect(await page.locator('.link-text').count()).toBe(0);
  });
});
