import { readdirSync, readFileSync } from 'node:fs';
import { examine, parseJob } from '@edgebite/core';
import { drawSheets } from '@edgebite/svg';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { sheetCsv } from '../../packages/previewer/src/sheet/csv.js';
import { sheetHtml } from '../../packages/previewer/src/sheet/html.js';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { picturesOf } from '../../packages/previewer/src/sheet/pictures.js';
import { rowsOf } from '../../packages/previewer/src/sheet/rows.js';
import { sheetText } from '../../packages/previewer/src/sheet/text.js';
import { shownText } from '../../packages/previewer/src/step/readout.js';
import { block } from './block.js';
import { looks } from './looks.js';
import { movedCases } from './moved-cases.js';
import {
  expected,
  id,
  jobOf,
  middle,
  openJob,
  openText,
  saved,
  sentences,
  settled,
  shows,
  sight,
} from './open.js';
import { placed } from './placed.js';
import { rangeCases } from './range-cases.js';

const folder = new URL('../../examples/', import.meta.url);
const examples = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => ({ file, job: JSON.parse(readFileSync(new URL(file, folder), 'utf8')) }));

const { look, place } = looks();

/** Which of the block's findings is the thin web between pin and edge: the one with a loupe. */
const THIN_WEB = examine(parseJob(block)).findings.findIndex(({ code }) => code === 'thin-web');

// Sine and cosine differ in their last digit from one version of the engine to another.
function rounded(text: string): unknown {
  return JSON.parse(text, (_, value) => (typeof value === 'number' ? Number(value.toPrecision(12)) : value));
}

function cutOf(index: number): (typeof block.cuts)[number] {
  const cut = block.cuts[index];
  if (cut === undefined) throw new Error(`the block has no cut ${index}`);
  return cut;
}

