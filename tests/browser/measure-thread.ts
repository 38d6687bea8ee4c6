/*
 * What a move of a cut costs the thread of the page, in milliseconds of its processor time for each move: a part with 60
 * cuts, one of them dragged, and moved by keys.
 *   npm run page:thread
 */
import type { CDPSession, Page } from 'playwright-core';
import { middle, openJob, sight, stand } from './open.js';

/** Moves that are counted, after others that warm the page up. */
const MOVES = 200;
const WARM_UP = 60;

/** Milliseconds from one move to the next: a frame as a hand drags, and a key that is held. */
const PACE = { hand: 16, key: 33 };

const COLUMNS = 10;
const CUTS = 60;

const job = {
  edgebite: 1,
  name: 'Sixty cuts',
  units: 'mm',
  part: {
    outline: { rectangle: [COLUMNS * 16 + 16, 110], corner: 6 },
    thickness: 12,
    material: 'mild steel',
  },
  limits: { web: 3 },
  cuts: Array.from({ length: CUTS }, (_, k) => ({
    id: `cut-${k + 1}`,
    kind: k % 7 === 3 ? 'annular' : 'bore',
    center: [16 + (k % COLUMNS) * 16, 15 + Math.floor(k / COLUMNS) * 16],
    diameter: 9,
    ...(k % 7 === 3 ? { wall: 2 } : {}),
  })),
};

/** Milliseconds that the thread of the page has worked so far: all its tasks, and of them script, layout and style. */
async function worked(client: CDPSession): Promise<readonly number[]> {
  const { metrics } = (await client.send('Performance.getMetrics')) as {
    metrics: { name: string; value: number }[];
  };
  return ['TaskDuration', 'ScriptDuration', 'LayoutDuration', 'RecalcStyleDuration'].map(
    (name) => 1000 * (metrics.find((one) => one.name === name)?.value ?? Number.NaN),
  );
}

/** The time of each move, once the first ones are done. */
async function measured(
  client: CDPSession,
  page: Page,
  pace: number,
  move: (k: number) => Promise<unknown>,
): Promise<readonly number[]> {
  await client.send('Performance.enable', { timeDomain: 'threadTicks' });
  for (let k = 0; k < WARM_UP; k++) await paced(page, pace, () => move(k));
  const before = await worked(client);
  for (let k = WARM_UP; k < WARM_UP + MOVES; k++) await paced(page, pace, () => move(k));
  const after = await worked(client);
  return after.map((value, k) => (value - (before[k] ?? Number.NaN)) / MOVES);
}

async function paced(page: Page, pace: number, move: () => Promise<unknown>): Promise<void> {
  await move();
  await page.waitForTimeout(pace);
}

const told = (name: string, [all, ...parts]: readonly number[]): void => {
  const [script, layout, style] = parts.map((value) => value.toFixed(2));
  console.log(`${name}: ${all?.toFixed(2)} ms a move (script ${script}, layout ${layout}, style ${style})`);
};

const place = await stand();
const { page } = await sight(place);
await openJob(page, job);
await page.waitForSelector('.step-walk');
const client = await page.context().newCDPSession(page);
const { x, y } = await middle(page, '#handle-34 .target');
// Straight to the browser: what playwright runs in the page for a drag of its own would be counted too.
const dragTo = (x: number, y: number): Promise<unknown> =>
  client.send('Input.dispatchMouseEvent', { type: 'mouseMoved', x, y, button: 'left', buttons: 1 });
await page.mouse.move(x, y);
await page.mouse.down();
told(
  'dragged',
  await measured(client, page, PACE.hand, (k) => dragTo(x + 5 * Math.sin(k / 3), y + 5 * Math.sin(k / 2.3))),
);
await page.mouse.up();
await page.waitForSelector('.board.full');
await page.focus('#handle-34');
told(
  'by keys',
  await measured(client, page, PACE.key, (k) =>
    page.keyboard.press(k % 20 < 10 ? 'Shift+ArrowLeft' : 'Shift+ArrowRight'),
  ),
);
told('nothing done', await measured(client, page, PACE.key, async () => {}));
await place.stop();
