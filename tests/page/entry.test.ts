import { describe, expect, it } from 'vitest';
import { entryOf, numberOf } from '../../packages/previewer/page/src/form/entry.js';

describe('a typed number', () => {
  it.each([
    ['12.5', 12.5],
    ['12,5', 12.5],
    [' .5 ', 0.5],
    ['12.', 12],
    ['-0', 0],
    ['+3', 3],
    ['1e3', 1000],
    ['3/8', 0.375],
    ['1 3/8', 1.375],
    ['-1 1/4', -1.25],
  ])('%j is %d', (typed, value) => {
    expect(numberOf(typed)).toBe(value);
  });

  it.each([
    '',
    '.',
    'abc',
    '1,000.5',
    '1 2',
    '1/0',
    '0/0',
    '1e999',
    'Infinity',
    'NaN',
    '0x10',
    '--1',
    '1/2/3',
  ])('%j is none', (typed) => {
    expect(numberOf(typed)).toBeNull();
  });

  it('goes into the job as what it is, and other text as text, to be named as a fault', () => {
    expect(entryOf('2,50', false)).toBe(2.5);
    expect(entryOf('through', true)).toBe('through');
    expect(entryOf(' ', true)).toBeUndefined();
    expect(entryOf(' ', false)).toBe('');
  });
});
