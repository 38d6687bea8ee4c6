import { describe, expect, it } from 'vitest';
import { type Column, tableText } from './table.js';

interface Row {
  readonly id: string;
  readonly between: string;
  readonly size: string;
}

const columns: readonly Column<Row>[] = [
  { head: 'web', align: 'left', cell: ({ id }) => id },
  { head: 'between', align: 'left', cell: ({ between }) => between, gives: true },
  { head: 'size', align: 'right', cell: ({ size }) => size },
];

/** Names of five letters, as many as come to a width of six times as many less one. */
const names = (count: number) => Array.from({ length: count }, () => 'abcde').join(' ');

describe('a table', () => {
  it('stands in columns, numbers at the right', () => {
    expect(
      tableText(columns, [
        { id: 'W1', between: 'cut a', size: '1.5' },
        { id: 'W12', between: 'the right end', size: '10.25' },
      ]),
    ).toBe('web  between         size\nW1   cut a            1.5\nW12  the right end  10.25');
  });

  it('breaks what gives where it would be wider than a page, and not before', () => {
    // 3 + 2 + 69 + 2 + 4 characters.
    const full = [{ id: 'W1', between: `${names(11)} abc`, size: '1.50' }];
    expect(tableText(columns, full).split('\n')).toHaveLength(2);
    const over = [...full, { id: 'W2', between: `${names(11)} abcdef`, size: '1.50' }];
    const lines = tableText(columns, over).split('\n');
    expect(lines).toHaveLength(4);
    expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(80);
    expect(lines[3]).toBe('     abcdef');
  });

  it('leaves a word whole that is wider than all there is', () => {
    const word = 'a'.repeat(90);
    expect(tableText(columns, [{ id: 'W1', between: word, size: '1' }])).toContain(word);
  });
});
