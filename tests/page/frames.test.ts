import { options } from 'preact';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { answered, drawNow, moved } from '../../packages/previewer/page/src/state/frames.js';

let frames: (() => void)[] = [];
const draw = vi.fn();
const enqueue = () => options.debounceRendering?.(draw);

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('requestAnimationFrame', (act: () => void) => frames.push(act));
  vi.stubGlobal('cancelAnimationFrame', () => {
    frames = [];
  });
});

afterEach(() => {
  // An answer that comes at once: the next move is waited for again.
  moved();
  answered();
  nextFrame();
  draw.mockClear();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

function nextFrame(): void {
  const due = frames;
  frames = [];
  for (const act of due) act();
}

describe('what is drawn of a move', () => {
  it('comes with its answer, in one frame', async () => {
    moved();
    enqueue();
    await vi.advanceTimersByTimeAsync(5);
    expect(frames).toEqual([]);
    answered();
    enqueue();
    await vi.advanceTimersByTimeAsync(50);
    expect(draw).not.toHaveBeenCalled();
    nextFrame();
    expect(draw).toHaveBeenCalledTimes(1);
    nextFrame();
    expect(draw).toHaveBeenCalledTimes(1);
  });

  it('comes without it where it takes longer, and then the next one is not waited for', async () => {
    moved();
    enqueue();
    await vi.advanceTimersByTimeAsync(20);
    nextFrame();
    expect(draw).toHaveBeenCalledTimes(1);
    moved();
    enqueue();
    nextFrame();
    expect(draw).toHaveBeenCalledTimes(2);
    answered();
    enqueue();
    moved();
    enqueue();
    nextFrame();
    expect(draw).toHaveBeenCalledTimes(3);
  });

  it('comes at once where something else is done meanwhile', () => {
    moved();
    enqueue();
    answered();
    drawNow();
    expect(draw).toHaveBeenCalledTimes(1);
    expect(frames).toEqual([]);
  });
});

it('draws all else as soon as what asks for it is through', async () => {
  enqueue();
  expect(draw).not.toHaveBeenCalled();
  await vi.advanceTimersByTimeAsync(0);
  expect(draw).toHaveBeenCalledTimes(1);
});
