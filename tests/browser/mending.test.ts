import { examine, parseJob } from '@edgebite/core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { block } from './block.js';
import { looks } from './looks.js';
import { id, jobOf, openJob, openText, settled } from './open.js';
import { placed, shownInInch } from './placed.js';

const { look } = looks();

const [firstCut, ...otherCuts] = block.cuts;

describe('a job with faults that no number mends', () => {
  it('is mended in the page: keys that do not belong, another version, another kind', async () => {
    const page = await look();
    const { thickness, ...part } = block.part;
    const { diameter, ...cut } = firstCut as (typeof block.cuts)[number];
    const faulty = {
      ...block,
      edgebite: 2,
      colour: 'blue',
      part: { ...part, thicknes: thickness },
      cuts: [{ ...cut, kind: 'ring', diametre: diameter }, ...otherCuts],
    };
    await openText(page, JSON.stringify(faulty));
    await page.waitForSelector('.faults');
    // There was nothing before it.
    expect(await page.textContent('.state')).toBe('Nothing to draw before the faults are mended');
    expect(await page.textContent('.faults')).not.toContain('from before');
    await page.getByRole('button', { name: 'Make it 1', exact: true }).click();
    await page.getByRole('button', { name: 'Take out colour' }).click();
    await page.getByRole('button', { name: 'Call it thickness' }).click();
    // Its wall and its reach tell which kind was meant.
    await page.getByRole('button', { name: 'Make it annular cutter' }).click();
    await page.getByRole('button', { name: 'Call it diameter' }).click();
    await settled(page);
    expect(await jobOf(page)).toEqual(block);
  });

  it('leads from each such fault to where it is mended', async () => {
    const page = await look();
    await openText(page, JSON.stringify({ ...block, edgebite: 7, colour: 'blue' }));
    await page.waitForSelector('.faults');
    for (const pointer of ['/edgebite', '/colour']) {
      await page
        .locator('.faults .link')
        .filter({ hasText: pointer === '/colour' ? 'colour' : 'version' })
        .click();
      await page.waitForFunction((wanted) => document.activeElement?.id === wanted, `at${pointer}`);
      expect(await page.locator('.faults .link').count()).toBe(2);
    }
  });
});

describe('another unit', () => {
  /** The block of which one cut follows a path with an arc whose flags and angle are no lengths. */
  const drawn = {
    ...shownInInch,
    name: 'Block in millimetres',
    readout: { resolution: 0.01 },
    cuts: [
      ...block.cuts.slice(0, 4),
      {
        id: 'oilway',
        kind: 'swept',
        diameter: 5,
        depth: 4,
        path: { svgPath: 'M25.4 27 L52 27 A12.7 12.7 0 0 0 60 19 l0-10' },
      },
    ],
  };

  async function choose(page: Page, answer: RegExp): Promise<void> {
    await page.selectOption(id('/units'), 'inch');
    // The question has the keys.
    await page.waitForFunction(() => document.activeElement?.closest('.question') !== null);
    await page.getByRole('button', { name: answer }).click();
    await page.waitForFunction((wanted) => document.activeElement?.id === wanted, 'at/units');
    await settled(page);
  }

  it('turns every length into it if one says so: the same part', async () => {
    const page = await look();
    await openJob(page, drawn);
    await choose(page, /Turn them into inches/);
    const job = (await jobOf(page)) as unknown as typeof drawn;
    // 25.4 mm in an inch, by definition.
    expect(job.part.thickness).toBeCloseTo(16 / 25.4, 9);
    expect(job.cuts[3]?.center?.[0]).toBeCloseTo(60 / 25.4, 9);
    expect(job.readout.resolution).toBeCloseTo(0.01 / 25.4, 9);
    expect(job.cuts[4]?.path?.svgPath).toMatch(/^M1 .* A0\.5 0\.5 0 0 0 /);
    // What has a unit of its own keeps its figures, and angles are no lengths.
    expect(job.limits.knifeEdge).toBe(30);
    expect(job.setups[0]?.zero).toEqual(drawn.setups[0]?.zero);
    const [mm, inch] = [examine(parseJob(drawn)), examine(parseJob(job))];
    expect(inch.pieces[0]?.area).toBeCloseTo((mm.pieces[0]?.area ?? 0) / 25.4 ** 2, 6);
    expect(inch.webs[0]?.thickness).toBeCloseTo((mm.webs[0]?.thickness ?? 0) / 25.4, 8);
    await page.click('#undo');
    await settled(page);
    expect(await jobOf(page)).toEqual(drawn);
  });

  it('keeps every figure if one says so, and changes nothing if one does not', async () => {
    const page = await look();
    await openJob(page, block);
    await choose(page, /Change nothing/);
    expect(await page.inputValue(id('/units'))).toBe('mm');
    expect(await jobOf(page)).toEqual(block);
    await choose(page, /Keep the figures/);
    expect(await jobOf(page)).toEqual({ ...block, units: 'inch' });
  });

  it('asks of the readout what is its own, and nothing where nothing is', async () => {
    const page = await look();
    await openJob(page, drawn);
    await page.selectOption(id('/readout/units'), 'inch');
    expect(await page.locator('.question legend').textContent()).toMatch(/^2 lengths are/);
    await page.getByRole('button', { name: /Keep the figures/ }).click();
    await settled(page);
    expect((await jobOf(page)) as unknown).toMatchObject({ readout: { units: 'inch', resolution: 0.01 } });
  });
});

