import { arcEdge, type Edge, type Loop, lineEdge, offsetPath, type Point, type Region } from '@edgebite/core';

/** A place at an angle and a distance from another. */
export function polar(from: Point, angle: number, distance: number): Point {
  return { x: from.x + Math.cos(angle) * distance, y: from.y + Math.sin(angle) * distance };
}

/** A polygon; corners that fall together are left out. */
export function polygon(corners: readonly Point[]): Region {
  const apart = corners.filter((p, k) => {
    const q = corners[(k + 1) % corners.length] as Point;
    return p.x !== q.x || p.y !== q.y;
  });
  return [{ outer: apart.map((a, k) => lineEdge(a, apart[(k + 1) % apart.length] as Point)), holes: [] }];
}

/** A rectangle round a middle, turned by an angle. */
export function box(middle: Point, width: number, height: number, angle = 0): Region {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const corner = (u: number, v: number): Point => ({
    x: middle.x + (u * width * cos - v * height * sin) / 2,
    y: middle.y + (u * width * sin + v * height * cos) / 2,
  });
  return polygon([corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]);
}

/** A slot with round ends. */
export function slot(a: Point, b: Point, radius: number): Region {
  return offsetPath([lineEdge(a, b)], radius);
}

/** A rectangle with round corners; straight with the axes. */
export function rounded(middle: Point, width: number, height: number, radius: number): Region {
  const [w, h] = [width / 2, height / 2];
  const [x, y] = [middle.x, middle.y];
  const at = (px: number, py: number): Point => ({ x: x + px, y: y + py });
  const outer: Loop = [
    lineEdge(at(-w + radius, -h), at(w - radius, -h)),
    arcEdge(at(w - radius, -h), at(w, -h + radius), at(w - radius, -h + radius), true),
    lineEdge(at(w, -h + radius), at(w, h - radius)),
    arcEdge(at(w, h - radius), at(w - radius, h), at(w - radius, h - radius), true),
    lineEdge(at(w - radius, h), at(-w + radius, h)),
    arcEdge(at(-w + radius, h), at(-w, h - radius), at(-w + radius, h - radius), true),
    lineEdge(at(-w, h - radius), at(-w, -h + radius)),
    arcEdge(at(-w, -h + radius), at(-w + radius, -h), at(-w + radius, -h + radius), true),
  ];
  return [{ outer, holes: [] }];
}

/** A sector of a ring, all of arcs and two radial lines. */
export function sector(middle: Point, inner: number, outer: number, from: number, to: number): Region {
  const [a, b] = [polar(middle, from, outer), polar(middle, to, outer)];
  const [c, d] = [polar(middle, to, inner), polar(middle, from, inner)];
  return [
    {
      outer: [arcEdge(a, b, middle, true), lineEdge(b, c), arcEdge(c, d, middle, false), lineEdge(d, a)],
      holes: [],
    },
  ];
}

/** A rectangle one side of which is bowed out in many straight steps along a circle. */
export function bowed(width: number, height: number, bow: number, steps: number): Region {
  const radius = (width * width) / (8 * bow) + bow / 2;
  const half = Math.asin(width / 2 / radius);
  const center = { x: width / 2, y: height + bow - radius };
  const arc = Array.from({ length: steps + 1 }, (_, k) =>
    polar(center, Math.PI / 2 - half + (2 * half * k) / steps, radius),
  );
  return polygon([{ x: 0, y: 0 }, { x: width, y: 0 }, ...arc]);
}

/** A part of two arcs that meet in two points: a lens. */
export function lens(a: Point, b: Point, bulge: number): Region {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = Math.hypot(dx, dy);
  const radius = (length * length) / (8 * bulge) + bulge / 2;
  const away = (radius - bulge) / length;
  const [mx, my] = [(a.x + b.x) / 2, (a.y + b.y) / 2];
  const left = { x: mx - dy * away, y: my + dx * away };
  const right = { x: mx + dy * away, y: my - dx * away };
  const outer: Edge[] = [arcEdge(a, b, left, true), arcEdge(b, a, right, true)];
  return [{ outer, holes: [] }];
}
