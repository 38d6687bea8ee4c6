import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Json } from '../../packages/previewer/page/src/document/json.js';
import { fragmentOf, LONGEST_LINK, textIn } from '../../packages/previewer/page/src/files/link.js';
import { runs } from '../tools/runs.js';

describe('a job in a link', () => {
  it('comes back as it was', async () => {
    await fc.assert(
      fc.asyncProperty(fc.jsonValue({ maxDepth: 4 }), async (job) => {
        const fragment = await fragmentOf(job as Json);
        expect(fragment).toMatch(/^#job=[\w-]*$/);
        expect(await textIn(fragment ?? '')).toBe(JSON.stringify(job));
      }),
      { numRuns: runs(100) },
    );
  });

  it('is packed as RFC 1951 and RFC 4648, section 5, have it', async () => {
    const packed = deflateRawSync('{"edgebite":1}').toString('base64url');
    expect(await textIn(`#job=${packed}`)).toBe('{"edgebite":1}');
  });

  it('does not unfold without end', async () => {
    const bomb = deflateRawSync(Buffer.alloc(8_000_000, 32)).toString('base64url');
    expect(bomb.length).toBeLessThan(LONGEST_LINK);
    expect(await textIn(`#job=${bomb}`)).toBeNull();
  });

  it('is no longer than may be passed on', async () => {
    const long = Array.from({ length: 4000 }, (_, k) => Math.sin(k));
    expect(await fragmentOf(long)).toBeNull();
    expect(await textIn(`#job=${'A'.repeat(LONGEST_LINK)}`)).toBeNull();
  });

  it('is none where another fragment stands, and is refused where it is none', async () => {
    expect(await textIn('')).toBeUndefined();
    expect(await textIn('#elsewhere')).toBeUndefined();
    expect(await textIn('#job=%%')).toBeNull();
    expect(
      await textIn(`#job=${deflateRawSync(Buffer.from([0xff, 0xfe])).toString('base64url')}`),
    ).toBeNull();
  });
});
