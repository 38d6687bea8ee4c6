import type { Box, Place, SketchCut } from '../worker/sketch.js';

/** How places of the part come to the screen: y is up in the part and down on the screen. */
export interface View {
  /** Pixels for one unit of the part. */
  readonly scale: number;
  /** Where the part's zero lies on the screen, in pixels. */
  readonly zero: Place;
}

/** Size of the drawing on the screen in pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room round the part for marks and their numbers, pixels. */
const MARGIN = 46;

/** On a narrow screen the room is this share of its width at most. */
const NARROW = 12;

/** A cut beside the part is shown up to this share of the part's longer side. */
const OUTSTAND = 0.3;

/** The view in which a box fits the drawing, in its middle. */
export function fitted([minX, minY, maxX, maxY]: Box, { width, height }: Size): View {
  const margin = Math.min(MARGIN, width / NARROW, height / NARROW);
  const scale = Math.min(
    (width - 2 * margin) / Math.max(maxX - minX, Number.MIN_VALUE),
    (height - 2 * margin) / Math.max(maxY - minY, Number.MIN_VALUE),
  );
  return {
    scale,
    zero: [width / 2 - ((minX + maxX) / 2) * scale, height / 2 + ((minY + maxY) / 2) * scale],
  };
}

/** What the drawing shows: the part, and of the cuts beside it what is not too far off. */
export function shownBox(part: Box, cuts: readonly SketchCut[]): Box {
  const reach = OUTSTAND * Math.max(part[2] - part[0], part[3] - part[1]);
  return cuts.reduce<Box>((box, { center, diameter }) => {
    if (center === null) return box;
    const [x, y] = center;
    const r = diameter / 2;
    if (x + r < part[0] - reach || x - r > part[2] + reach) return box;
    if (y + r < part[1] - reach || y - r > part[3] + reach) return box;
    return [
      Math.min(box[0], Math.max(x - r, part[0] - reach)),
      Math.min(box[1], Math.max(y - r, part[1] - reach)),
      Math.max(box[2], Math.min(x + r, part[2] + reach)),
      Math.max(box[3], Math.min(y + r, part[3] + reach)),
    ];
  }, part);
}

/** A place of the part on the screen. */
export function onScreen({ scale, zero }: View, [x, y]: Place): Place {
  return [zero[0] + x * scale, zero[1] - y * scale];
}

/** A place of the screen in the part. */
export function inPart({ scale, zero }: View, [x, y]: Place): Place {
  return [(x - zero[0]) / scale, (zero[1] - y) / scale];
}

/** The view as an SVG transform. */
export function matrixOf({ scale, zero }: View): string {
  return `matrix(${scale} 0 0 ${-scale} ${zero[0]} ${zero[1]})`;
}

/** The same view with one place at another place of the screen, so many times as large. */
export function enlarged(view: View, place: Place, at: Place, times: number): View {
  const scale = view.scale * times;
  return { scale, zero: [at[0] - place[0] * scale, at[1] + place[1] * scale] };
}
