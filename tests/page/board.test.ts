import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { pinsFor } from '../../packages/previewer/page/src/board/pins.js';
import { dragStep, snapped } from '../../packages/previewer/page/src/board/snap.js';
import { enlarged, fitted, inPart, onScreen } from '../../packages/previewer/page/src/board/view.js';
import { sketchOf } from '../../packages/previewer/page/src/worker/sketch.js';
import { pathArea } from '../../packages/svg/fixtures/path-area.js';

describe('snapping', () => {
  it('leaves no dust of binary multiplication', () => {
    expect(snapped(0.3 + 1e-12, 0.1)).toBe(0.3);
    expect(snapped(83.1149, 0.005)).toBe(83.115);
    expect(snapped(-0.0001, 0.005)).toBe(0);
    expect(Object.is(snapped(-0.0001, 0.005), 0)).toBe(true);
    expect(snapped(2.00031, 0.0002)).toBe(2.0004);
  });

  it('drags in multiples of the resolution, as large as what a pixel stands for', () => {
    for (const resolution of [0.005, 0.0002, 0.01, 0.001]) {
      for (const perPixel of [0.0001, 0.003, 0.02, 0.13, 0.5, 2.2, 40]) {
        const step = dragStep(resolution, perPixel);
        expect(Math.abs(step / resolution - Math.round(step / resolution))).toBeLessThan(1e-6);
        expect(step).toBeGreaterThanOrEqual(Math.min(perPixel, step));
        expect(step).toBeLessThanOrEqual(Math.max(resolution, 2.5 * perPixel));
      }
    }
    expect(dragStep(0.005, 0.13)).toBe(0.25);
    expect(dragStep(0.005, 0.04)).toBe(0.05);
    expect(dragStep(0.005, 0.001)).toBe(0.005);
  });
});

describe('the view', () => {
  const size = { width: 800, height: 500 };
  const view = fitted([-4, 0, 92, 40], size);

  it('holds the box it is made for, with y up', () => {
    for (const corner of [
      [-4, 0],
      [92, 40],
    ] as const) {
      const [x, y] = onScreen(view, corner);
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(size.width);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThan(size.height);
    }
    expect(onScreen(view, [0, 40])[1]).toBeLessThan(onScreen(view, [0, 0])[1]);
  });

  it('leads back from the screen', () => {
    const [x, y] = inPart(view, onScreen(view, [12.5, 33]));
    expect(x).toBeCloseTo(12.5, 9);
    expect(y).toBeCloseTo(33, 9);
  });

  it('is enlarged round a place', () => {
    const larger = enlarged(view, [10, 20], [100, 90], 5);
    expect(larger.scale).toBeCloseTo(view.scale * 5, 9);
    const [x, y] = onScreen(larger, [10, 20]);
    expect(x).toBeCloseTo(100, 9);
    expect(y).toBeCloseTo(90, 9);
  });
});

describe('the numbers of findings', () => {
  it('stand off each other and inside the drawing, however close their places lie', () => {
    const size = { width: 360, height: 260 };
    const places = Array.from({ length: 8 }, (_, k) => [180 + k * 2, 130] as const);
    const pins = pinsFor(places, [[180, 130]], size);
    for (const [k, [x, y]] of pins.entries()) {
      expect(x).toBeGreaterThan(13);
      expect(y).toBeGreaterThan(13);
      expect(x).toBeLessThan(347);
      expect(y).toBeLessThan(247);
      for (const [u, v] of pins.slice(k + 1))
        expect(Math.max(Math.abs(u - x), Math.abs(v - y))).toBeGreaterThan(24);
    }
  });
});

describe('a sketch', () => {
  // The path's area is worked out from the path data itself, by chords and segments (svg/fixtures).
  it.each([
    { rectangle: [80, 30], corner: 4 },
    { circle: 30, at: [40, 15] },
    { slot: [80, 30], at: [40, 15] },
  ])('has the area of the metal it draws: %j', (outline) => {
    const report = examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline, thickness: 12 },
        cuts: [
          { id: 'ring', kind: 'annular', center: [45, 15], diameter: 26, wall: 4 },
          { id: 'bore', kind: 'bore', center: [30, 2], diameter: 9, depth: 4 },
        ],
      }),
    );
    const sketch = sketchOf(report);
    for (const [k, piece] of sketch.pieces.entries()) {
      const area = report.pieces[k]?.area ?? 0;
      expect(Math.abs(Math.abs(pathArea(piece.plan)) - area) / area).toBeLessThan(1e-7);
    }
    const top = report.slabs.at(-1)?.area ?? 0;
    const drawn = sketch.pieces.reduce((sum, piece) => sum + Math.abs(pathArea(piece.top)), 0);
    expect(Math.abs(drawn - top) / top).toBeLessThan(1e-7);
  });
});
