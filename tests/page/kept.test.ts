import { expect, it } from 'vitest';
import type { History } from '../../packages/previewer/page/src/document/history.js';
import type { Json } from '../../packages/previewer/page/src/document/json.js';
import { slimmed } from '../../packages/previewer/page/src/state/keep.js';

/** A job of so many cuts, after and before 150 others, each a number. */
function historyOf(cuts: number): History<Json> {
  const steps = Array.from({ length: 150 }, (_, k) => k);
  return { past: steps, present: { cuts: Array(cuts).fill(0) }, future: steps, kind: null } as History<Json>;
}

// A job weighs 20 and its cuts, and all that is kept up to 100,000: 980 cuts leave room for 100 steps each way.
it.each([
  [980, 100],
  [980 + 20, 98],
  [0, 150],
  [99_980, 1],
  [200_000, 1],
])('of %d cuts the nearest %d steps are kept to each side', (cuts, most) => {
  const history = historyOf(cuts);
  const { past, present, future } = slimmed(history);
  expect(present).toBe(history.present);
  expect(past).toEqual(history.past.slice(150 - most));
  expect(future).toEqual(history.future.slice(0, most));
});
