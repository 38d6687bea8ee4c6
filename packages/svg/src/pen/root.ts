import { SvgNode } from './node.js';
import { clean } from './text.js';
import { THEMES, type Theme } from './theme.js';

/** What an id may start with, so that references to it need no quoting. */
const ID_PREFIX = /^[A-Za-z][A-Za-z0-9_-]*$/;

/** Sans serif faces that most machines have; nothing is fetched. */
const FACES = 'Arial, Helvetica, sans-serif';

/**
 * Throws if ids cannot begin so.
 * @throws RangeError if a prefix is not a letter followed by letters, digits, `-` and `_`.
 */
export function checkIdPrefix(name: string, prefix: string): void {
  if (ID_PREFIX.test(prefix)) return;
  throw new RangeError(
    `${name}: idPrefix is ${JSON.stringify(prefix)}; it must be a letter, then letters, digits, - or _`,
  );
}

/** The smallest and the largest picture for a screen. */
const LEAST = 40;
const MOST = 2000;

/**
 * Throws if a picture for a screen cannot be so large.
 * @throws RangeError if a side is not from 40 to 2,000.
 */
export function checkSize(name: string, size: readonly [number, number]): void {
  if (size.every((side) => side >= LEAST && side <= MOST)) return;
  throw new RangeError(`${name}: size is ${size.join(' by ')}; each side must be from ${LEAST} to ${MOST}`);
}

/**
 * An empty drawing with its title and description for those who do not see it. One unit of it is a millimetre of the
 * sheet, so it prints at its true scale.
 */
export function rootOf(
  [width, height]: readonly [number, number],
  words: { readonly title: string; readonly description: string },
  prefix: string,
  theme: Theme = THEMES.mono,
): SvgNode {
  const root = new SvgNode('svg').attr({
    width: `${width}mm`,
    height: `${height}mm`,
    viewBox: `0 0 ${width} ${height}`,
    role: 'img',
    'aria-labelledby': `${prefix}title ${prefix}description`,
    'font-family': FACES,
    color: theme.ink,
    fill: theme.ink,
    // Of every line in it, unless it says otherwise.
    'stroke-linecap': 'round',
    'stroke-linejoin': 'round',
  });
  root.element('title').attr('id', `${prefix}title`).words(clean(words.title));
  root.element('desc').attr('id', `${prefix}description`).words(clean(words.description));
  return root;
}
