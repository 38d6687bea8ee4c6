import type { ArcEdge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import { anchorOn, fromAnchor, stepped } from './anchors.js';
import { type Cut, cutRegion } from './cut-case.js';
import { type Family, family } from './family.js';
import { arcOutlines } from './outlines.js';
import { edgesOf } from './probe.js';

function disc(center: Point, radius: number): Cut {
  return { kind: 'disc', center, radius };
}

function ring(center: Point, outer: number, inner: number): Cut {
  return { kind: 'ring', center, outer, inner };
}

/** Families in which a circle is cut again: the same one, a neighbour, or one a little off. */
export const repeatFamilies: readonly Family[] = [
  family({
    name: 'recut',
    about: 'the same bore two or three times, also written as three arcs',
    build: (outline, { edge, along, radius, second, choice }) => {
      const center = fromAnchor(anchorOn(outline, edge, along), second / 2);
      const again: Cut = {
        kind: 'shape',
        region: cutRegion(disc(center, radius), { arcs: 3, start: 0.1 + choice / 5 }),
      };
      return choice & 1 ? [disc(center, radius), again] : [disc(center, radius), disc(center, radius), again];
    },
  }),
  family({
    name: 'recut-outline',
    about: 'a bore on the very circle of an arc of the outline',
    outlines: arcOutlines,
    build: (outline, { edge, choice, second }) => {
      const arcs = edgesOf(outline).filter((e): e is ArcEdge => e.kind === 'arc');
      const arc = arcs[edge % arcs.length] as ArcEdge;
      if (choice & 1) return [disc(arc.center, arc.radius)];
      return [ring(arc.center, arc.radius + second / 2, arc.radius)];
    },
  }),
  family({
    name: 'shifted-0.005',
    about: 'the same bore moved by 0.005',
    build: (outline, { edge, along, radius, second, direction }) => {
      const center = fromAnchor(anchorOn(outline, edge, along), second / 2);
      return [disc(center, radius), disc(stepped(center, direction, 0.005), radius)];
    },
  }),
  family({
    name: 'adjacent-rings',
    about: 'concentric rings that share circles, and now and then the disc inside',
    build: (outline, { edge, along, radius, second, count, choice }) => {
      const center = fromAnchor(anchorOn(outline, edge, along), choice - 3);
      const step = second / 4;
      const rings = Array.from({ length: count }, (_, k) =>
        ring(center, radius / 2 + (k + 1) * step, radius / 2 + k * step),
      );
      return choice & 1 ? rings : [...rings, disc(center, radius / 2)];
    },
  }),
  family({
    name: 'nested-rings',
    about: 'concentric rings with metal between them',
    build: (outline, { edge, along, radius, second, count, choice }) => {
      const center = fromAnchor(anchorOn(outline, edge, along), choice * 2 - 5);
      const step = second / 4;
      return Array.from({ length: count }, (_, k) =>
        ring(center, radius / 3 + (2 * k + 1) * step, radius / 3 + 2 * k * step),
      );
    },
  }),
  family({
    name: 'rough-then-finish',
    about: 'a bore stepped in from outside, then opened out to size, in turn',
    build: (outline, { edge, along, radius, second, count }) => {
      const anchor = anchorOn(outline, edge, along);
      const depth = second / 3;
      const passes = 2 * count;
      const stepsIn = Array.from({ length: passes }, (_, k) =>
        disc(fromAnchor(anchor, -radius + ((radius + depth) * (k + 1)) / passes), radius),
      );
      const opened = Array.from({ length: count }, (_, k) =>
        disc(fromAnchor(anchor, depth), radius + (k + 1) * 0.25),
      );
      return [...stepsIn, ...opened];
    },
  }),
  family({
    name: 'equal-overlap',
    about: "equal discs through each other's centres",
    build: (outline, { edge, along, radius, second, direction }) => {
      const center = fromAnchor(anchorOn(outline, edge, along), second / 3);
      const right = stepped(center, direction, radius);
      return [disc(center, radius), disc(right, radius), disc(stepped(right, direction, radius), radius)];
    },
  }),
  family({
    name: 'bore-in-its-hole',
    about: "a ring, then the same ring's kerf and core again as one disc",
    build: (outline, { edge, along, radius, second }) => {
      const center = fromAnchor(anchorOn(outline, edge, along), second / 2);
      return [ring(center, radius + 2, radius), disc(center, radius + 2), disc(center, radius)];
    },
  }),
];
