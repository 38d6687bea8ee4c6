import { expect, it } from 'vitest';
import { rangeText, roughText } from './figures.js';

it.each([
  [[10, 20], '10.0 to 20.0', '10 to 20'],
  [[0.0512, 1234.4], '0.051 to 1234', '0.051 to 1200'],
  [[2.345, 2.345], '2.35', '2.3'],
  [[99.96, 100], '100.0 to 100', '100'],
  [[0, 3], '0 to 3.00', '0 to 3'],
] as const)('%j reads from the one end to the other', (range, text, rough) => {
  expect(rangeText(range)).toBe(text);
  expect(roughText(range)).toBe(rough);
});

it('is a dash where nothing is known', () => {
  expect(rangeText(null)).toBe('-');
});
