import { readFileSync } from 'node:fs';
import { type AimDocument, parseAim, propose } from '@edgebite/core';
import { expect, it } from 'vitest';
import { looks } from './looks.js';
import { jobOf, openText, settled } from './open.js';

const { look } = looks();

const text = readFileSync(new URL('../../examples/aims/rocker-link.json', import.meta.url), 'utf8');
const { ways } = propose(parseAim(text));

const FOUND = '#ways-state[data-fresh="true"]';

it('goes from a finished outline to a job by keys alone', async () => {
  const page = await look();
  await page.getByRole('button', { name: 'Rocker link' }).focus();
  await page.keyboard.press('Enter');
  await page.waitForSelector(FOUND);
  const shown = await page.$$eval('.ways-found > li', (cards) =>
    cards.map((card) => ({
      dangers: Number(card.querySelector('dd')?.textContent),
      cuts: [...card.querySelectorAll('.steps-of li')].map(({ textContent }) => textContent),
      pieces: card.querySelectorAll('.thumb .piece').length,
    })),
  );
  expect(shown).toEqual(
    ways.map(({ job, row, report }) => ({
      dangers: row.dangers.length,
      cuts: job.cuts.map(({ id, tool }) => {
        const lay = job.setups?.find(({ cuts }) => cuts[0] === id)?.name;
        return `${job.setups?.length === 1 || lay === undefined ? '' : `${lay}: `}${id}, ${tool}`;
      }),
      pieces: report.pieces.length,
    })),
  );
  // From the heading on: the text, two buttons, and the first way.
  for (let k = 0; k < 4; k++) await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Take way 1');
  await page.keyboard.press('Enter');
  await settled(page);
  expect(await jobOf(page)).toEqual(JSON.parse(JSON.stringify(ways[0]?.job)));
});

it('looks again after the text is changed, and says what is wrong with it', async () => {
  const page = await look({ width: 390, height: 800 });
  await openText(page, text, 'link.json');
  await page.waitForSelector(FOUND);
  await page.focus('#aim');
  await page.keyboard.press('ControlOrMeta+a');
  const aim = JSON.parse(text) as AimDocument;
  await page.keyboard.insertText(JSON.stringify({ ...aim, drawer: aim.drawer.slice(0, 1) }));
  expect(await page.getAttribute('#ways-state', 'data-fresh')).toBe('false');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await page.waitForSelector(FOUND);
  const refusals = propose(parseAim({ ...aim, drawer: aim.drawer.slice(0, 1) })).refusals;
  expect(await page.$$eval('.found li', (rows) => rows.map(({ textContent }) => textContent))).toEqual(
    refusals.map(({ message }) => message),
  );
  await page.fill('#aim', JSON.stringify({ ...aim, thickness: -1 }));
  await page.click('#seek');
  await page.waitForSelector(`${FOUND} >> text=cannot be read`);
  expect(await page.textContent('.found li')).toMatch(/^Thickness must be over 0/);
  await page.getByRole('button', { name: 'Back' }).click();
  await page.waitForSelector('.start');
});
