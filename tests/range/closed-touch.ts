import { rootsOf, type Steps } from './closed-roots.js';
import type { ClosedScene } from './closed-scene.js';
import { isOn, place, type Shape } from './closed-shapes.js';
import { type Way, waysOf } from './closed-ways.js';

/** A value at which the moved cut touches something by a formula that shares no code with the library. */
export interface Touch {
  readonly at: number;
  /** Whether it touches as it is, or once its rims are moved by the resolution. */
  readonly kind: 'touch' | 'graze';
  /** How far apart, or how far past each other, what touches is at another value. */
  readonly apartAt: (v: number) => number;
}

/** All values at which the cut touches what stands still, or passes a corner of it. */
export function touchRoots(scene: ClosedScene, steps: Steps): Touch[] {
  const { part, still, own, grown } = scene;
  const all = (moving: readonly Shape[], others: readonly Shape[], kind: Touch['kind']) =>
    moving.flatMap((m) => others.flatMap((s) => touching(scene, m, s, steps, kind)));
  const points = [...still.corners.map(({ at }) => at), ...still.places].map(place);
  const ownPoints = [...own.corners.map(({ at }) => at), ...own.places].map(place);
  const edges = [...part.shapes, ...part.corners.map(({ at }) => place(at))];
  return [
    ...all(own.shapes, [...still.shapes, ...points], 'touch'),
    ...all(ownPoints, still.shapes, 'touch'),
    ...grown.flatMap(({ shapes }) => all(shapes, edges, 'graze')),
  ];
}

function touching(scene: ClosedScene, m: Shape, s: Shape, steps: Steps, kind: Touch['kind']): Touch[] {
  const { moved, pace, slack } = scene;
  return waysOf(m, s).flatMap((way) => {
    const gap = (v: number) => way.gap(moved(m, v), s);
    return rootsOf(gap, steps, slack, pace)
      .filter((v) => doesTouch(way, moved(m, v), s, slack))
      .map((at) => ({ at, kind, apartAt: (v) => Math.abs(gap(v)) }));
  });
}

function doesTouch({ feet }: Way, m: Shape, s: Shape, slack: number): boolean {
  const pairs = feet(m, s);
  return pairs.length === 0 || pairs.some(([p, q]) => isOn(m, p, slack) && isOn(s, q, slack));
}
