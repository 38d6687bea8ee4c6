import { HARDNESS, METALS } from '@edgebite/core';
import { expect, it } from 'vitest';

/** For what metal the figures are meant. From memory, and typed a second time, as none of the sheets says. */
const BRINELL: { readonly [metal: string]: readonly number[] } = {
  'mild steel': [100, 180],
  'alloy steel': [180, 280],
  'tool steel': [180, 240],
  'stainless steel': [140, 220],
  'cast iron': [130, 230],
  aluminium: [40, 120],
  brass: [],
  bronze: [60, 120],
  titanium: [],
};

it.each(Object.entries(BRINELL))('%s', (metal, numbers) => {
  const words = Object.entries(HARDNESS).find(([name]) => name === metal)?.[1] ?? '';
  expect((words.match(/\d+/g) ?? []).map(Number)).toEqual(numbers);
  expect(words.includes('HB')).toBe(numbers.length > 0);
});

it('every metal with a number says so of the state it is in, and none is left out', () => {
  expect(Object.keys(HARDNESS).sort()).toEqual(Object.keys(BRINELL).sort());
  expect(METALS).toEqual(expect.arrayContaining(Object.keys(HARDNESS)));
  // Speeds are for metal that cuts easily: what is hardened, work-hardened or in its skin is not meant.
  expect(HARDNESS['tool steel']).toContain('not hardened');
  expect(HARDNESS['cast iron']).toContain('without its skin');
  expect(HARDNESS.brass).toBe('free-cutting, half hard at most');
  expect(HARDNESS.titanium).toBe('from pure to the usual alloys, annealed');
});
