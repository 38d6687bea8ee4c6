import type { Point } from '@edgebite/core';
import { rootsOf, type Steps } from './closed-roots.js';
import type { ClosedScene } from './closed-scene.js';
import { far, height, isOn, place, type Shape } from './closed-shapes.js';
import { type Feet, type Way, waysOf } from './closed-ways.js';

/*
 * A web is told where a disc between two edges touches both and no third one comes into it. So something changes where
 * a third one touches that disc, where it cuts off a foot of it, and where a foot comes to the end of its edge.
 */

/** Steps to both sides of a value in which roots are looked for. */
const STEPS_ASIDE = 3;

/**
 * Where a distance changes more slowly than this, it is rounding that says where it is 0; and a third boundary that only
 * just touches makes no web come or go.
 */
const FLAT = 1e-5;

/** A shape, still or carried along. */
type Carried = (v: number) => Shape;

interface Neck {
  readonly m: Carried;
  readonly s: Carried;
  readonly feet: (v: number) => Feet | undefined;
}

/** A value at which a web can come or go. */
export interface WebEnd {
  readonly at: number;
  /** How far what makes it end is away, or has gone past, at another value. */
  readonly apartAt: (v: number) => number;
}

/** Values within some steps of another one at which a web under the limit can come or go. */
export function webRoots(scene: ClosedScene, limit: number, near: number, { step }: Steps): WebEnd[] {
  const steps = { from: near - STEPS_ASIDE * step, step, count: 2 * STEPS_ASIDE };
  const own = [...scene.own.shapes, ...scene.own.corners.map(({ at }) => place(at))].map(
    (shape): Carried =>
      (v) =>
        scene.moved(shape, v),
  );
  const still = [...scene.still.shapes, ...scene.still.corners.map(({ at }) => place(at))].map(
    (shape): Carried =>
      () =>
        shape,
  );
  const reach = limit + 2 * STEPS_ASIDE * step;
  const all = [...own, ...still];
  const necks = all.flatMap((m, k) => all.slice(k + 1).flatMap((s) => necksOf(m, s, near, reach)));
  return necks.flatMap((neck) => {
    const moving = [neck.m, neck.s].filter((side) => own.includes(side)).length;
    // Three that keep still towards each other have no such value.
    const others = [own, all, still][moving] as readonly Carried[];
    // An end of a side, or an edge that ends in a side, is always as near as the foot there.
    const isPartOf = (third: Carried) =>
      [neck.m, neck.s].some((side) => side === third || isEndOf(side(near), third(near), scene.slack));
    const thirds = others.filter((third) => !isPartOf(third));
    return thirds.flatMap((third) =>
      functionsOf(neck, third, near).flatMap((f) =>
        rootsOf(f, steps, scene.slack, Number.POSITIVE_INFINITY)
          .filter((at) => Math.abs(f(at + scene.slack) - f(at - scene.slack)) > 2 * FLAT * scene.slack)
          .map((at) => ({ at, apartAt: (v) => Math.abs(f(v)) })),
      ),
    );
  });
}

function isEndOf(one: Shape, other: Shape, slack: number): boolean {
  if (one.kind === 'place') return Math.abs(sideOf(other, one.at)) <= slack;
  return other.kind === 'place' && Math.abs(sideOf(one, other.at)) <= slack;
}

/** Discs between two shapes that are no wider than the limit near a value. */
function necksOf(m: Carried, s: Carried, near: number, reach: number): Neck[] {
  const [there, other] = [m(near), s(near)];
  return waysOf(there, other).flatMap((way: Way) => {
    if (!(Math.abs(way.gap(there, other)) <= reach)) return [];
    return way.feet(there, other).flatMap(([p, q], k): Neck[] => {
      if (!isOn(there, p, reach) || !isOn(other, q, reach)) return [];
      return [{ m, s, feet: (v) => way.feet(m(v), s(v))[k] }];
    });
  });
}

function functionsOf({ feet }: Neck, third: Carried, near: number): ((v: number) => number)[] {
  const from = (f: (feet: Feet, third: Shape) => number) => (v: number) => {
    const pair = feet(v);
    return pair === undefined ? Number.NaN : f(pair, third(v));
  };
  const disc = from(
    ([p, q], shape) => away(shape, { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 }) - far(p, q) / 2,
  );
  // A foot at a corner is at the end of its edge: see `slipRoots`.
  if (third(near).kind === 'place') return [disc];
  return [disc, from(([p], shape) => sideOf(shape, p)), from(([, q], shape) => sideOf(shape, q))];
}

/** Distance of a place from a shape, its ends left aside: these are shapes as well. */
function away(shape: Shape, p: Point): number {
  return Math.abs(sideOf(shape, p));
}

/** Distance with a sign: to the left of a line, outside a circle. */
function sideOf(shape: Shape, p: Point): number {
  if (shape.kind === 'line') return height(shape, p);
  return shape.kind === 'circle' ? far(shape.center, p) - shape.radius : far(shape.at, p);
}
