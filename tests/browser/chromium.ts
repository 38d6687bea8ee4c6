import { access } from 'node:fs/promises';
import { type Browser, chromium } from 'playwright-core';

/** Where Debian's package puts the browser. */
const CHROMIUM = '/usr/bin/chromium';

const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Fails, saying what to do, where there is no browser. */
export async function checkChromium(): Promise<void> {
  await access(CHROMIUM).catch(() => {
    throw new Error(
      `There is no browser at ${CHROMIUM}: install Debian's package chromium (apt-get install chromium)`,
    );
  });
}

/** Starts the browser. Fails, saying what to do, where there is none. */
export async function launched(): Promise<Browser> {
  await checkChromium();
  return chromium.launch({ executablePath: CHROMIUM, args: FLAGS });
}
