import { describe, expect, it } from 'vitest';
import { block } from '../../fixtures/block.js';
import { ownerOf } from './owner.js';
import { knifeLines } from './pointers.js';

describe('the owner of a knife edge', () => {
  it('is the piece that it is on, but for the kept one', () => {
    const [edge] = block.knifeEdges;
    const slug = block.pieces.find(({ role }) => role !== 'kept');
    if (edge === undefined || slug === undefined) throw new Error('the fixture has knife edges and a slug');
    const own = { ...edge, piece: slug.id };
    expect([ownerOf(block, { ...edge, piece: 'kept' }), ownerOf(block, own)]).toEqual([null, slug.label]);
    expect(knifeLines(block, { ...own, interval: null }).at(-1)).toBe(`on ${slug.label}`);
  });
});
