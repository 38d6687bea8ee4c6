import { readFile } from 'node:fs/promises';
import { examine, parseJob, type Report } from '@edgebite/core';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { looks } from './looks.js';
import { id, openJob, settled, typeOver } from './open.js';

const { look } = looks();

async function example(): Promise<{ readonly name: string }> {
  const file = new URL('../../examples/saddle-block.json', import.meta.url);
  return JSON.parse(await readFile(file, 'utf8')) as { readonly name: string };
}

/** What the walk through the steps shows. */
const seen = (page: Page) =>
  page.$eval('.step-walk', (card) => ({
    head: card.querySelector('.walk p')?.textContent ?? '',
    places: [...card.querySelectorAll('.places tbody tr')].map((row) =>
      [...row.querySelectorAll('td')].slice(0, 2).map((cell) => cell.textContent ?? ''),
    ),
    grave: [...card.querySelectorAll('.grave li')].map((line) => line.textContent ?? ''),
    title: card.querySelector('.picture svg title')?.textContent ?? '',
  }));

/** Readout numbers of a step as the report has them, to the readout's last digit. */
const readouts = ({ steps }: Report, k: number) =>
  (steps[k]?.stands ?? []).map(({ readout }) => readout.map((value) => value.toFixed(3)));

it('goes through all steps by keys, each with its numbers, what to do first, and its picture', async () => {
  const job = await example();
  const report = examine(parseJob(job));
  const page = await look();
  await openJob(page, job);
  await page.waitForSelector('.step-walk .picture svg');
  await page.focus('button[aria-label="Next step"]');
  for (let k = 0; k < report.steps.length; k++) {
    const { head, places, title } = await seen(page);
    expect(head).toContain(`Step ${k + 1} of ${report.steps.length}`);
    expect(head).toContain(report.steps[k]?.cut);
    // Rows that only lift have the numbers of the place before.
    const told = places.filter((one, i) => i === 0 || one.join() !== places[i - 1]?.join());
    const wanted = readouts(report, k).filter((one, i, all) => i === 0 || one.join() !== all[i - 1]?.join());
    expect(told).toEqual(wanted);
    expect(title).toBe(`Step ${k + 1} ${report.steps[k]?.cut}`);
    await page.keyboard.press('Enter');
  }
  // At the last one the button stays where it is, and so does the focus.
  expect((await seen(page)).head).toContain(`Step ${report.steps.length} of`);
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Next step');
  await page.click('button[aria-label="Step before"]');
  expect((await seen(page)).head).toContain(`Step ${report.steps.length - 1} of`);
});

it('says what to take out first, and follows a change that was typed', async () => {
  const page = await look();
  await openJob(page, await example());
  await page.waitForSelector('.step-walk .picture svg');
  await page.click('button[aria-label="Next step"]');
  expect((await seen(page)).grave.join(' ')).toContain('take out slug-2');
  const before = (await seen(page)).places[0];
  await page.click(id('/cuts/1'));
  await typeOver(page, id('/cuts/1/center/depth'), '8.5');
  await page.keyboard.press('Tab');
  await settled(page);
  await page.waitForFunction(() => document.querySelector('.step-walk.outdated') === null);
  const after = (await seen(page)).places[0];
  // Half a millimetre less deep from the left end, which lies at the right: the spindle stands half a millimetre further off.
  expect(Number(after?.[0]) - Number(before?.[0])).toBeCloseTo(0.5, 9);
  expect(after?.[1]).toBe(before?.[1]);
});

it('fits a phone, with numbers of a size to be read and buttons of a size to be hit', async () => {
  const page = await look({ width: 390, height: 844, touch: true });
  await openJob(page, await example());
  await page.waitForSelector('.step-walk .picture svg');
  const sizes = await page.$eval('.step-walk', (card) => ({
    over: card.scrollWidth - card.clientWidth,
    button: Math.min(
      ...[...card.querySelectorAll('.walk button')].flatMap((b) => [b.clientWidth, b.clientHeight]),
    ),
    number: Number.parseFloat(getComputedStyle(card.querySelector('.places td') as Element).fontSize),
  }));
  expect(sizes.over).toBeLessThanOrEqual(0);
  expect(sizes.button).toBeGreaterThanOrEqual(42);
  expect(sizes.number).toBeGreaterThanOrEqual(17);
});

it('draws the steps in the colours of the page, so that they are as dark as it is', async () => {
  const page = await look();
  await openJob(page, await example());
  await page.waitForSelector('.step-walk .picture svg');
  const paints = await page.$$eval('.step-walk .picture svg *', (nodes) =>
    nodes.flatMap((node) => [node.getAttribute('fill') ?? '', node.getAttribute('stroke') ?? '']),
  );
  expect(paints.some((paint) => paint.startsWith('var(--'))).toBe(true);
  expect(paints.filter((paint) => paint.startsWith('#'))).toEqual([]);
});
