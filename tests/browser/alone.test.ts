import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { servePage } from '../../packages/previewer/page/site.mjs';
import { block } from './block.js';
import { looks } from './looks.js';
import { expected, id, jobOf, openJob, saved, sentences, settled, shows, typeOver } from './open.js';

const { look, place } = looks();

async function askRange(page: Page): Promise<void> {
  await page.focus('#handle-3');
  await page.locator('#range-panel summary').click();
  await page.getByRole('button', { name: 'Find safe values' }).click();
  await page.waitForSelector('.range svg');
}

describe('the page without its server', () => {
  it('does all that it did with it', async () => {
    const own = await servePage({ outDir: place().folder, port: 4380 });
    const page = await look({ address: own.address });
    await own.stop();
    await openJob(page, block);
    await askRange(page);
    // Asked anew while it is being worked out, the first worker is dropped for another.
    await page.fill('#range-from', '-9');
    const find = page.getByRole('button', { name: 'Find safe values' });
    await find.click();
    await find.click();
    await page.waitForSelector('.range svg');
    await typeOver(page, id('/name'), 'Still here');
    await settled(page);
    expect(await saved(page, 'Readouts')).toContain('Still here');
    await openJob(page, { ...block, name: 'Another' });
    expect(await sentences(page)).toEqual(expected(block));
  });

  it('works as a folder on the disk, and keeps the job there', async () => {
    const page = await look({ address: pathToFileURL(`${place().folder}/index.html`).href });
    await openJob(page, block);
    expect(await sentences(page)).toEqual(expected(block));
    await askRange(page);
    await page.waitForSelector('.paper:not(.old, .range) svg');
    await page.getByRole('button', { name: 'Copy a link' }).click();
    const link = await page.inputValue('.link-text');
    await typeOver(page, id('/name'), 'From the disk');
    await settled(page);
    await page.reload();
    await shows(page, 'From the disk');
    await page.goto(link);
    await shows(page, block.name);
    expect(await jobOf(page)).toEqual(block);
  });
});

describe('a browser in which no worker starts', () => {
  it.each([
    ['lets none be made', "window.Worker = class { constructor() { throw new Error('not here'); } };"],
    [
      'fails to load its text',
      `const Plain = window.Worker;
       window.Worker = class extends Plain {
         constructor() { super(URL.createObjectURL(new Blob(["throw new Error('not here')"]))); }
       };`,
    ],
  ])('is told of, with what to do, where it %s', async (_, content) => {
    const page = await look({ init: { content } });
    const note = page.locator('[role=alert]');
    await note.waitFor();
    expect(await note.textContent()).toMatch(
      /worker of this page did not start \(.*not here\).*another or a newer browser/,
    );
    expect(await note.textContent()).not.toMatch(/undefined|fault in edgebite/);
    // What is opened waits for nothing either.
    await page.setInputFiles('#file', {
      name: 'job.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(block)),
    });
    await page.waitForFunction(() => document.body.textContent?.includes('job.json could not be opened'));
  });
});
