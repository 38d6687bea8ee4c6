import type { Point, Vector } from '../geometry/point.js';

/** The line of a face, and which way the metal lies. */
export interface FaceLine {
  readonly source: string;
  readonly at: Point;
  /** Unit vector into the metal. */
  readonly into: Vector;
}

/** One reading that can be taken of a hollow arc, and what it is taken against. */
export type Way =
  | {
      /** From a face down to the innermost place of the arc. */
      readonly kind: 'depth';
      readonly face: FaceLine;
    }
  | {
      /** What is left between the arc and a face, straight across the metal. */
      readonly kind: 'left';
      readonly face: FaceLine;
    }
  | {
      /** From a face down to pins that lie in the arc; or how far they stand out of it. */
      readonly kind: 'to pins' | 'pins out';
      readonly face: FaceLine;
      readonly pin: number;
      readonly pins: 1 | 2;
      /** Whether they are balls, which touch the arc at one height. */
      readonly ball?: boolean;
    }
  | {
      /** Over pins that lie in the arc, to the face across the metal. */
      readonly kind: 'over pins';
      readonly face: FaceLine;
      readonly pin: number;
      readonly pins: 1 | 2;
      readonly ball?: boolean;
    }
  | {
      /** Across the arc, along a face, so far under it: 0 is from horn to horn. */
      readonly kind: 'opening';
      readonly face: FaceLine;
      readonly under: number;
    }
  | {
      /** Across the arc at its widest, where it goes round to both sides of its centre: the diameter, wherever that lies. */
      readonly kind: 'across';
      /** Unit vector along which it is read. */
      readonly along: Vector;
    }
  | {
      /** How deep the arc is in the middle of a chord. */
      readonly kind: 'height';
      readonly chord: number;
    }
  | {
      /** What is left between the arc and a round of the outline, straight through the middles of both. */
      readonly kind: 'round';
      readonly source: string;
      readonly center: Point;
      readonly radius: number;
    }
  | {
      /** The wall to the arc of another cut. */
      readonly kind: 'wall';
      readonly cut: string;
      readonly center: Point;
      readonly radius: number;
    };

/** A circle: the arc as it is, as it should be, or as readings say that it is. */
export interface Circle {
  readonly center: Point;
  readonly radius: number;
}

/** How much a reading grows as the radius does, and as the centre moves along each axis. */
export interface Slopes {
  readonly radius: number;
  readonly place: Vector;
}

/**
 * What a way reads of an arc, in the unit of its lengths; NaN where it cannot be taken of such an arc: a chord wider than
 * the circle, pins that do not fit in it.
 *
 * Formulas: depth and what is left are the distance of the centre from the face, more or less the radius; an opening is the chord
 * c = 2 sqrt(R² - d²) at a distance d from the centre, and the height over a chord h = R - sqrt(R² - c²/4) (Machinery's
 * Handbook, 31st ed., p. 83, segments of a circle); of two pins of radius r that touch each other and the arc, the centres
 * lie at R - r from its centre and r from its axis, so that sin(phi) = r / (R - r) (own derivation, docs/maths.md).
 */
export function readingOf(way: Way, { center, radius }: Circle): number {
  switch (way.kind) {
    case 'depth':
      return insideOf(way.face, center) + radius;
    case 'left':
      return insideOf(way.face, center) - radius;
    case 'to pins':
      return insideOf(way.face, center) + pinCentre(way, radius) - way.pin / 2;
    case 'pins out':
      return way.pin / 2 - insideOf(way.face, center) - pinCentre(way, radius);
    case 'over pins':
      return insideOf(way.face, center) - pinCentre(way, radius) + way.pin / 2;
    case 'opening':
      return 2 * Math.sqrt(radius ** 2 - (insideOf(way.face, center) - way.under) ** 2);
    case 'across':
      return 2 * radius;
    case 'height':
      return radius - Math.sqrt(radius ** 2 - (way.chord / 2) ** 2);
    case 'round':
      return Math.hypot(way.center.x - center.x, way.center.y - center.y) - radius + way.radius;
    case 'wall':
      return Math.hypot(way.center.x - center.x, way.center.y - center.y) - radius - way.radius;
  }
}

/** How a reading depends on the arc. */
export function slopesOf(way: Way, circle: Circle): Slopes {
  const { center, radius } = circle;
  switch (way.kind) {
    case 'depth':
      return { radius: 1, place: way.face.into };
    case 'left':
      return { radius: -1, place: way.face.into };
    case 'to pins':
      return { radius: pinSlope(way, radius), place: way.face.into };
    case 'pins out':
      return {
        radius: -pinSlope(way, radius),
        place: { dx: -way.face.into.dx, dy: -way.face.into.dy },
      };
    case 'over pins':
      return { radius: -pinSlope(way, radius), place: way.face.into };
    case 'opening': {
      const d = insideOf(way.face, center) - way.under;
      const half = readingOf(way, circle) / 2;
      const by = (-2 * d) / half;
      return { radius: (2 * radius) / half, place: { dx: by * way.face.into.dx, dy: by * way.face.into.dy } };
    }
    case 'across':
      return { radius: 2, place: { dx: 0, dy: 0 } };
    case 'height':
      return { radius: 1 - radius / Math.sqrt(radius ** 2 - (way.chord / 2) ** 2), place: { dx: 0, dy: 0 } };
    case 'round':
    case 'wall': {
      const [dx, dy] = [way.center.x - center.x, way.center.y - center.y];
      const length = Math.hypot(dx, dy);
      return { radius: -1, place: { dx: -dx / length, dy: -dy / length } };
    }
  }
}

/** How far a place lies inside the line of a face, towards the metal. */
export function insideOf({ at, into }: Pick<FaceLine, 'at' | 'into'>, p: Point): number {
  return (p.x - at.x) * into.dx + (p.y - at.y) * into.dy;
}

/** How far the centres of pins that lie in an arc are from its centre, towards its innermost place. */
function pinCentre({ pin, pins }: { readonly pin: number; readonly pins: 1 | 2 }, radius: number): number {
  const room = radius - pin / 2;
  if (room < 0) return Number.NaN;
  return pins === 1 ? room : Math.sqrt(room ** 2 - (pin / 2) ** 2);
}

/** How fast they go in as the radius grows: 1 of one pin, 1 / cos(phi) of two. */
function pinSlope(way: { readonly pin: number; readonly pins: 1 | 2 }, radius: number): number {
  return way.pins === 1 ? 1 : (radius - way.pin / 2) / pinCentre(way, radius);
}