describe('the page', () => {
  it('opens each example and shows what the library says of it', async () => {
    const page = await look();
    expect(examples.length).toBeGreaterThan(3);
    for (const [k, { file, job }] of examples.entries()) {
      if (k === 0) await page.getByRole('button', { name: job.name, exact: true }).click();
      else await page.selectOption('#example', file);
      await shows(page, job.name);
      const report = examine(parseJob(job));
      expect(await sentences(page), file).toEqual(expected(job));
      expect(await page.locator('#metal .piece').count(), file).toBe(report.pieces.length);
      expect(await page.locator('#metal .tool').count(), file).toBe(report.cuts.length);
      const places = report.findings.filter(({ at }) => at !== null).length;
      expect(await page.locator('.pin').count(), file).toBe(places);
      // Each finding has its number in the full drawing as well.
      await page.waitForSelector('.board.full');
      expect(await page.locator('.drawn [data-about^="finding:"]').count(), file).toBeGreaterThanOrEqual(
        places,
      );
    }
  });

  it('follows what is typed, and takes it back and does it again in whole steps', async () => {
    const page = await look();
    await openJob(page, block);
    await page.click(id('/cuts/3'));
    await page.fill(id('/cuts/3/diameter'), '');
    await page.locator(id('/cuts/3/diameter')).pressSequentially('9,75');
    await page.locator(id('/cuts/3/diameter')).blur();
    await settled(page);
    const wider = structuredClone(block);
    wider.cuts[3] = { ...cutOf(3), diameter: 9.75 };
    expect(await jobOf(page)).toEqual(wider);
    expect(await sentences(page)).toEqual(expected(wider));
    await page.click('#undo');
    await settled(page);
    expect(await jobOf(page)).toEqual(block);
    expect(await sentences(page)).toEqual(expected(block));
    expect(await page.locator('#undo').isDisabled()).toBe(true);
    await page.keyboard.press('Control+y');
    await settled(page);
    expect(await jobOf(page)).toEqual(wider);
  });

  it('moves a centre with the pointer, snapped to the resolution, as one step', async () => {
    const page = await look();
    await openJob(page, block);
    // The view is that of the full drawing, which comes after the numbers.
    await page.waitForSelector('.board.full');
    const from = await middle(page, '#handle-3 .target');
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x + 31, from.y - 17, { steps: 6 });
    await page.mouse.up();
    await settled(page);
    await page.waitForSelector('.board.full');
    const to = await middle(page, '#handle-3 .target');
    const job = await jobOf(page);
    const [x, y] = job.cuts[3]?.center ?? [0, 0];
    expect(x).toBeGreaterThan(62);
    expect(y).toBeGreaterThan(6);
    const { resolution } = examine(parseJob(block));
    for (const value of [x, y]) {
      expect(Math.abs(value / resolution - Math.round(value / resolution))).toBeLessThan(1e-6);
    }
    // The centre is where the pointer let it go, to within the pixel that it points with.
    expect(Math.hypot(to.x - from.x - 31, to.y - from.y + 17)).toBeLessThan(1.5);
    expect(await sentences(page)).toEqual(expected(job));
    await page.click('#undo');
    await settled(page);
    expect(await jobOf(page)).toEqual(block);
  });

  it('moves a centre with a finger', async () => {
    const page = await look({ width: 360, height: 740, touch: true });
    await openJob(page, block);
    const from = await middle(page, '#handle-0 .target');
    const client = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', dx: number) =>
      client.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x: from.x + dx, y: from.y }],
      });
    await touch('touchStart', 0);
    for (const dx of [-4, -9, -15]) await touch('touchMove', dx);
    await touch('touchEnd', -15);
    await settled(page);
    const job = await jobOf(page);
    expect(job.cuts[0]?.center[0]).toBeLessThan(90);
    expect(job.cuts[0]?.center[1]).toBe(20);
    expect(await sentences(page)).toEqual(expected(job));
  });

  it('can be used with the keyboard alone', async () => {
    const page = await look();
    const tabTo = async (selector: string): Promise<void> => {
      for (let k = 0; k < 90; k++) {
        await page.keyboard.press('Tab');
        if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector))
          return;
      }
      throw new Error(`no way to ${selector} with the tab key`);
    };
    await tabTo('.examples button');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.bench');
    await openJob(page, block);
    await tabTo(`#finding-${THIN_WEB} button`);
    await page.keyboard.press('Space');
    expect(await page.locator(`#pin-${THIN_WEB}`).getAttribute('aria-pressed')).toBe('true');
    expect(await page.locator('.loupe').count()).toBe(1);
    await tabTo('.handle');
    await page.keyboard.press('PageDown');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Shift+ArrowUp');
    await tabTo('.pin');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    expect(await page.locator('.finding.chosen').count()).toBe(1);
    await tabTo(id('/cuts/3'));
    await page.keyboard.press('Enter');
    await tabTo(id('/cuts/3/diameter'));
    await page.keyboard.press('ArrowUp');
    await settled(page);
    const moved = structuredClone(block);
    moved.cuts[1] = { ...cutOf(1), center: [-3.995, 20.05] };
    moved.cuts[3] = { ...cutOf(3), diameter: 8.005 };
    expect(await jobOf(page)).toEqual(moved);
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await settled(page);
    expect((await jobOf(page)).cuts[1]?.center).toEqual(cutOf(1).center);
  });

  it('leads from a finding to its place and from a place to its finding', async () => {
    const page = await look();
    await openJob(page, block);
    await page.click(`#finding-${THIN_WEB} button`);
    expect(await page.locator('.pin.chosen').getAttribute('id')).toBe(`pin-${THIN_WEB}`);
    await page.click('#pin-0 .shape');
    expect(await page.locator('.finding.chosen').getAttribute('id')).toBe('finding-0');
    await page.click('#pin-0 .shape');
    expect(await page.locator('.finding.chosen').count()).toBe(0);
    // The loose slug itself, in the full drawing: what is first said of it.
    await page.waitForSelector('.board.full');
    await page
      .locator('.drawn path[id][data-about="piece:slug-1"]')
      .last()
      .click({ position: { x: 30, y: 40 } });
    expect(await page.locator('.finding.chosen').getAttribute('id')).toBe('finding-0');
  });

  it('says what is wrong at the field that is wrong, and draws nothing as new until it is mended', async () => {
    const page = await look();
    await openJob(page, block);
    await page.click(id('/cuts/3'));
    await page.fill(id('/cuts/3/diameter'), '-3');
    await page.waitForSelector('.faults');
    const field = page.locator(id('/cuts/3/diameter'));
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    const notes = (await field.getAttribute('aria-describedby'))?.split(' ') ?? [];
    const fault = page.locator(`[id="${notes.at(-1)}"]`);
    expect(await fault.textContent()).toMatch(/must be over 0/);
    expect(await page.locator('.board.outdated').count()).toBe(1);
    expect(await page.getByRole('button', { name: 'Report', exact: true }).isDisabled()).toBe(true);
    await page.locator('#card-faults ~ ul button').click();
    // The field is gone to with the next frame.
    await page.waitForFunction(() => document.activeElement?.id === 'at/cuts/3/diameter');
    await page.fill(id('/cuts/3/diameter'), '8');
    await settled(page);
    expect(await page.locator('.faults').count()).toBe(0);
    expect(await page.locator('.board.outdated').count()).toBe(0);
  });

  it('opens a file whose faults lie in its fields, and refuses others without losing what is open', async () => {
    const page = await look();
    await openJob(page, block);
    for (const [text, words] of [
      ['{"edgebite": 1, ', /is not JSON/],
      ['[1, 2]', /could not be opened/],
      [Buffer.from([0xff, 0xfe, 0x00]), /is not UTF-8/],
    ] as const) {
      await openText(page, text, 'bad.json');
      expect(await page.locator('[role=alert]').textContent()).toMatch(words);
      await page.getByRole('button', { name: 'Put this note away' }).click();
    }
    expect(await jobOf(page)).toEqual(block);
    const faulty = structuredClone(block);
    faulty.cuts[1] = { ...cutOf(1), wall: 50 };
    faulty.part.thickness = undefined;
    await openText(page, JSON.stringify(faulty));
    await page.waitForSelector(`${id('/cuts/1/wall')}[aria-invalid=true]`);
    expect(await page.locator(`${id('/part/thickness')}[aria-invalid=true]`).count()).toBe(1);
  });

  it('takes a file that is dropped on it', async () => {
    const page = await look();
    await page.evaluate((text) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([text], 'job.json', { type: 'application/json' }));
      for (const kind of ['dragover', 'drop']) {
        document.body.dispatchEvent(new DragEvent(kind, { dataTransfer, bubbles: true, cancelable: true }));
      }
    }, JSON.stringify(block));
    await shows(page, block.name);
    expect(await sentences(page)).toEqual(expected(block));
  });

  it('shows text from a job as text, whatever it holds', async () => {
    const page = await look();
    const nasty = `<script>window.bitten=1</script><img src=x onerror=window.bitten=1>"'&]]>`;
    const job = structuredClone(block);
    job.name = nasty;
    job.part.material = nasty;
    for (const [k, cut] of job.cuts.entries()) cut.id = `${nasty}${k}`;
    await openJob(page, job);
    await page.click(id('/cuts/3'));
    await page.waitForSelector('.paper:not(.old) svg');
    expect(await page.evaluate(() => 'bitten' in window)).toBe(false);
    expect(await page.locator('script:not([src]), img').count()).toBe(0);
    expect(await sentences(page)).toEqual(expected(job));
    expect(await page.inputValue(id('/cuts/3/id'))).toBe(`${nasty}3`);
    expect(await saved(page, 'Drawing')).not.toMatch(/<(script|img)/);
    expect(await jobOf(page)).toEqual(job);
  });

  it('gives the report and the readouts that the library gives, and prints at true scale', async () => {
    const page = await look();
    await openJob(page, block);
    expect(rounded(await saved(page, 'Report'))).toEqual(rounded(JSON.stringify(examine(parseJob(block)))));
    const sheet = sheetOf(examine(parseJob(block)));
    expect(await saved(page, 'Readouts')).toBe(sheetText(sheet));
    expect(await saved(page, 'Readouts as a table')).toBe(sheetCsv(sheet));
    await page.waitForSelector('.paper:not(.old) svg');
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('h1, h2, button').filter({ visible: true }).count()).toBe(0);
    // The drawing, and its lists, each on a sheet of its own.
    const papers = page.locator('.paper svg');
    const sheets = drawSheets(examine(parseJob(block)));
    expect(await papers.count()).toBe(sheets.length);
    expect(sheets.length).toBeGreaterThan(1);
    const pdf = (await page.pdf({ preferCSSPageSize: true, printBackground: true })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(sheets.length);
    const paper = await papers.first().boundingBox();
    // A4 lying, ISO 216; a CSS inch has 96 pixels.
    expect(paper?.width).toBeCloseTo((297 / 25.4) * 96, 1);
    expect(paper?.height).toBeCloseTo((210 / 25.4) * 96, 1);
  });
});

