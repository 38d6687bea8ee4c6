import type { ReportEdge } from '@edgebite/core';
import { describe, expect, it, vi } from 'vitest';
import {
  type BiteTexts,
  biteWords,
  readBite,
  usualTexts,
} from '../../packages/previewer/page/src/asked/bite-entry.js';
import type { Face } from '../../packages/previewer/page/src/state/biting.js';
import { newsOf } from '../../packages/previewer/page/src/state/news.js';

vi.mock('../../packages/previewer/page/src/state/store.js', async () => {
  const { signal } = await import('@preact/signals');
  return { shown: signal(null) };
});

const edge: Extract<ReportEdge, { kind: 'line' }> = {
  kind: 'line',
  a: [0, 0],
  b: [80, 0],
  source: 'outline:0',
};
const face: Face = { source: 'outline:0', edge, length: 80 };

const usual = (typed: Partial<BiteTexts>, isOpening = false) =>
  usualTexts({ face, along: 40, isOpening }, typed, 'mm');

const read = (typed: Partial<BiteTexts>, isOpening = false) =>
  readBite(face, { ...usual(typed, isOpening), ...typed }, isOpening, 'mm');

describe('the fields of a bite', () => {
  it('stand already: an eighth of the face, half of that deep, and no ring', () => {
    expect(usual({})).toEqual({ along: '40', radius: '10', deep: '5', rough: '', wall: '', step: '' });
    expect(read({})).toMatchObject({ along: 40, radius: 10, depth: 5, rough: null, step: null });
  });

  it('follow what is typed in others, and nothing that reads as no number', () => {
    expect(usual({ radius: '18' }).deep).toBe('9');
    expect(usual({ radius: '18' }, true).deep).toBe('27');
    expect(usual({ rough: '16' }).wall).toBe('2');
    expect(usual({ rough: 'x' }).wall).toBe('');
    // Typed ones stay.
    expect(read({ radius: '18', deep: '4', rough: '32', wall: '3' })).toMatchObject({
      depth: 4,
      rough: { diameter: 32, wall: 3 },
    });
  });

  it('take an opening for the depth', () => {
    // Half of 16 on a radius of 10 leaves the centre 6 in front of the face: 6, 8, 10.
    const bite = read({ deep: '16' }, true);
    expect(bite).toMatchObject({ opening: 16, depth: 4 });
    expect('fault' in bite ? '' : biteWords(bite, 'mm')).toBe(
      'Radius 10.000 mm, 4.000 mm deep, opens 16.000 mm of the face.',
    );
  });

  it('take sums and inches as fields of lengths do', () => {
    expect(read({ radius: '1/2"', deep: '24-20' })).toMatchObject({ radius: 12.7, depth: 4 });
  });

  it.each<[string, Partial<BiteTexts>]>([
    ['Along the face takes a number from 0 to 80.000', { along: '81' }],
    ['The radius takes a number over 0', { radius: '' }],
    ['The depth takes a number over 0, at most twice the radius', { radius: '4', deep: '8.1' }],
    ['The cutter takes a diameter over 10.000', { rough: '9' }],
    ['The wall takes a number over 0 and under half', { rough: '12', wall: '6' }],
    ['The largest bite of a pass takes a number over 0', { step: '0' }],
  ])('say what is wrong: %s', (words, typed) => {
    const bite = read(typed);
    expect('fault' in bite ? bite.fault : '').toContain(words);
  });

  it('want a face first', () => {
    expect(readBite(undefined, usual({}), false, 'mm')).toEqual({ fault: 'No face is chosen yet.' });
  });
});

describe('what is read out of a change', () => {
  it('is how much there is to watch where a job was opened', () => {
    expect(newsOf(null, [])).toBe('Nothing found.');
    expect(newsOf(null, ['a', 'b'])).toBe('2 findings.');
  });

  it('is what is new after that, what is gone, and nothing where nothing is', () => {
    expect(newsOf(['a'], ['a'])).toBe('');
    expect(newsOf(['danger: a'], ['danger: a', 'check: b'])).toBe('New check: b');
    expect(newsOf(['a', 'b'], ['b'])).toBe('1 finding no longer so.');
    expect(newsOf(['a'], [])).toBe('Nothing found any more.');
    expect(newsOf([], ['a', 'b', 'c', 'd', 'e'])).toBe('New a New b New c And 2 more.');
  });
});
