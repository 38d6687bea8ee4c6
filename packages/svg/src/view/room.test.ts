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
    // Until they close the place in: no leader goes through another label.
    expect(boxes.length).toBeGreaterThanOrEqual(10);
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1)) expect(meets(a, b)).toBe(false);
      expect(a.x).toBeGreaterThanOrEqual(AREA.x);
      expect(a.y).toBeGreaterThanOrEqual(AREA.y);
      expect(a.x + a.width).toBeLessThanOrEqual(AREA.x + AREA.width);
      expect(a.y + a.height).toBeLessThanOrEqual(AREA.y + AREA.height);
    });
  });

  it('is on no line, and a line does not part it from what it names', () => {
    const room = emptyRoom(AREA);
    for (let x = 12; x < 90; x += 8) room.markLine([x, 20], [x, 80], INK.line);
    for (let y = 22; y < 80; y += 8) room.markLine([10, y], [90, y], INK.line);
    // The meshes are 8 wide: a label of 5 goes into one, a label of 9 into none.
    const box = room.find([50, 50], 5, 3) as Box;
    expect(Math.floor((box.x - 12) / 8)).toBe(Math.floor((box.x + 5 - 12) / 8));
    expect(Math.floor((box.y - 22) / 8)).toBe(Math.floor((box.y + 3 - 22) / 8));
    expect(room.find([50, 50], 9, 3)).toBeNull();
    // One mesh is large enough, far off and in none of the usual directions: it is found.
    const wide = emptyRoom(AREA);
    wide.markBox(AREA, INK.line);
    const spot = { x: 71, y: 23, width: 10, height: 6 };
    const free = emptyRoom(AREA);
    for (let x = 10.5; x < 90; x++)
      for (let y = 20.5; y < 80; y++)
        if (x < spot.x || x > spot.x + spot.width || y < spot.y || y > spot.y + spot.height)
          free.mark([x, y], INK.line);
    expect(wide.find([50, 50], 7, 3)).toBeNull();
    const found = free.find([50, 50], 7, 3) as Box;
    expect(found.x).toBeGreaterThanOrEqual(spot.x - 1);
    expect(found.x + 7).toBeLessThanOrEqual(spot.x + spot.width + 1);
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
    // The place itself is hidden: a leader may begin there, but goes no farther through what is taken.
    room.markBox({ x: 47.5, y: 47.5, width: 5, height: 5 }, INK.taken);
    expect(room.find([50, 50], 6, 4, 2)).toBeNull();
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