movedCases(look);
rangeCases(look);

describe('the readouts', () => {
  it('come as a page, and print on whatever paper there is, as that page would', async () => {
    const printed = { content: 'window.print = () => { window.printed = (window.printed ?? 0) + 1; };' };
    const page = await look({ init: printed });
    await openJob(page, block);
    const report = examine(parseJob(block));
    const sheet = sheetOf(report);
    expect(await saved(page, 'Readouts to print')).toBe(sheetHtml(sheet, picturesOf(report, sheet)));
    await page.getByRole('button', { name: 'Print the readouts' }).click();
    await page.waitForFunction(() => 'printed' in window);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.paper svg, h2, button').filter({ visible: true }).allTextContents()).toEqual(
      sheet.blocks.map(({ title }) => title),
    );
    const cells = page.locator('.readouts td.t');
    expect(await cells.allTextContents()).toEqual(
      sheet.blocks.flatMap((one) =>
        one.steps
          .flatMap((step) => rowsOf(step, one, sheet))
          .flatMap(({ stand }) => stand.target.map((value) => shownText(value, one))),
      ),
    );
    // Its own style: 16 points, black.
    const shown = await cells.first().evaluate((cell) => {
      const { fontSize, color } = getComputedStyle(cell);
      return { fontSize: Number.parseFloat(fontSize), color };
    });
    expect(shown.fontSize).toBeCloseTo((16 * 96) / 72, 3);
    expect(shown.color).toBe('rgb(0, 0, 0)');
    const pdf = (await page.pdf({ preferCSSPageSize: true, format: 'Letter' })).toString('latin1');
    // Upright Letter, 612 by 792 points (ANSI/ASME Y14.1), though the drawing asks for A4 that lies.
    expect(/\/MediaBox\s*\[([^\]]*)\]/.exec(pdf)?.[1]?.trim().split(/\s+/).map(Number)).toEqual([
      0, 0, 612, 792,
    ]);
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    expect(await page.locator('.readouts').count()).toBe(0);
    expect(await page.locator('.paper svg').first().isVisible()).toBe(true);
  });
});

