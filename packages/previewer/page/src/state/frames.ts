import { options } from 'preact';

/**
 * Milliseconds that the page waits with drawing a move for what comes of it. Most parts are answered sooner; else each move
 * would be drawn twice: the centre, and a frame later the metal.
 */
const PATIENCE = 8;

let waiting: ReturnType<typeof setTimeout> | undefined;
let isSlow = false;
let asked = 0;
let held: (() => void) | null = null;

options.debounceRendering = (draw: () => void): void => {
  if (waiting === undefined) queueMicrotask(draw);
  else held = draw;
};

/** A cut has been moved, and its job is on its way: what it changes is drawn with what comes of it, or soon without. */
export function moved(): void {
  asked = performance.now();
  if (isSlow || waiting !== undefined) return;
  waiting = setTimeout(() => {
    isSlow = true;
    drawNow();
  }, PATIENCE);
}

/** What comes of a job is there: once a frame is often enough for it. */
export function answered(): void {
  isSlow = performance.now() - asked > PATIENCE;
  const draw = stopWaiting();
  if (draw !== null) requestAnimationFrame(draw);
}

/** Something else than a move is done, and must be seen at once. */
export function drawNow(): void {
  stopWaiting()?.();
}

/** Waits no more, and gives what was held back meanwhile. */
function stopWaiting(): (() => void) | null {
  clearTimeout(waiting);
  waiting = undefined;
  const draw = held;
  held = null;
  return draw;
}
