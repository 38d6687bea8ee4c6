import { describe, expect, it } from 'vitest';
import { angleText, dimensionText, numberText } from './numbers.js';

describe('numbers', () => {
  it('show three decimals of a millimetre and four of an inch', () => {
    expect(numberText(12.34567, 'mm')).toBe('12.346');
    expect(numberText(12.34567, 'inch')).toBe('12.3457');
    expect(angleText(20.36)).toBe('20.4');
  });

  it('tell a true zero from one that is too small to show, and show no -0.000', () => {
    expect(numberText(0, 'mm')).toBe('0');
    expect(numberText(-0, 'mm')).toBe('0');
    expect(numberText(1e-9, 'mm')).toBe('0.000');
    expect(numberText(-1e-9, 'mm')).toBe('0.000');
    expect(angleText(0)).toBe('0');
    expect(angleText(0.01)).toBe('0.0');
  });

  it('have no idle zeros in dimensions', () => {
    expect([80, 12.5, 0.4921, 0, 1e-9, 100].map((n) => dimensionText(n, 'mm'))).toEqual([
      '80',
      '12.5',
      '0.492',
      '0',
      '0',
      '100',
    ]);
  });
});
