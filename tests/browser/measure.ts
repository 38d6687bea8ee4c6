import { cpus } from 'node:os';
import type { Page } from 'playwright-core';
import { middle, openJob, sight, stand } from './open.js';

/** Moves that are counted, after others that warm the page up. */
const MOVES = 200;
const WARM_UP = 40;

/** Milliseconds from one move to the next: a little over two frames, as a steady hand goes. */
const PACE = 40;

const bore = (id: string, x: number, y: number, diameter: number) => ({
  id,
  kind: 'bore',
  center: [x, y],
  diameter,
});

// A plate with twelve edges, two of them arcs, and five cuts of three kinds.
const small = {
  edgebite: 1,
  name: 'Twelve edges, five cuts',
  units: 'mm',
  part: {
    outline: {
      svgPath:
        'M0 0 L40 0 L40 6 L60 6 L60 0 L100 0 L100 30 A10 10 0 0 1 90 40 L70 50 L30 50 L10 40 A10 10 0 0 1 0 30 Z',
    },
    thickness: 12,
    material: 'mild steel',
  },
  cuts: [
    bore('dragged', 50, 26, 18),
    bore('left', 14, 14, 10),
    bore('right', 86, 14, 10),
    { id: 'ring', kind: 'annular', center: [100, 30], diameter: 24, wall: 4 },
    { id: 'way', kind: 'swept', diameter: 5, depth: 4, path: { svgPath: 'M20 30 L30 40 L70 40' } },
  ],
};

const COLUMNS = 20;
const ROWS = 10;

// A plate with 200 holes, each a cut of the job; one of them is moved about.
const large = {
  edgebite: 1,
  name: 'Two hundred holes',
  units: 'mm',
  part: { outline: { rectangle: [COLUMNS * 10 + 10, ROWS * 10 + 10] }, thickness: 8, material: 'mild steel' },
  cuts: Array.from({ length: COLUMNS * ROWS }, (_, k) =>
    bore(`hole-${k + 1}`, 10 + (k % COLUMNS) * 10, 10 + Math.floor(k / COLUMNS) * 10, 6),
  ),
};

interface Taken {
  /** From a move of the pointer to the drawing of its job being in the page, laid out, milliseconds. */
  readonly written: number;
  /** From a move of the pointer to the frame with that drawing having been painted. */
  readonly painted: number;
  /** From the same move to the first frame of all after it having been painted: no drawing can be shown sooner. */
  readonly soonest: number;
  /** Whether that first frame has the drawing. */
  readonly first: boolean;
}

// In the page: each move, and the first frame after the metal was drawn anew.
const WATCH = `
  window.taken = [];
  let moved = null;
  const kinds = 'onpointerrawupdate' in window ? 'pointerrawupdate' : 'pointermove';
  window.addEventListener(kinds, () => {
    // A move too small to change the job is not answered; while one is in work, its start counts and not that of the next.
    if (moved !== null && moved.isHeld) return;
    const move = { start: performance.now(), written: null, first: false, isHeld: false };
    moved = move;
    requestAnimationFrame(() => {
      move.first = move.written !== null;
      whenPainted(() => { move.soonest = performance.now() - move.start; });
    });
  }, { capture: true });
  const whenPainted = (then) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = then;
    port2.postMessage(null);
  };
  // What is drawn within a frame is painted with it, all else with the next one.
  let inFrame = false;
  const ask = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (act) => ask((time) => {
    inFrame = true;
    act(time);
    queueMicrotask(() => { inFrame = false; });
  });
  const watch = (selector, then) =>
    new MutationObserver(then).observe(document.querySelector(selector), { attributes: true, subtree: true });
  window.watch = () => {
    watch('.handles', () => {
      if (moved !== null) moved.isHeld = true;
    });
    watch('#metal', () => {
      if (moved === null) return;
      const move = moved;
      moved = null;
      document.querySelector('#metal').getBoundingClientRect();
      move.written = performance.now() - move.start;
      const push = () => window.taken.push({ ...move, painted: performance.now() - move.start });
      if (inFrame) whenPainted(push);
      else requestAnimationFrame(() => whenPainted(push));
    });
  };`;

async function measured(page: Page, handle: string): Promise<readonly Taken[]> {
  const { x, y } = await middle(page, `${handle} .target`);
  await page.evaluate(() => (window as unknown as { watch: () => void }).watch());
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let k = 1; k <= MOVES + WARM_UP; k++) {
    await page.mouse.move(x + 24 * Math.sin(k / 9), y + 14 * Math.sin(k / 7));
    await page.waitForTimeout(PACE);
  }
  await page.mouse.up();
  const taken = await page.evaluate(() => (window as unknown as { taken: Taken[] }).taken);
  return taken.slice(WARM_UP);
}

function centile(values: readonly number[], share: number): string {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[Math.min(Math.floor(sorted.length * share), sorted.length - 1)] ?? Number.NaN).toFixed(1);
}

/** How many moves are shown in the very next frame, per cent. */
function share(taken: readonly Taken[]): string {
  return ((100 * taken.filter(({ first }) => first).length) / taken.length).toFixed(0);
}

const place = await stand();
console.log(
  `Chromium ${place.browser.version()}, headless without a GPU; ${cpus().length} cores, ${cpus()[0]?.model}`,
);
console.log('From a move of the pointer, in milliseconds: median, 95th centile');
for (const [job, handle] of [
  [small, '#handle-0'],
  [large, '#handle-109'],
] as const) {
  const { page, context } = await sight(place, { init: { content: WATCH } });
  await openJob(page, job);
  const taken = await measured(page, handle);
  const row = (values: readonly number[]) => `${centile(values, 0.5)}, ${centile(values, 0.95)}`;
  console.log(
    `${job.name}: drawing in the page ${row(taken.map(({ written }) => written))}; ` +
      `frame painted ${row(taken.map(({ painted }) => painted))}; ` +
      `any frame painted ${row(taken.map(({ soonest }) => soonest))}; ` +
      `in the first frame ${share(taken)} %; ${taken.length} moves`,
  );
  await context.close();
}
await place.stop();