it('prints the drawing on bare paper, from a dark page and on paper wider than its sheet too', async () => {
  const page = await look({ dark: true, width: 1600 });
  await openJob(page, block);
  await page.waitForSelector('.paper svg');
  await page.emulateMedia({ media: 'print' });
  const paints = await page.$$eval('html, body, .screen, .bench, .sheet, .paper', (all) =>
    all.map((one) => getComputedStyle(one).backgroundColor),
  );
  expect(new Set(paints)).toEqual(new Set(['rgba(0, 0, 0, 0)']));
});

describe('a slow machine', () => {
  // Holds answers of the worker back until they are let go, as a large job would.
  const HELD = `
    const held = [];
    let holding = false;
    window.hold = (on) => {
      holding = on;
      while (!on && window.letGo());
    };
    window.letGo = () => {
      const next = held.shift();
      next?.();
      return next !== undefined;
    };
    const Plain = window.Worker;
    window.Worker = class extends Plain {
      addEventListener(kind, heard) {
        super.addEventListener(kind, (event) => {
          if (holding && event.data.kind === 'examined') held.push(() => heard(event));
          else heard(event);
        });
      }
    };`;

  type Holding = typeof window & { hold: (on: boolean) => void; letGo: () => boolean };
  const hold = (page: Page, on: boolean): Promise<void> =>
    page.evaluate((value) => (window as unknown as Holding).hold(value), on);
  const letGo = (page: Page): Promise<unknown> =>
    page.waitForFunction(() => (window as unknown as Holding).letGo());

  it('never shows an old drawing as that of the job', async () => {
    const page = await look({ init: { content: HELD } });
    await openJob(page, block);
    await page.click(id('/cuts/3'));
    const before = await sentences(page);
    await hold(page, true);
    await page.fill(id('/cuts/3/center/1'), '5.1');
    await page.fill(id('/cuts/3/center/1'), '4.9');
    expect(await page.locator('.state').getAttribute('data-fresh')).toBe('false');
    expect(await page.locator('.board.outdated').count()).toBe(1);
    expect(await page.locator('.findings.outdated').count()).toBe(1);
    expect(await sentences(page)).toEqual(before);
    // The first answer is for 5.1, and comes too late to be new.
    await letGo(page);
    await page.waitForFunction(
      (web) => document.querySelector(`#finding-${web}`)?.textContent?.includes('1.100'),
      THIN_WEB,
    );
    expect(await page.locator('.state').getAttribute('data-fresh')).toBe('false');
    await letGo(page);
    await hold(page, false);
    await settled(page);
    expect((await sentences(page))[THIN_WEB]).toContain('0.900');
    // The steps follow with the panels.
    await page.waitForFunction(() => document.querySelector('.outdated') === null);
  });
});

