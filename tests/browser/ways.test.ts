import { readFileSync } from 'node:fs';
import { type AimDocument, parseAim, propose } from '@edgebite/core';
import { expect, it } from 'vitest';
import { looks } from './looks.js';
import { id, jobOf, openText, saved, settled, typeOver } from './open.js';

const { look } = looks();

const text = readFileSync(new URL('../../examples/aims/rocker-link.json', import.meta.url), 'utf8');
const { ways } = propose(parseAim(text));

const FOUND = '#ways-state[data-fresh="true"]';

/** It only ends a hang: to look for ways takes seconds of a processor, which others may hold. */
const PATIENCE = { timeout: 150_000 };

/** A plate with a hole, and an arc that opens its right end. */
const SMALL: AimDocument = {
  edgebite: 1,
  units: 'mm',
  thickness: 12,
  material: 'mild steel',
  blank: { rectangle: [90, 40] },
  finished: {
    bites: [
      { circle: 8.5, at: [40, 20] },
      { circle: 24, at: [90, 20] },
    ],
  },
  drawer: [
    { id: 'drill 10', kind: 'drill', toolMaterial: 'HSS', diameter: 8.5, reach: 60 },
    {
      id: 'head',
      kind: 'boring head',
      toolMaterial: 'HSS',
      smallest: 10,
      largest: 40,
      bar: 30,
      maxSpeed: 900,
    },
  ],
};

it('goes from a finished outline to a job by keys alone', async () => {
  const page = await look();
  await page.getByRole('button', { name: 'Rocker link' }).focus();
  await page.keyboard.press('Enter');
  await page.waitForSelector(FOUND, PATIENCE);
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
  // Behind the form: three buttons, and the first way.
  await page.focus('#seek');
  for (let k = 0; k < 3; k++) await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Take way 1');
  await page.keyboard.press('Enter');
  await settled(page);
  expect(await jobOf(page)).toEqual(JSON.parse(JSON.stringify(ways[0]?.job)));
});

it('looks again after a change, and says what is wrong in its field', async () => {
  const page = await look({ width: 390, height: 800 });
  await openText(page, JSON.stringify(SMALL), 'small.json');
  await page.waitForSelector(FOUND, PATIENCE);
  const aim = SMALL;
  for (const { id: tool } of aim.drawer.slice(1)) {
    await page.getByRole('button', { name: `Take out ${tool}`, exact: true }).click();
  }
  expect(await page.getAttribute('#ways-state', 'data-fresh')).toBe('false');
  await page.focus('#seek');
  await page.keyboard.press('Enter');
  await page.waitForSelector(FOUND, PATIENCE);
  const refusals = propose(parseAim({ ...aim, drawer: aim.drawer.slice(0, 1) })).refusals;
  expect(await page.$$eval('.found li', (rows) => rows.map(({ textContent }) => textContent))).toEqual(
    refusals.map(({ message }) => message),
  );
  await typeOver(page, id('/thickness'), '-1');
  await page.waitForSelector(`${id('/thickness-fault')} >> text=must be over 0`);
  await page.click('#seek');
  await page.waitForSelector(`${FOUND} >> text=cannot be read`, PATIENCE);
  expect(await page.textContent('.found li')).toMatch(/^Thickness must be over 0/);
  await page.click('#undo');
  await expect.poll(() => page.inputValue(id('/thickness'))).toBe(String(aim.thickness));
  await expect.poll(() => page.locator(id('/thickness-fault')).count()).toBe(0);
  await page.getByRole('button', { name: 'Back' }).click();
  await page.waitForSelector('.start');
});

it('takes a blank, its bites and a drawer key by key, and saves them', async () => {
  const page = await look();
  await page.getByRole('button', { name: 'A plate with a hole' }).click();
  await page.waitForSelector(FOUND, PATIENCE);
  await typeOver(page, id('/thickness'), '12');
  await typeOver(page, id('/blank/rectangle/0'), '90');
  await page.focus(id('/finished/bites/0'));
  await page.keyboard.press('Enter');
  await typeOver(page, id('/finished/bites/0/circle'), '8,5');
  await page.getByRole('button', { name: 'Add a bite' }).click();
  await page.selectOption(id('/finished/bites/1-kind'), { label: 'circle' });
  await typeOver(page, id('/finished/bites/1/circle'), '24');
  await typeOver(page, id('/finished/bites/1/at/0'), '90');
  await typeOver(page, id('/finished/bites/1/at/1'), '20');
  await page.focus(id('/drawer/0'));
  await page.keyboard.press('Enter');
  await typeOver(page, id('/drawer/0/diameter'), '8.5');
  await page.getByRole('button', { name: 'Add a tool to the drawer' }).click();
  await page.selectOption(id('/drawer/1-kind'), { label: 'boring head' });
  await typeOver(page, id('/drawer/1/id'), 'head');
  await typeOver(page, id('/drawer/1/smallest'), '10');
  await typeOver(page, id('/drawer/1/largest'), '40');
  await typeOver(page, id('/drawer/1/bar'), '30');
  await typeOver(page, id('/drawer/1/maxSpeed'), '900');
  await page.selectOption(id('/drawer/1/toolMaterial'), { label: 'HSS' });
  await page.focus('#seek');
  await page.keyboard.press('Enter');
  await page.waitForSelector(FOUND, PATIENCE);
  expect(JSON.parse(await saved(page, 'Save as a file'))).toEqual(SMALL);
  const [best] = propose(parseAim(SMALL)).ways;
  expect(best?.job.cuts.map(({ tool }) => tool).sort()).toEqual(['drill 10', 'head']);
  await page.getByRole('button', { name: 'Take way 1' }).click();
  await settled(page);
  expect(await jobOf(page)).toEqual(JSON.parse(JSON.stringify(best?.job)));
});
