import { SvgNode } from './node.js';
import { clean } from './text.js';
import { THEMES, type Theme } from './theme.js';

/** Sans serif faces that most machines have; nothing is fetched. */
const FACES = 'Arial, Helvetica, sans-serif';

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
