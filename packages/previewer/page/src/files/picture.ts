import type { Matrix, Shape } from '../worker/outline.js';

/** What a picture draws, in millimetres or inches where it says how large it is. */
export interface Picture {
  readonly shapes: readonly Shape[];
  /** null where it has no size: its numbers are taken as they stand. */
  readonly units: 'mm' | 'inch' | null;
}

/** Of a picture, what draws nothing, with all that is in it. */
const UNSEEN = 'defs, symbol, clipPath, mask, pattern, marker, metadata, title, desc, script';

const HOLDERS = new Set(['svg', 'g']);

/** Notes of the program that drew it, under names of its own. */
const isForeign = (name: string): boolean => name.includes(':');

/** Factors to millimetres, or to inches for what is given in these. */
const SIZES: Readonly<Record<string, { factor: number; units: 'mm' | 'inch' }>> = {
  mm: { factor: 1, units: 'mm' },
  cm: { factor: 10, units: 'mm' },
  in: { factor: 1, units: 'inch' },
};

const SAME: Matrix = [1, 0, 0, 1, 0, 0];

class Unread extends Error {}

/**
 * The paths, circles, rectangles and polygons of an SVG file, or why it cannot be read, in words that go on from "It".
 * What else it draws is refused, not left out: it might be part of the outline.
 */
export function pictureIn(text: string): Picture | string {
  // The page's policy lets no style in, and an outline needs none. Read as a part of a page, since a browser puts
  // styles of its own into what it says of broken XML.
  const plain = text.replaceAll(/<style[\s\S]*?<\/style\s*>|\sstyle\s*=\s*("[^"]*"|'[^']*')/gi, '');
  const root = new DOMParser().parseFromString(plain, 'text/html').querySelector('body > svg');
  if (!(root instanceof SVGSVGElement)) return 'is no SVG picture';
  try {
    const { matrix, units } = sizeOf(root);
    const seen = [...root.querySelectorAll('*')].filter(
      (one): one is SVGElement => one instanceof SVGElement && one.closest(UNSEEN) === null,
    );
    const shapes = seen.flatMap((one) => {
      if (HOLDERS.has(one.localName) || isForeign(one.localName)) return [];
      return [{ path: pathOf(one), matrix: placeOf(one, matrix) }];
    });
    return shapes.length === 0 ? 'draws no path' : { shapes, units };
  } catch (error) {
    if (error instanceof Unread) return error.message;
    throw error;
  }
}

function placeOf(element: Element, outside: Matrix): Matrix {
  if (!(element instanceof SVGGraphicsElement)) return outside;
  const around = element.parentElement === null ? outside : placeOf(element.parentElement, outside);
  const own = element instanceof SVGSVGElement ? null : element.transform.baseVal.consolidate();
  if (own === null) return around;
  const { a, b, c, d, e, f } = own.matrix;
  return times(around, [a, b, c, d, e, f]);
}

function times([a, b, c, d, e, f]: Matrix, [p, q, r, s, t, u]: Matrix): Matrix {
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

/** How long a unit of the picture's own is. Source: W3C SVG 2, section 8.2, the equivalent transform. */
function sizeOf(root: SVGSVGElement): { matrix: Matrix; units: Picture['units'] } {
  const written = /^\s*([\d.]+(?:e[+-]?\d+)?)(mm|cm|in)\s*$/i.exec(root.getAttribute('width') ?? '');
  const size = SIZES[written?.[2]?.toLowerCase() ?? ''];
  if (written === null || size === undefined) return { matrix: SAME, units: null };
  const width = Number(written[1]) * size.factor;
  const [, , across] = (root.getAttribute('viewBox') ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  // Without a view a unit is a pixel, of which an inch has 96: CSS Values 3, section 6.2.
  const scale = across === undefined ? (size.units === 'inch' ? 1 / 96 : 25.4 / 96) : width / across;
  if (!(scale > 0 && Number.isFinite(scale))) throw new Unread('says no width that can be read');
  return { matrix: [scale, 0, 0, scale, 0, 0], units: size.units };
}

/** Path data of a shape. Source: W3C SVG 2, chapter 10, the equivalent paths. */
function pathOf(shape: SVGElement): string {
  const number = (name: string): number => {
    const value = Number(shape.getAttribute(name) ?? 0);
    if (Number.isFinite(value)) return value;
    throw new Unread(`has a ${shape.localName} whose ${name} is no plain number`);
  };
  switch (shape.localName) {
    case 'path':
      return shape.getAttribute('d') ?? '';
    case 'polygon':
      return `M${shape.getAttribute('points') ?? ''}Z`;
    case 'circle': {
      const [x, y, r] = [number('cx'), number('cy'), number('r')];
      return `M${x - r} ${y}A${r} ${r} 0 0 1 ${x + r} ${y}A${r} ${r} 0 0 1 ${x - r} ${y}Z`;
    }
    case 'rect':
      return rectangle(number, shape);
    default:
      throw new Unread(
        `holds a ${shape.localName}; leave only the outline and its holes in it, as paths, circles, rectangles or polygons`,
      );
  }
}

function rectangle(number: (name: string) => number, shape: SVGElement): string {
  const [x, y, width, height] = [number('x'), number('y'), number('width'), number('height')];
  const rx = Math.min(number(shape.hasAttribute('rx') ? 'rx' : 'ry'), width / 2);
  const ry = Math.min(number(shape.hasAttribute('ry') ? 'ry' : 'rx'), height / 2);
  const corner = (to: string): string => `a${rx} ${ry} 0 0 1 ${to}`;
  return [
    `M${x + rx} ${y}H${x + width - rx}${corner(`${rx} ${ry}`)}`,
    `V${y + height - ry}${corner(`${-rx} ${ry}`)}`,
    `H${x + rx}${corner(`${-rx} ${-ry}`)}`,
    `V${y + ry}${corner(`${rx} ${-ry}`)}Z`,
  ].join('');
}
