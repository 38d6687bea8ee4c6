import { describe, expect, it } from 'vitest';
import { emptyRoom, INK, nearest, type Room } from './room.js';
import type { Box } from './view.js';

const AREA: Box = { x: 10, y: 20, width: 80, height: 60 };

function meets(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** Places labels of one place until there is no room left for another. */
function filled(room: Room, width: number, height: number): Box[] {
  const boxes: Box[] = [];
  for (;;) {
    const box = room.find([50, 50], width, height);
    if (box === null) return boxes;
    room.take([50, 50], box);
    boxes.push(box);
  }
}

describe('room for labels', () => {
  it('is given once only, and only within the area', () => {
    const boxes = filled(emptyRoom(AREA), 11.3, 6.7);
    expect(boxes.length).toBeGreaterThan(10);
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1)) expect(meets(a, b)).toBe(false);
      expect(a.x).toBeGreaterThanOrEqual(AREA.x);
      expect(a.y).toBeGreaterThanOrEqual(AREA.y);
      expect(a.x + a.width).toBeLessThanOrEqual(AREA.x + AREA.width);
      expect(a.y + a.height).toBeLessThanOrEqual(AREA.y + AREA.height);
    });
  });

  it('is near the place where nothing is drawn, and off what is', () => {
    const near = emptyRoom(AREA).find([50, 50], 8, 4);
    const [x, y] = nearest(near as Box, [50, 50]);
    expect(Math.hypot(x - 50, y - 50)).toBeLessThan(4);
    const room = emptyRoom(AREA);
    room.markBox({ x: 50, y: 20, width: 40, height: 60 }, INK.line);
    expect((room.find([50, 50], 8, 4) as Box).x + 8).toBeLessThan(51);
  });

  it('keeps to a distance, and is null where there is none', () => {
    const room = emptyRoom(AREA);
    room.markBox({ x: 40, y: 40, width: 20, height: 20 }, INK.taken);
    expect(room.find([50, 50], 6, 4, 3.5)).toBeNull();
    expect(room.find([50, 50], 6, 4)).not.toBeNull();
    room.markBox(AREA, INK.taken);
    expect(room.find([50, 50], 6, 4)).toBeNull();
    expect(room.clearing([50, 50], 6, 4, 1e9)).toBeNull();
  });

  it('lets no leader through another label where there is a way round', () => {
    const room = emptyRoom(AREA);
    const label: Box = { x: 40, y: 40, width: 20, height: 6 };
    room.markBox(label, INK.taken);
    room.markBox({ x: 10, y: 52, width: 80, height: 28 }, INK.taken);
    const box = room.find([50, 50], 10, 6) as Box;
    const end = nearest(box, [50, 50]);
    for (let i = 0; i <= 50; i++) {
      const at = [50 + ((end[0] - 50) * i) / 50, 50 + ((end[1] - 50) * i) / 50] as const;
      expect(meets({ x: at[0], y: at[1], width: 0.01, height: 0.01 }, label)).toBe(false);
    }
  });

  it('is a clearing only where nothing at all is drawn', () => {
    const room = emptyRoom(AREA);
    room.markLine([10, 50], [90, 50], INK.line);
    const box = room.clearing([50, 50], 20, 20) as Box;
    expect(meets(box, { x: 10, y: 50, width: 80, height: 1 })).toBe(false);
    expect(room.clearing([50, 50], 20, 40)).toBeNull();
    expect(room.clearing([50, 50], 20, 40, 21 * INK.line)).not.toBeNull();
  });
});
