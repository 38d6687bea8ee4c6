import { createSVGWindow } from 'svgdom';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { block } from '../fixtures/block.js';
import { draw as drawInBrowser, drawTree, drawView as drawViewInBrowser } from './browser.js';
import { draw, drawView } from './index.js';

describe('the entry for browsers', () => {
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  it('draws in the window of the page, and the same as on Node', () => {
    vi.stubGlobal('window', createSVGWindow());
    expect(drawInBrowser(block)).toBe(draw(block));
    expect(drawViewInBrowser(block)).toBe(drawView(block));
    expect(drawTree(block).svg()).toBe(draw(block));
  });

  it('takes the serializer of XML where the window has one', () => {
    class XMLSerializer {
      serializeToString(node: { nodeName: string }): string {
        return `serialized ${node.nodeName}`;
      }
    }
    vi.stubGlobal('window', Object.assign(createSVGWindow(), { XMLSerializer }));
    expect(drawInBrowser(block)).toBe('serialized svg');
  });
});
