import { expect, it } from 'vitest';
import { BAR } from '../alike/bar.js';
import { looks } from './looks.js';
import { expected, id, jobOf, openJob, sentences, settled, typeOver } from './open.js';

const { look } = looks();

const ROW = {
  ...BAR,
  name: 'Bar with four seats',
  setups: BAR.setups.map((setup) => ({
    ...setup,
    zero: {
      ...setup.zero,
      x: [...setup.zero.x, { measured: 160, from: 'left', to: 'right', name: 'length' }],
    },
  })),
  repeat: [{ cuts: ['ring', 'seat'], row: { step: [38.1, 0], count: 4 } }],
  twin: { swaps: 'left and right', name: 'Bar, other hand' },
  batch: [{ name: 'No. 1', measured: [{ name: 'length', measured: 160.02 }] }],
};

it('shows cuts that are written once, keeps them so, and moves all copies with the written one', async () => {
  const page = await look();
  await openJob(page, ROW);
  expect(await jobOf(page)).toEqual(ROW);
  expect(await sentences(page)).toHaveLength(expected(ROW).length);
  const circles = () =>
    page.$$eval('#metal .tool circle:first-child', (all) => all.map((one) => one.getAttribute('cx')));
  const row = ['22.7', '60.8', '98.9', '137'];
  expect(await circles()).toEqual([...row, ...row]);

  await page.click(id('/cuts/1'));
  await typeOver(page, id('/cuts/1/center/0'), '20');
  await page.keyboard.press('Tab');
  await settled(page);
  expect(await circles()).toEqual([...row, '20', '58.1', '96.2', '134.3']);

  // Another name goes with all that names the cut.
  await typeOver(page, id('/cuts/1/id'), 'rest');
  await page.keyboard.press('Tab');
  await settled(page);
  const kept = (await jobOf(page)) as unknown as typeof ROW;
  expect(kept.repeat).toEqual([{ cuts: ['ring', 'rest'], row: { step: [38.1, 0], count: 4 } }]);
  expect(kept.cuts[1]).toMatchObject({ id: 'rest', center: [20, -2.3] });
  expect(kept.setups[0]?.cuts).toEqual(['ring', 'rest']);

  await page.click(id('/repeat/0'));
  await typeOver(page, id('/repeat/0/row/count'), '3');
  await page.keyboard.press('Tab');
  await settled(page);
  expect(await circles()).toEqual([...row.slice(0, 3), '20', '58.1', '96.2']);
  expect(await jobOf(page)).toEqual({
    ...kept,
    repeat: [{ ...kept.repeat[0], row: { step: [38.1, 0], count: 3 } }],
  });
});
