import { createSVGWindow } from 'svgdom';
import { afterEach, expect, it, vi } from 'vitest';
import { block } from '../fixtures/block.js';
import { draw, drawView } from './index.js';
import { drawTree, drawViewTree } from './tree.js';
import { drawTree as drawTreeInPage, drawViewTree as drawViewTreeInPage } from './tree-browser.js';

afterEach(() => {
  vi.unstubAllGlobals();
});

// svgdom and svg.js are the other writer here: what they make of the tree is what `draw` writes by itself.
it('draws the same with svg.js in a DOM as without one', () => {
  const text = draw(block);
  const view = drawView(block);
  expect(drawTree(block).svg()).toBe(text);
  expect(drawViewTree(block).svg()).toBe(view);
  vi.stubGlobal('window', createSVGWindow());
  expect(drawTreeInPage(block).svg()).toBe(text);
  expect(drawViewTreeInPage(block).svg()).toBe(view);
});

it('needs no window to write a drawing', () => {
  expect('window' in globalThis || 'document' in globalThis).toBe(false);
  expect(draw(block)).toContain('</svg>');
});

it('lets a tree be gone on with', () => {
  const tree = drawTree(block);
  tree.rect(3, 4).id('mine');
  expect(tree.findOne('#mine')?.svg()).toContain('width="3"');
  expect(tree.svg()).toContain('aria-labelledby="edgebite-title');
});
