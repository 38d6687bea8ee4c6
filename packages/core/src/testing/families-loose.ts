import { anchorOn, fromAnchor, stepped } from './anchors.js';
import type { Cut } from './cut-case.js';
import { type Family, family } from './family.js';
import { boxRegion, capsule, plates, rectangles } from './outlines.js';
import { boxOf, edgesOf } from './probe.js';

/** A disc as a cut. */
export function discCut(x: number, y: number, radius: number): Cut {
  return { kind: 'disc', center: { x, y }, radius };
}

/** Families whose cuts lie anywhere: no planted coincidence. */
export const looseFamilies: readonly Family[] = [
  family({
    name: 'generic-discs',
    about: 'one to six discs anywhere',
    build: (_, { spread }) => spread.map(([x, y, r]) => discCut(x, y, r)),
  }),
  family({
    name: 'generic-rings',
    about: 'one to six rings anywhere',
    build: (_, { spread, second }) =>
      spread.map(([x, y, r]): Cut => {
        const inner = r * (second / 31);
        return { kind: 'ring', center: { x, y }, outer: r, inner };
      }),
  }),
  family({
    name: 'many-discs',
    about: 'twenty to sixty discs in a quasi-random pattern',
    build: (_, { radius, second, count, along }) =>
      Array.from({ length: 10 * count }, (_unused, k) => {
        const share = (step: number): number => (k * step + along / 16) % 1;
        // Steps of the golden ratio and of the square root of two spread evenly and repeat nowhere.
        return discCut(
          140 * share(0.6180339887) - 20,
          140 * share(0.4142135624) - 20,
          1 + ((k * radius) % second),
        );
      }),
  }),
  family({
    name: 'slots-across',
    about: 'capsules from inside the part to anywhere, as swept cuts leave them',
    build: (outline, { edge, along, spread }) => {
      const { at } = anchorOn(outline, edge, along);
      return spread.map(([x, y, r]): Cut => {
        const end = x === at.x && y === at.y ? { x: x + 1, y } : { x, y };
        return { kind: 'shape', region: capsule(at, end, r / 2) };
      });
    },
  }),
  family({
    name: 'ring-over-edge',
    about: 'a ring whose centre lies near an edge, inside or outside',
    build: (outline, { edge, along, radius, second, choice }) => {
      const center = fromAnchor(anchorOn(outline, edge, along), (choice - 3) * 1.37);
      return [{ kind: 'ring', center, outer: radius + second / 3, inner: radius }];
    },
  }),
  family({
    name: 'outside',
    about: 'cuts that miss the part',
    build: (outline, { radius, count }) => {
      const box = boxOf(edgesOf(outline));
      return Array.from({ length: count }, (_, k) =>
        discCut(box.maxX + radius + 0.5 + k, box.minY + 7 * k, radius),
      );
    },
  }),
  family({
    name: 'inside-a-hole',
    about: 'cuts that lie in a hole of the part, or in a bore made before, and take nothing',
    outlines: plates,
    build: (outline, { edge, second, radius, spread }) => {
      const holes = outline[0]?.holes ?? [];
      const box = boxOf(holes[edge % holes.length] ?? []);
      const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
      const half = (box.maxX - box.minX) / 2;
      const [bx, by, r] = spread[0] ?? [0, 0, 1];
      const core = discCut(bx, by, (r * radius) / 40);
      return [discCut(x, y, (half * second) / 40), discCut(bx, by, r), core, discCut(x, y, half / 3)];
    },
  }),
  family({
    name: 'swallow-all',
    about: 'a disc that covers the whole part, after another cut',
    build: (outline, { spread, radius }) => {
      const box = boxOf(edgesOf(outline));
      const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
      const half = Math.hypot(box.maxX - box.minX, box.maxY - box.minY) / 2;
      return [
        ...spread.slice(0, 2).map(([sx, sy, r]) => discCut(sx, sy, r)),
        discCut(x, y, half + radius / 4),
      ];
    },
  }),
  family({
    name: 'split',
    about: 'straight bars across the part that leave several pieces',
    build: (outline, { count, direction, radius }) => {
      const box = boxOf(edgesOf(outline));
      return Array.from({ length: count }, (_, k): Cut => {
        const middle = {
          x: box.minX + ((k + 1) * (box.maxX - box.minX)) / (count + 1),
          y: (box.minY + box.maxY) / 2,
        };
        const ends = [stepped(middle, direction, 200), stepped(middle, direction, -200)] as const;
        return { kind: 'shape', region: capsule(ends[0], ends[1], radius / 10) };
      });
    },
  }),
  family({
    name: 'grid',
    about: 'equal discs on a grid with coordinates rounded to a thousandth',
    outlines: rectangles,
    build: (_, { radius, second, count }) => {
      const pitch = 100 / 3 / (count - 1) + second / 7;
      const rounded = (value: number): number => Math.round(value * 1000) / 1000;
      return Array.from({ length: count * count }, (_unused, k) =>
        discCut(rounded((k % count) * pitch), rounded(Math.floor(k / count) * pitch), rounded(radius / 3)),
      );
    },
  }),
  family({
    name: 'flush',
    about: 'rectangular cuts whose sides run along edges of a rectangle, or end at its corners',
    outlines: rectangles,
    build: (outline, { radius, second, choice }) => {
      const { maxX, maxY } = boxOf(edgesOf(outline));
      const regions = [
        boxRegion(0, 0, radius, second),
        boxRegion(maxX - radius / 2, 0, maxX, maxY),
        boxRegion(-radius, maxY, maxX + second, maxY + 5),
        boxRegion(radius / 4, -second, maxX / 2, 0),
        boxRegion(0, 0, maxX, maxY / 2),
        boxRegion(maxX / 4, maxY / 4, maxX / 2, maxY),
        boxRegion(maxX / 2, maxY / 4, maxX * 0.75, maxY),
        boxRegion(0, maxY / 2, maxX / 2, maxY * 2),
      ];
      return [choice, choice + 1, choice + 3].map(
        (k): Cut => ({ kind: 'shape', region: regions[k % 8] ?? [] }),
      );
    },
  }),
];
