import { describe, expect, it } from 'vitest';
import { cutOfSource, cutSource, originOf } from './source.js';

describe('names of sources', () => {
  it('are read as they are built, whatever signs the id of a cut has', () => {
    for (const id of ['seat', 'outline:2', 'hole:0:1', 'cut:a', ':', 'a b', '']) {
      expect(cutOfSource(cutSource(id))).toBe(id);
    }
  });

  it('of the outline are taken apart', () => {
    expect(originOf('outline:12')).toEqual({ kind: 'outline', edge: '12' });
    expect(originOf('hole:3:0')).toEqual({ kind: 'hole', hole: '3', edge: '0' });
    expect(cutOfSource('outline:12')).toBeNull();
  });

  it('that are none of ours stay whole', () => {
    for (const name of ['', 'cut', 'hole:3', 'left end']) {
      expect(originOf(name)).toEqual({ kind: 'other', name });
    }
  });
});
