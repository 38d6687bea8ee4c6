import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { block } from './block.js';
import { looks } from './looks.js';
import { id, jobOf, openJob, settled, typeOver } from './open.js';

const { look } = looks();

/** The block with a machine, and with setups and tools that name its cuts. */
const shop = {
  ...block,
  name: 'Block in the shop',
  machine: { speeds: [80, 125] },
  tools: [{ id: 'head', kind: 'boring head', toolMaterial: 'HSS', maxSpeed: 600, cuts: ['rest', 'pin'] }],
  setups: [
    {
      id: 'seat-end',
      stops: [{ id: 'end', face: 'left' }],
      zero: {
        x: [
          { touch: 'end', tip: 10, reads: 0 },
          { bears: 'left', on: 'end', block: 10 },
        ],
        y: [{ touch: 'front', tip: 10, reads: 0 }],
      },
      cuts: ['seat-ring', 'rest-ring', 'rest', 'pin', 'oilway'],
    },
  ],
  keepOut: [
    {
      id: 'jaw',
      kind: 'jaw',
      shape: { rectangle: [40, 6], at: [20, -8] },
      from: 0,
      to: 5,
      setup: 'seat-end',
    },
  ],
};

type Shop = typeof shop;

const shopOf = async (page: Page) => (await jobOf(page)) as unknown as Shop;

const isOpen = (page: Page, pointer: string) => page.locator(id(pointer)).getAttribute('aria-expanded');

describe('typing key by key', () => {
  it('keeps every key of a new member of a list, whose row stays open', async () => {
    const page = await look();
    await openJob(page, shop);
    await page.getByRole('button', { name: 'Add a speed' }).click();
    await page.waitForFunction(() => document.activeElement?.tagName === 'INPUT');
    await page.keyboard.type('1250', { delay: 15 });
    await settled(page);
    expect((await shopOf(page)).machine.speeds).toEqual([80, 125, 1250]);
    expect(await isOpen(page, '/machine/speeds/2-row')).toBe('true');
    // All that was typed is one step, and the new row another.
    await page.click('#undo');
    await page.click('#undo');
    await settled(page);
    expect(await shopOf(page)).toEqual(shop);
  });

  it('keeps every key of what a change of kind asks for: a measured length, a wall of a cutter', async () => {
    const page = await look();
    await openJob(page, shop);
    await page.click(id('/setups/0'));
    await page
      .locator(`${id('/setups/0/zero/x')} .add`)
      .last()
      .click();
    await page.selectOption(id('/setups/0/zero/x/2-kind'), { label: 'measured' });
    await typeOver(page, id('/setups/0/zero/x/2/measured'), '25.75');
    await typeOver(page, id('/setups/0/zero/x/2/from'), 'left');
    await typeOver(page, id('/setups/0/zero/x/2/to'), 'right');
    expect((await shopOf(page)).setups[0]?.zero.x[2]).toEqual({ measured: 25.75, from: 'left', to: 'right' });

    await page.locator('.card.cuts').getByRole('button', { name: 'Add a cut' }).click();
    await page.selectOption(id('/cuts/5-kind'), { label: 'annular cutter' });
    await typeOver(page, id('/cuts/5/diameter'), '22.5');
    await typeOver(page, id('/cuts/5/wall'), '4.25');
    expect((await shopOf(page)).cuts[5]).toMatchObject({ kind: 'annular', diameter: 22.5, wall: 4.25 });
    expect(await isOpen(page, '/cuts/5')).toBe('true');
  });

  it('renames a cut whole, with all that names it, and past the name of another', async () => {
    const page = await look();
    await openJob(page, shop);
    await page.click(id('/cuts/0'));
    // On its way it is called `pin`, as another cut is.
    await typeOver(page, id('/cuts/0/id'), 'pin-seat');
    await settled(page);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('at/cuts/0/id');
    const wanted = structuredClone(shop);
    (wanted.cuts[0] as { id: string }).id = 'pin-seat';
    (wanted.setups[0] as { cuts: string[] }).cuts[0] = 'pin-seat';
    expect(await shopOf(page)).toEqual(wanted);
    expect(await isOpen(page, '/cuts/0')).toBe('true');
    // It is still the one that is chosen in the drawing.
    expect(await page.locator('.center-panel .whose').textContent()).toContain('pin-seat');
    await page.locator(id('/cuts/0/id')).blur();
    await page.click('#undo');
    await settled(page);
    expect(await shopOf(page)).toEqual(shop);
  });

  it('renames a setup with the place to keep clear of that is in it', async () => {
    const page = await look();
    await openJob(page, shop);
    await page.click(id('/setups/0'));
    await typeOver(page, id('/setups/0/id'), 'far end');
    await settled(page);
    const { setups, keepOut } = await shopOf(page);
    expect([setups[0]?.id, keepOut[0]?.setup]).toEqual(['far end', 'far end']);
    expect(await isOpen(page, '/setups/0')).toBe('true');
  });

  it('takes a cut out of the setups and tools that name it, and puts it back', async () => {
    const page = await look();
    await openJob(page, shop);
    await page.getByRole('button', { name: 'Take out rest', exact: true }).click();
    // Whoever uses keys goes on from where the row was.
    await page.waitForFunction(() => document.activeElement?.id === 'at/cuts/2');
    await settled(page);
    const { cuts, setups, tools } = await shopOf(page);
    expect(cuts.map((cut) => cut.id)).not.toContain('rest');
    expect([setups[0]?.cuts, tools[0]?.cuts]).toEqual([['seat-ring', 'rest-ring', 'pin', 'oilway'], ['pin']]);
    await page.click('#undo');
    await settled(page);
    expect(await shopOf(page)).toEqual(shop);
  });
});

