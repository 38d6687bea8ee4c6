import { describe, expect, it } from 'vitest';
import * as limits from '../../packages/core/src/document/limits.js';
import { textOf } from './pages.js';

const text = textOf('docs/limits.md');

/** What the page says after the words of a row. */
const said = (row: string): string | undefined =>
  text.match(new RegExp(`^\\| ${row} \\| (\\S+)`, 'm'))?.[1]?.replaceAll(',', '');

describe('docs/limits.md says what the code holds to', () => {
  it.each([
    ['characters of a job', limits.MAX_TEXT],
    ['nesting', limits.MAX_DEPTH],
    ['cuts', limits.MAX_CUTS],
    ['places where edges of cuts cross', limits.MAX_CROSSINGS],
    ['edges of an outline, a hole or a path', limits.MAX_EDGES],
    ['repeats', limits.MAX_REPEATS],
    ['parts of a batch', limits.MAX_BATCH],
    ['targets of all parts of a batch', limits.MAX_BATCH_TARGETS],
    ['holes', limits.MAX_HOLES],
    ['characters of path data or well-known text', limits.MAX_DRAWING],
    ['characters of a name, an id or a material', limits.MAX_NAME],
    ['setups', limits.MAX_SETUPS],
    ['actions of an axis, blocks in a stack', limits.MAX_LINKS],
    ['jaws, stops, parallels and clamps', limits.MAX_KEEP_OUTS],
    ['largest coordinate or size', limits.MAX_LENGTH],
    ['smallest size', limits.MIN_LENGTH],
    ['distance of a part from zero', limits.FARTHEST],
    ['smallest cut or hole', limits.FINEST_SHARE],
  ])('%s: %d', (row, limit) => {
    expect(Number(said(row))).toBe(limit);
  });
});
