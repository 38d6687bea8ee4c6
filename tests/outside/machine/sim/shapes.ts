/*
 * Shapes as jobs write them, as closed chains of lines and arcs: written for this check alone, from what the job
 * format says of each, so that nothing of the library's own geometry takes part.
 */

export type Place = readonly [number, number];

export type Edge =
  | { readonly kind: 'line'; readonly a: Place; readonly b: Place }
  | {
      readonly kind: 'arc';
      readonly a: Place;
      readonly b: Place;
      readonly center: Place;
      readonly ccw: boolean;
    };

/** A shape of a job: one of the keys that the format has. */
export interface ShapeDocument {
  readonly rectangle?: Place;
  readonly corner?: number;
  readonly circle?: number;
  readonly slot?: Place;
  readonly angle?: number;
  readonly at?: Place;
  readonly edges?: readonly Edge[];
  readonly holes?: readonly ShapeDocument[];
}

/** A shape's outer loop as edges. */
export function edgesOf(shape: ShapeDocument): Edge[] {
  const at = shape.at ?? [0, 0];
  if (shape.edges !== undefined) return [...shape.edges];
  if (shape.rectangle !== undefined) return rectangle(shape.rectangle, at, shape.corner ?? 0);
  if (shape.circle !== undefined) return circle(at, shape.circle / 2);
  if (shape.slot !== undefined) return slot(shape.slot, at, shape.angle ?? 0);
  throw new Error('edgesOf: a shape that this check does not read');
}

/** All loops of a shape: the outer one, then its holes. Which way they run does not matter here. */
export function loopsOf(shape: ShapeDocument): Edge[][] {
  return [edgesOf(shape), ...(shape.holes ?? []).map(edgesOf)];
}

function rectangle([w, h]: Place, [x, y]: Place, r: number): Edge[] {
  const line = (a: Place, b: Place): Edge => ({ kind: 'line', a, b });
  const [right, back] = [x + w, y + h];
  if (r === 0) {
    const corners: Place[] = [
      [x, y],
      [right, y],
      [right, back],
      [x, back],
    ];
    return corners.map((a, k) => line(a, corners[(k + 1) % 4] as Place));
  }
  const arc = (a: Place, b: Place, center: Place): Edge => ({ kind: 'arc', a, b, center, ccw: true });
  return [
    line([x + r, y], [right - r, y]),
    arc([right - r, y], [right, y + r], [right - r, y + r]),
    line([right, y + r], [right, back - r]),
    arc([right, back - r], [right - r, back], [right - r, back - r]),
    line([right - r, back], [x + r, back]),
    arc([x + r, back], [x, back - r], [x + r, back - r]),
    line([x, back - r], [x, y + r]),
    arc([x, y + r], [x + r, y], [x + r, y + r]),
  ].filter((edge) => edge.a[0] !== edge.b[0] || edge.a[1] !== edge.b[1]);
}

function circle(center: Place, r: number): Edge[] {
  const [x, y] = center;
  return [
    { kind: 'arc', a: [x + r, y], b: [x - r, y], center, ccw: true },
    { kind: 'arc', a: [x - r, y], b: [x + r, y], center, ccw: true },
  ];
}

function slot([length, width]: Place, [x, y]: Place, angle: number): Edge[] {
  const r = width / 2;
  const half = length / 2 - r;
  const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
  const put = (u: number, v: number): Place => [x + u * cos - v * sin, y + u * sin + v * cos];
  return [
    { kind: 'line', a: put(-half, -r), b: put(half, -r) },
    { kind: 'arc', a: put(half, -r), b: put(half, r), center: put(half, 0), ccw: true },
    { kind: 'line', a: put(half, r), b: put(-half, r) },
    { kind: 'arc', a: put(-half, r), b: put(-half, -r), center: put(-half, 0), ccw: true },
  ];
}