describe('at every width', () => {
  it.each([360, 1440])('of %i pixels nothing sticks out, and all can be reached', async (width) => {
    const page = await look({ width, height: 800 });
    for (const job of [block, placed, ...examples.map((example) => example.job)]) {
      await openJob(page, job);
      const cuts = await page.locator('.cuts .strip .name').all();
      // Every kind of cut is in the block; of the others the first will do.
      for (const cut of job === block || job === placed ? cuts : cuts.slice(0, 1)) {
        await cut.click();
        const over = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        expect(over).toBe(0);
      }
      const outside = await page.$$eval('button, input:not(.sr-only), select, .pin .shape', (all) =>
        all
          .filter((one) => one.closest('.sideways') === null && one.getClientRects().length > 0)
          .filter((one) => {
            const { left, right } = one.getBoundingClientRect();
            return left < 0 || right > document.documentElement.clientWidth;
          })
          .map((one) => one.outerHTML),
      );
      expect(outside).toEqual([]);
    }
  });
});

describe('axe', () => {
  const path = new URL('../../node_modules/axe-core/axe.min.js', import.meta.url).pathname;

  it.each([
    { width: 1440, dark: false },
    { width: 360, dark: true },
  ])('finds nothing at $width pixels, dark: $dark', async ({ width, dark }) => {
    const page = await look({ width, height: 800, dark, init: { path } });
    const violations = () =>
      page.evaluate(async () => {
        const { axe } = window as unknown as { axe: { run: () => Promise<{ violations: AxeViolation[] }> } };
        const found = await axe.run();
        return found.violations.map(
          ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`,
        );
      });
    expect(await violations(), 'at the start').toEqual([]);
    await openJob(page, block);
    await page.click(`#finding-${THIN_WEB} button`);
    for (const table of await page.locator('details summary').all()) await table.click();
    expect(await violations(), 'with a finding').toEqual([]);
    await openJob(page, placed);
    await page.focus('#handle-0');
    await page.click('#range-panel summary');
    await page.getByRole('button', { name: 'Find safe values' }).click();
    await page.waitForSelector('.range svg');
    expect(await violations(), 'with passes and a range').toEqual([]);
    await page.click('#undo');
    await shows(page, block.name);
    await page.click(id('/cuts/3'));
    await page.fill(id('/cuts/3/diameter'), 'x');
    await page.waitForSelector('.faults');
    expect(await violations(), 'with a fault').toEqual([]);
    await openText(page, 'no job', 'bad.json');
    await page.waitForSelector('[role=alert]');
    expect(await violations(), 'with a bad file').toEqual([]);
  });
});

interface AxeViolation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string }[];
}

describe('the policy', () => {
  it('lets nothing in or out but the files of the page', async () => {
    const one = await sight(place());
    const { page } = one;
    const directives = (await page.locator('meta[http-equiv]').getAttribute('content'))?.split('; ') ?? [];
    expect(directives[0]).toBe("default-src 'none'");
    // The worker is a part of the page's own script; all else comes from the page's own files, or not at all.
    expect(directives).toContain('worker-src blob:');
    for (const directive of directives.filter((one) => one !== 'worker-src blob:')) {
      expect(directive).toMatch(/^[a-z-]+ '(none|self)'$/);
    }
    const headers = (await page.request.get(place().address)).headers();
    expect(headers['content-security-policy']).toContain("frame-ancestors 'none'");
    const blocked = await page.evaluate(async () => {
      const seen: string[] = [];
      document.addEventListener('securitypolicyviolation', (event) => seen.push(event.effectiveDirective));
      await fetch('http://127.0.0.1:9/elsewhere').catch(() => {});
      const script = document.createElement('script');
      script.textContent = 'window.bitten = 1';
      document.body.append(script);
      const style = document.createElement('style');
      style.textContent = 'body { color: red }';
      document.body.append(style);
      const image = new Image();
      image.src = 'http://127.0.0.1:9/picture.png';
      document.body.append(image);
      document.body.setAttribute('onclick', 'window.bitten = 1');
      document.body.click();
      await new Promise((resolve) => setTimeout(resolve, 100));
      return { seen: [...new Set(seen)].sort(), bitten: 'bitten' in window };
    });
    expect(blocked).toEqual({
      seen: ['connect-src', 'img-src', 'script-src-attr', 'script-src-elem', 'style-src-elem'],
      bitten: false,
    });
    await one.context.close();
  });
});
