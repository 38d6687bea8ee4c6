import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { examine, parseJob } from '@edgebite/core';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { buildPage, servePage } from '../../packages/previewer/page/site.mjs';
import { checkChromium, launched } from './chromium.js';

/** A browser, and the page served to it. */
export interface Stand {
  readonly browser: Browser;
  readonly address: string;
  /** The folder with the files of the page. */
  readonly folder: string;
  readonly stop: () => Promise<void>;
}

/** Builds and serves the page and starts the browser. Fails, saying what to do, where there is no browser. */
export async function stand(): Promise<Stand> {
  await checkChromium();
  const folder = await mkdtemp(join(tmpdir(), 'edgebite-page-'));
  await buildPage(folder);
  const { address, stop } = await servePage({ outDir: folder, port: 4280 });
  const browser = await launched();
  return {
    browser,
    address,
    folder,
    stop: async () => {
      await browser.close();
      await stop();
      await rm(folder, { recursive: true });
    },
  };
}

/** How a page is looked at. */
export interface Look {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  readonly touch?: boolean;
  /** Where the page is, if not where the stand serves it. */
  readonly address?: string;
  readonly init?: { readonly path?: string; readonly content?: string };
}

/** An open page, and everything that its console said. */
export interface Sight {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly said: string[];
}

/** Opens the page in a fresh profile, and waits until it can be used. */
export async function sight({ browser, address }: Stand, look: Look = {}): Promise<Sight> {
  const context = await browser.newContext({
    viewport: { width: look.width ?? 1440, height: look.height ?? 900 },
    colorScheme: look.dark === true ? 'dark' : 'light',
    reducedMotion: 'reduce',
    hasTouch: look.touch ?? false,
  });
  if (look.init !== undefined) await context.addInitScript(look.init);
  const page = await context.newPage();
  // It only ends a hang, on a busy machine too.
  page.setDefaultTimeout(30_000);
  const said: string[] = [];
  page.on('console', (message) => said.push(`${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => said.push(`error: ${error.message}`));
  await page.goto(look.address ?? address);
  await page.waitForSelector('.start');
  return { page, context, said };
}

/** Opens a job in the page as a file, whatever it is. */
export async function openText(page: Page, text: string | Buffer, name = 'job.json'): Promise<void> {
  await page.setInputFiles('#file', { name, mimeType: 'application/json', buffer: Buffer.from(text) });
}

/** Waits until the page shows the job as it stands. */
export async function settled(page: Page): Promise<void> {
  await page.waitForSelector('.state[data-fresh="true"]');
}

/** Opens a job that has no faults, and waits until it is drawn in place of the one before it. */
export async function openJob(page: Page, job: { readonly name: string }): Promise<void> {
  await openText(page, JSON.stringify(job));
  await shows(page, job.name);
}

/** Waits until the page shows the job of a name as it stands. */
export async function shows(page: Page, name: string): Promise<void> {
  await page.waitForFunction(
    (wanted) => (document.getElementById('at/name') as HTMLInputElement | null)?.value === wanted,
    name,
  );
  await settled(page);
}

/** What a button of the page gives to save, as text. */
export async function saved(page: Page, button: string): Promise<string> {
  const [download] = await Promise.all([
    // The lists of a drawing come after it as files of their own, perhaps while the next one is asked for.
    page.waitForEvent('download', (one) => !/-\d+\.svg$/.test(one.suggestedFilename())),
    page.getByRole('button', { name: button, exact: true }).click(),
  ]);
  return readFile(await download.path(), 'utf8');
}

/** The job as it stands in the page. */
export async function jobOf(page: Page): Promise<{ cuts: { id: string; center: [number, number] }[] }> {
  return JSON.parse(await saved(page, 'Job'));
}

/** The sentences of the findings as the page lists them. */
export async function sentences(page: Page): Promise<string[]> {
  return page.$$eval('.finding', (rows) =>
    rows.map((row) => row.querySelector('.sentence')?.textContent?.replace(' (the whole part)', '') ?? ''),
  );
}

/** The middle of an element on the screen. */
export async function middle(page: Page, selector: string): Promise<{ x: number; y: number }> {
  await page.locator(selector).scrollIntoViewIfNeeded();
  const box = await page.locator(selector).boundingBox();
  if (box === null) throw new Error(`${selector} is not on the screen`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** What the library, run here, has to say on a job: each sentence after its level. */
export function expected(job: unknown): string[] {
  return examine(parseJob(job)).findings.map(({ level, message }) => `${level} ${message}`);
}

/** The element of the page that shows the value at a pointer into the job. */
export const id = (pointer: string): string => `[id="at${pointer}"]`;

/** Opens what a field is folded away in, by a click on its summary, as a hand does. */
export async function unfold(page: Page, selector: string): Promise<void> {
  const folded = page.locator(`details:not([open]):has(${selector}) > summary`);
  if ((await folded.count()) > 0) await folded.first().click();
}

/** Puts a text in the place of what a field holds, key by key. */
export async function typeOver(page: Page, selector: string, text: string): Promise<void> {
  await unfold(page, selector);
  await page.click(selector);
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text, { delay: 15 });
}
