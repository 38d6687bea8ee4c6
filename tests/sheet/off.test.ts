import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../packages/previewer/src/sheet/text.js';
import { offText } from '../../packages/previewer/src/sheet/words.js';

/** A plate zeroed with tips of the tolerances given, at a readout in steps of 0.005. */
function sheetWith(x: number, y: number) {
  const tip = (touch: string, tolerance: number) => ({ touch, tip: 10, reads: 0, tolerance });
  return sheetOf(
    examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [80, 40] }, thickness: 10 },
        setups: [{ id: 's', zero: { x: [tip('left', x)], y: [tip('front', y)] }, cuts: ['a'] }],
        cuts: [{ id: 'a', kind: 'bore', center: [40, 20], diameter: 8 }],
      } as never),
    ),
  );
}

describe('how far a target may be off, on the sheet', () => {
  // By hand: the tolerance of the zero and half a step, 0.0025; one figure for both axes, so that of the worse one.
  it.each([
    [0.1, 0.01],
    [0.01, 0.1],
  ])('is that of the axis that is worse: %d in x, %d in y', (x, y) => {
    const sheet = sheetWith(x, y);
    const [block] = sheet.blocks;
    const stand = block?.steps[0]?.stands[0];
    if (block === undefined || stand === undefined) throw new Error('there is no stand');
    expect(offText(stand, block)).toBe('0.1025');
    expect(sheetText(sheet)).toMatch(/45\.000.*25\.000.*0\.1025/);
  });
});