describe('every field', () => {
  it('has a name of its own and an id that no other has, in every way to give a value', async () => {
    const page = await look();
    await openJob(page, placed);
    const faults = () =>
      page.evaluate(() => {
        const ids = [...document.querySelectorAll('[id]')].map((one) => one.id);
        const named = (field: Element): boolean =>
          [...((field as HTMLInputElement).labels ?? [])].some((label) => label.textContent?.trim() !== '') ||
          (field.getAttribute('aria-label') ?? '').trim() !== '' ||
          (field.tagName === 'BUTTON' && field.textContent?.trim() !== '');
        return [
          ...ids.filter((one, k) => ids.indexOf(one) !== k),
          ...[...document.querySelectorAll('input, select, textarea, button')]
            .filter((field) => !named(field))
            .map((field) => field.outerHTML),
        ];
      });
    for (const cut of await page.locator('.cuts > .list > ol > .member > .strip > .name').all()) {
      await cut.click();
    }
    expect(await faults()).toEqual([]);
    const kinds = await page.$$eval('select[id$="-kind"]', (all) =>
      all.map((one) => ({ id: one.id, count: (one as HTMLSelectElement).options.length })),
    );
    expect(kinds.length).toBeGreaterThan(8);
    for (const { id: kind, count } of kinds) {
      for (let k = 0; k < count; k++) {
        const select = page.locator(`[id="${kind}"]`);
        if ((await select.count()) === 0) continue;
        await select.selectOption(String(k));
        expect(await faults(), `${kind}, ${k}`).toEqual([]);
      }
    }
  });
});

describe('the drawing on the board', () => {
  const bore = (name: string, x: number, y: number, diameter: number) => ({
    id: name,
    kind: 'bore',
    center: [x, y],
    diameter,
  });

  // Far from the zero, so that figures are long; with circles that stand out at every side.
  const far = {
    ...block,
    name: 'Far off',
    keep: undefined,
    part: { outline: { rectangle: [197.39, 120.01], at: [-1412.3455, -933.125] }, thickness: 12 },
    cuts: [
      bore('over', -1363.256, -813.1149, 82.31),
      bore('right', -1214.9555, -905.327, 57.06),
      bore('beside', -1213.874, -860.66, 14.14),
      bore('left', -1412.9, -880.2, 41.96),
    ],
  };
  const below = {
    ...block,
    name: 'Standing out below',
    keep: undefined,
    part: { outline: { rectangle: [236.33, 209.89] }, thickness: 12 },
    cuts: [bore('right', 235.696, 165.02, 76.79), bore('below', 184.044, 0.016, 142.69)],
  };

  it.each([1440, 1024, 700])('of a page %i wide has every word and line whole', async (width) => {
    const page = await look({ width });
    for (const job of [far, below, block]) {
      await openJob(page, job as unknown as typeof block);
      await page.waitForSelector('.board.full');
      const cut = await page.evaluate(() => {
        const board = document.getElementById('board')?.getBoundingClientRect();
        if (board === undefined) return ['no board'];
        return [...document.querySelectorAll('.drawn :is(text, path, line, circle)')]
          .filter((one) => {
            const { left, right, top, bottom, width, height } = one.getBoundingClientRect();
            if (width + height === 0 || one.closest('defs, clipPath, pattern') !== null) return false;
            // Half a pixel is rounding.
            return (
              left < board.left - 0.5 ||
              right > board.right + 0.5 ||
              top < board.top - 0.5 ||
              bottom > board.bottom + 0.5
            );
          })
          .map((one) => one.textContent || one.outerHTML);
      });
      expect(cut, job.name).toEqual([]);
    }
  });
});
