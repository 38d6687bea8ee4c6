/*
 * Room: lines, text, labels, hatching and tables, as a tree of SVG nodes.
 * In: places on the sheet.
 * Out: nodes, as text or as a tree of a DOM.
 */

/** What is written of an attribute: a text as it stands, a number by its shortest digits. */
export type Written = string | number;

/** The namespace of all that a drawing has in it (W3C SVG 2). */
export const NAMESPACE = 'http://www.w3.org/2000/svg';

/**
 * An element of a drawing: a name, attributes in the order in which they were first given, and what it holds. Plain data with the
 * few shapes that drawings are made of, so that a drawing needs no DOM; `text` is the text of a file.
 */
export class SvgNode {
  readonly name: string;
  readonly attributes = new Map<string, string>();
  readonly children: (SvgNode | string)[] = [];
  readonly #holder: SvgNode | null;
  #definitions: SvgNode | null = null;

  constructor(name: string, holder: SvgNode | null = null) {
    this.name = name;
    this.#holder = holder;
  }

  /** A new element, last among what this one holds. */
  element(name: string): SvgNode {
    const node = new SvgNode(name, this);
    this.children.push(node);
    return node;
  }

  /** Gives it one attribute, or several; what is undefined is left out. */
  attr(name: string | Readonly<Record<string, Written | undefined>>, value?: Written): this {
    if (typeof name !== 'string') for (const key in name) this.attr(key, name[key]);
    else if (value !== undefined) this.attributes.set(name, String(value));
    return this;
  }

  /** A text, last among what it holds. */
  words(text: string): this {
    this.children.push(text);
    return this;
  }

  group(): SvgNode {
    return this.element('g');
  }

  path(d: string): SvgNode {
    return this.element('path').attr('d', d);
  }

  line(x1: number, y1: number, x2: number, y2: number): SvgNode {
    return this.element('line').attr({ x1, y1, x2, y2 });
  }

  rect(width: number, height: number): SvgNode {
    return this.element('rect').attr({ width, height });
  }

  /** A circle of a diameter. Its box begins at 0, 0 until a centre is given. */
  circle(diameter: number): SvgNode {
    const r = diameter / 2;
    return this.element('circle').attr({ r, cx: r, cy: r });
  }

  /** Where patterns and clips of the whole drawing are kept. */
  defs(): SvgNode {
    if (this.#holder !== null) return this.#holder.defs();
    this.#definitions ??= this.element('defs');
    return this.#definitions;
  }

  clip(): SvgNode {
    return this.defs().element('clipPath');
  }

  pattern(width: number, height: number, draw: (tile: SvgNode) => void): SvgNode {
    const tile = this.defs().element('pattern');
    draw(tile);
    return tile.attr({ x: 0, y: 0, width, height, patternUnits: 'userSpaceOnUse' });
  }

  /** Takes it out of what holds it. */
  remove(): void {
    const among = this.#holder?.children ?? [];
    among.splice(among.indexOf(this), 1);
  }

  /** The text of an SVG file with this as its root. */
  text(): string {
    return written(this, ` xmlns="${NAMESPACE}"`);
  }
}

// All elements are of one namespace, so it is named once.
function written({ name, attributes, children }: SvgNode, first = ''): string {
  let text = `<${name}${first}`;
  for (const [key, value] of attributes) text += ` ${key}="${escaped(value)}"`;
  text += '>';
  for (const child of children) text += typeof child === 'string' ? escaped(child) : written(child);
  return `${text}</${name}>`;
}

const SIGNS = /[&<>"]/;

function escaped(text: string): string {
  if (!SIGNS.test(text)) return text;
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
