import { createRequire } from 'node:module';
import { examine, measured, parseJob, type ReportWay } from '@edgebite/core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { correctionLines } from '../../packages/previewer/src/step/measured.js';
import { rail } from '../measure/rail.js';
import { looks } from './looks.js';
import { id, openJob, settled, typeOver } from './open.js';

const { look } = looks();

const job = {
  ...rail(),
  name: 'Rail with a seat',
  setups: [
    {
      id: 'flat',
      turn: 180,
      zero: {
        x: [{ touch: 'left', tip: 10, reads: 0, tolerance: 0.01 }],
        y: [{ touch: 'front', tip: 10, reads: 0, tolerance: 0.01 }],
      },
      cuts: ['seat'],
    },
  ],
  cuts: [
    { id: 'seat', kind: 'bore', center: [40, 44], diameter: 30, drawing: { radius: 0.05, place: 0.1 } },
    { id: 'hole', kind: 'bore', center: [15, 15], diameter: 8 },
  ],
};

const ways = examine(parseJob(job)).checks[0]?.ways ?? [];
const numberOf = (kind: ReportWay['kind']) => ways.findIndex((way) => way.kind === kind);

/** Chooses a cut by its cross on the drawing, and opens its panel. */
async function openPanel(page: Page, cut: string): Promise<void> {
  await page.focus(cut === 'seat' ? '#handle-0' : '#handle-1');
  await page.click('#measure-panel summary');
}

/** Waits until the panel has answered what stands in its fields. */
async function answered(page: Page): Promise<string> {
  await page.waitForSelector('#measure-state[data-fresh="true"]');
  return (await page.textContent('#measure-state')) ?? '';
}

describe('the panel to measure with', () => {
  it('takes readings key by key, and shows the correction that the library gives', async () => {
    const page = await look();
    await openJob(page, job);
    await openPanel(page, 'seat');
    await page.waitForSelector('.ways li');
    expect(await page.locator('.ways li').count()).toBe(ways.length);
    const readings = [
      { way: numberOf('opening'), value: 26.49, tolerance: 0.02 },
      { way: numberOf('left'), value: 29.1, tolerance: 0.02 },
    ];
    for (const { way, value } of readings) {
      await typeOver(page, `#way-${way}`, String(value));
      // No field goes from under the hand that types.
      expect(await page.inputValue(`#way-${way}`)).toBe(String(value));
      expect(await page.evaluate(() => document.activeElement?.id)).toBe(`way-${way}`);
    }
    const said = await answered(page);
    const wanted = correctionLines(measured(parseJob(job), { cut: 'seat', readings }), { units: 'mm' });
    expect(wanted.join(' ')).toContain('open by');
    for (const line of wanted) expect(said).toContain(line);
  });

  it('shows how the way is taken whose field is used', async () => {
    const page = await look();
    await openJob(page, job);
    await openPanel(page, 'seat');
    for (const kind of ['depth', 'over pins'] as const) {
      const way = numberOf(kind);
      await page.focus(`#way-${way}`);
      const picture = page.locator(`#way-picture-way-${way + 1}`);
      await picture.waitFor();
      expect(await picture.getAttribute('aria-label')).toContain((ways[way]?.reading ?? 0).toFixed(3));
      expect(await page.evaluate(() => document.activeElement?.id)).toBe(`way-${way}`);
    }
  });

  it('says what is wrong with a reading, and takes commas and other tolerances', async () => {
    const page = await look();
    await openJob(page, job);
    await openPanel(page, 'seat');
    const way = numberOf('left');
    await typeOver(page, `#way-${way}`, '2,9');
    expect(await answered(page)).toContain('reading 1 is 2.9, far from the 29 of the arc as drawn');
    await typeOver(page, `#way-${way}`, '29,1');
    await typeOver(page, '#way-good', '0.005');
    expect(await answered(page)).toContain('add one that does');
    await typeOver(page, `#way-${numberOf('depth')}`, '10.5');
    const said = await answered(page);
    expect(said).toContain('CONTRADICTION');
    expect(said).toContain('None until the readings agree');
  });

  it('follows the job, and keeps what was typed', async () => {
    const page = await look();
    await openJob(page, job);
    await openPanel(page, 'seat');
    const way = numberOf('height');
    await typeOver(page, `#way-${way}`, '5.5');
    const before = await answered(page);
    expect(before).toContain('drawn 15.000');
    await typeOver(page, id('/cuts/0/diameter'), '29');
    await settled(page);
    await page.waitForFunction(() =>
      document.getElementById('measure-state')?.textContent?.includes('drawn 14.500'),
    );
    expect(await page.inputValue(`#way-${way}`)).toBe('5.5');
  });

  it('says so of a whole bore', async () => {
    const page = await look();
    await openJob(page, job);
    await openPanel(page, 'hole');
    await page.waitForFunction(() =>
      document.getElementById('measure-panel')?.textContent?.includes('a whole bore'),
    );
    expect(await page.textContent('#measure-panel')).toContain(
      'hole leaves no hollow arc to measure; a whole bore is measured across, with a bore gauge.',
    );
    expect(await page.locator('.ways').count()).toBe(0);
  });

  it('fits a phone, without a fault that a screen reader would meet', async () => {
    const page = await look({
      width: 390,
      height: 844,
      touch: true,
      init: { path: createRequire(import.meta.url).resolve('axe-core') },
    });
    await openJob(page, job);
    await openPanel(page, 'seat');
    await typeOver(page, `#way-${numberOf('height')}`, '5.5');
    await answered(page);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wide).toBeLessThanOrEqual(0);
    const violations = await page.evaluate(async () => {
      const { axe } = window as unknown as {
        axe: { run: (what: string) => Promise<{ violations: { id: string }[] }> };
      };
      return (await axe.run('#measure-panel')).violations.map(({ id: rule }) => rule);
    });
    expect(violations).toEqual([]);
  });
});