describe('a number as shops write it', () => {
  it.each([
    ['1-1/8"', 28.575],
    ['120-18', 102],
    ['48/2', 24],
    ['1 1/2', 1.5],
  ])('%s is read as it is typed, and says what it was read as', async (typed, value) => {
    const page = await look();
    await openJob(page, { ...shop, name: 'Typed' });
    await typeOver(page, id('/part/thickness'), typed);
    await settled(page);
    const field = page.locator(`.field:has(${id('/part/thickness')})`);
    expect(await page.inputValue(id('/part/thickness'))).toBe(typed);
    expect(await field.locator('.reads').textContent()).toBe(`= ${value}`);
    expect((await shopOf(page)).part.thickness).toBe(value);
    await page.locator(id('/part/thickness')).blur();
    expect(await page.inputValue(id('/part/thickness'))).toBe(String(value));
  });
});

describe('a row that was opened', () => {
  it('stays open while others are chosen, moved and taken out, and closes by hand', async () => {
    const page = await look();
    await openJob(page, shop);
    await page.click(id('/cuts/3'));
    await page.focus('#handle-1');
    expect([await isOpen(page, '/cuts/3'), await isOpen(page, '/cuts/1')]).toEqual(['true', 'true']);
    // What is only chosen in the drawing closes with the choice.
    await page.focus('#handle-0');
    expect([await isOpen(page, '/cuts/3'), await isOpen(page, '/cuts/1')]).toEqual(['true', 'false']);
    await page.getByRole('button', { name: 'Move pin up', exact: true }).click();
    expect([await isOpen(page, '/cuts/2'), await isOpen(page, '/cuts/3')]).toEqual(['true', 'false']);
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Move pin up');
    await page.getByRole('button', { name: 'Take out seat-ring', exact: true }).click();
    expect(await isOpen(page, '/cuts/1')).toBe('true');
    await page.click('#undo');
    await page.click('#undo');
    await settled(page);
    expect(await isOpen(page, '/cuts/3')).toBe('true');
    await page.click(id('/cuts/3'));
    expect(await isOpen(page, '/cuts/3')).toBe('false');
  });

  it('is there for a cut that is chosen in the drawing, however far down the list', async () => {
    const page = await look();
    const many = {
      ...block,
      name: 'Many holes',
      part: { outline: { rectangle: [500, 40] }, thickness: 8 },
      cuts: Array.from({ length: 70 }, (_, k) => ({
        id: `hole-${k + 1}`,
        kind: 'bore',
        center: [10 + 7 * k, 20],
        diameter: 4,
      })),
    };
    await openJob(page, many);
    expect(await page.locator(id('/cuts/66')).count()).toBe(0);
    await page.focus('#handle-66');
    await typeOver(page, id('/cuts/66/diameter'), '4.5');
    await settled(page);
    expect((await jobOf(page)).cuts[66]).toMatchObject({ id: 'hole-67', diameter: 4.5 });
  });
});

