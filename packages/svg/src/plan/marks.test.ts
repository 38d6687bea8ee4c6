import type { Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { block } from '../../fixtures/block.js';
import { knifeMarks, ownerOf, webMarks } from './marks.js';
import { knifeLines } from './pointers.js';

describe('marks', () => {
  it('number webs and knife edges in the order of the report, one for all slabs', () => {
    expect(webMarks(block).map(({ id, web, slabs }) => [id, web.thickness, slabs])).toEqual([
      ['W1', 0.8, [0, 1]],
      ['W2', 1.2, [0, 1]],
    ]);
    expect(knifeMarks(block).map(({ id, knifeEdge, slabs }) => [id, knifeEdge.at[1], slabs])).toEqual([
      ['K1', 0, [0, 1]],
      ['K2', 30, [0, 1]],
    ]);
  });

  it('say which entries of the report they stand for, each once', () => {
    expect(
      webMarks(block)
        .flatMap(({ members }) => members)
        .sort(),
    ).toEqual([0, 1, 2, 3]);
    expect(
      knifeMarks(block)
        .flatMap(({ members }) => members)
        .sort(),
    ).toEqual([0, 1, 2, 3]);
  });

  it('name the piece that a knife edge is on, but for the kept one', () => {
    const [edge] = block.knifeEdges;
    const slug = block.pieces.find(({ role }) => role !== 'kept');
    if (edge === undefined || slug === undefined) throw new Error('the fixture has knife edges and a slug');
    const own = { ...edge, piece: slug.id };
    expect([ownerOf(block, { ...edge, piece: 'kept' }), ownerOf(block, own)]).toEqual([null, slug.label]);
    expect(knifeLines(block, { ...own, interval: null }).at(-1)).toBe(`on ${slug.label}`);
  });

  const [web] = block.webs;
  const withWebs = (...webs: Report['webs']): Report => ({ ...block, webs });

  it('keep two webs of one slab apart, however close', () => {
    if (web === undefined) throw new Error('the fixture has webs');
    expect(webMarks(withWebs(web, web))).toHaveLength(2);
  });

  it('keep webs in other places, of other thickness, or between other edges apart', () => {
    if (web === undefined) throw new Error('the fixture has webs');
    const slab = 1;
    expect(webMarks(withWebs(web, { ...web, slab, at: [20.1, 29.6] }))).toHaveLength(2);
    expect(webMarks(withWebs(web, { ...web, slab, thickness: 0.9 }))).toHaveLength(2);
    expect(webMarks(withWebs(web, { ...web, slab, between: ['cut:eye', 'outline:2'] }))).toHaveLength(2);
    expect(webMarks(withWebs(web, { ...web, slab, piece: 'slug-1' }))).toHaveLength(2);
    expect(webMarks(withWebs(web, { ...web, slab, between: ['outline:2', 'cut:near'] }))).toHaveLength(1);
  });
});
