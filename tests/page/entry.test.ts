import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { entryOf, isPlain, numberOf } from '../../packages/previewer/page/src/form/entry.js';
import { runs } from '../tools/runs.js';

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
    // As they are written in shops; common practice, no source.
    ['1-1/8', 1.125],
    ['-1-1/4', -1.25],
    ['1 1/2', 1.5],
    ['120-18', 102],
    ['120 - 1/8', 119.875],
    ['12.5-3/8', 12.125],
    ['120-18/2', 111],
    ['48/2', 24],
    ['48 / 2', 24],
    ['3*12,5+2', 39.5],
    ['2+3*4', 14],
    ['90-3-2', 85],
    ['0.1+0.2', 0.3],
    ['10/3', 10 / 3],
    ['1*10/3', 3.333333333],
    ['12,5 × 2', 25],
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
    '120-',
    '+',
    '2*',
    '2**3',
    '3-1/0',
    '1.5"',
    '12 mm',
    '(1+2)',
  ])('%j is none', (typed) => {
    expect(numberOf(typed)).toBeNull();
  });

  // 25.4 mm in an inch, by definition.
  it.each<[string, 'mm' | 'inch', number | null]>([
    ['1.5"', 'mm', 38.1],
    ['1-1/8"', 'mm', 28.575],
    ['3/8 in', 'mm', 9.525],
    ["2''", 'mm', 50.8],
    ['1.5"', 'inch', 1.5],
    ['38.1mm', 'inch', 1.5],
    ['38.1 mm', 'mm', 38.1],
    ['1"+1mm', 'mm', 26.4],
    ['1 inch - 1/8', 'inch', 0.875],
    ['12 m', 'mm', null],
    ['12 inmm', 'mm', null],
  ])('%j in a job in %s is %s', (typed, unit, value) => {
    expect(numberOf(typed, unit)).toBe(value);
  });

  it('is never anything else than a number of finite size, or none', () => {
    const letters = fc.constantFrom(...'0123456789.,/-+* x"e'.split(''), ' 1/2', 'mm', 'in');
    fc.assert(
      fc.property(fc.array(letters, { maxLength: 12 }), (typed) => {
        const value = numberOf(typed.join(''), 'mm');
        expect(value === null || Number.isFinite(value)).toBe(true);
        // What is a plain number is that number.
        if (isPlain(typed.join('')) && value !== null) {
          expect(value).toBe(Number(typed.join('').replace(',', '.')) + 0);
        }
      }),
      { numRuns: runs(2000) },
    );
  });

  it('goes into the job as what it is, and other text as text, to be named as a fault', () => {
    expect(entryOf('2,50', false)).toBe(2.5);
    expect(entryOf('through', true)).toBe('through');
    expect(entryOf(' ', true)).toBeUndefined();
    expect(entryOf(' ', false)).toBe('');
  });
});