describe('a part that was just added', () => {
  it('is not called wrong before it was come to, and is once it was left', async () => {
    const page = await look();
    await openJob(page, shop);
    await page.locator('.card.cuts').getByRole('button', { name: 'Add a cut' }).click();
    await page.selectOption(id('/cuts/5-kind'), { label: 'annular cutter' });
    await page.waitForSelector('.pending');
    expect(await page.locator('.faults, .field.faulty, .member.faulty').count()).toBe(0);
    expect(await page.locator(id('/cuts/5/wall')).getAttribute('aria-invalid')).toBe('false');
    // Passed by, it is told.
    await page.focus(id('/cuts/5/wall'));
    await page.keyboard.press('Tab');
    await page.waitForSelector('.faults');
    expect(await page.locator(id('/cuts/5/wall')).getAttribute('aria-invalid')).toBe('true');
    await typeOver(page, id('/cuts/5/wall'), '2');
    await settled(page);
    expect(await page.locator('.pending, .faults').count()).toBe(0);
    // Left altogether, so are all others.
    await page.getByRole('button', { name: 'Add a tool', exact: true }).click();
    await page.waitForSelector('.pending');
    await page.focus(id('/name'));
    await page.waitForSelector('.faults');
    expect(await page.locator('.pending').count()).toBe(0);
  });

  it('shows first what matters, and the rest behind one step that opens where it is used', async () => {
    const page = await look();
    await openJob(page, shop);
    await page.click(id('/cuts/3'));
    const labels = await page
      .locator('.member.open .inside')
      .first()
      .locator('label:visible, legend:visible')
      .allTextContents();
    expect(labels.slice(0, 3)).toEqual(['Kind', 'Diameter (optional)', 'Centre']);
    expect(await page.locator(id('/cuts/3/clearance')).isVisible()).toBe(false);
    await page.locator('.cuts .more > summary').click();
    await typeOver(page, id('/cuts/3/clearance'), '0.35');
    await settled(page);
    expect((await shopOf(page)).cuts[3]).toMatchObject({ clearance: 0.35 });
    // The ring has a reach: it shows.
    await page.click(id('/cuts/0'));
    expect(await page.locator(id('/cuts/0/reach')).isVisible()).toBe(true);
  });
});

describe('the lines of a form', () => {
  it('leave a hint the whole line where its field stands alone in it', async () => {
    const page = await look();
    await openJob(page, shop);
    await page.click(id('/cuts/3'));
    const shares = await page.$$eval('.fields > .field:has(> .hint)', (fields) =>
      Object.fromEntries(
        fields.map((field) => {
          const room = (field.parentElement as HTMLElement).getBoundingClientRect().width;
          const hint = field.querySelector('.hint')?.getBoundingClientRect().width ?? 0;
          return [field.querySelector('label')?.textContent, Math.round((hint / room) * 100)];
        }),
      ),
    );
    // Two between wider ones, and two of a line that they share.
    expect(shares).toMatchObject({ 'Diameter (optional)': 100, Tolerances: 100 });
    expect(shares['Web thinner than (optional)']).toBeLessThan(50);
    expect(shares['Web thinner than (optional)']).toBe(shares['Hold (optional)']);
  });

  it('have the numbers of a panel in one line, and its choices whole, whatever is said over them', async () => {
    for (const width of [1440, 1024]) {
      const page = await look({ width });
      await openJob(page, block);
      await page.click('.bite-panel > summary');
      const [finder, stop] = await page.$$eval('.lay-panel .queries input[type=text]', (inputs) =>
        inputs.map((input) => Math.round(input.getBoundingClientRect().top)),
      );
      expect(finder, `at ${width}`).toBe(stop);
      // A select has no overflow to read: the words are set beside it in its letters.
      const cut = await page.$$eval(
        '.queries select',
        (selects) =>
          (selects as HTMLSelectElement[]).filter((select) => {
            const bare = select.cloneNode(true) as HTMLSelectElement;
            bare.removeAttribute('id');
            bare.style.cssText = 'position:absolute;width:max-content;max-width:none';
            select.after(bare);
            const wanted = bare.getBoundingClientRect().width;
            bare.remove();
            return wanted > select.getBoundingClientRect().width + 1;
          }).length,
      );
      expect(cut, `at ${width}`).toBe(0);
    }
  });
});
