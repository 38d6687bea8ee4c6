import { options } from 'preact';

/**
 * Milliseconds that the page waits with drawing a move for what comes of it: a frame. Most parts are answered sooner; else
 * each move would be drawn twice: the centre, and a frame later the metal.
 */
const PATIENCE = 16;

let isHolding = false;
let held: (() => void) | null = null;
let waiting: ReturnType<typeof setTimeout> | undefined;
let frame: number | undefined;
let isSlow = false;
let asked = 0;

options.debounceRendering = (draw: () => void): void => {
  if (isHolding) held = draw;
  else queueMicrotask(draw);
};

/** A cut has been moved, and its job is on its way: what it changes is drawn with what comes of it, or soon without. */
export function moved(): void {
  asked = performance.now();
  if (isHolding) return;
  isHolding = true;
  if (isSlow) drawInFrame();
  else {
    waiting = setTimeout(() => {
      isSlow = true;
      drawInFrame();
    }, PATIENCE);
  }
}

/** What comes of a moved job is there, and is about to be put in place: once a frame is often enough for it. */
export function answered(): void {
  isSlow = performance.now() - asked > PATIENCE;
  isHolding = true;
  drawInFrame();
}

/** Something else than a move is done, and must be seen at once. */
export function drawNow(): void {
  clearTimeout(waiting);
  if (frame !== undefined) cancelAnimationFrame(frame);
  frame = undefined;
  isHolding = false;
  const draw = held;
  held = null;
  draw?.();
}

// All that comes before the frame is drawn with it.
function drawInFrame(): void {
  clearTimeout(waiting);
  frame ??= requestAnimationFrame(drawNow);
}
