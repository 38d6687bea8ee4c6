import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { sheetHtml } from '../../packages/previewer/src/sheet/html.js';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { sheetReports } from './hard-jobs.js';

describe.each(sheetReports())('the HTML sheet of %s', (_, report) => {
  const html = sheetHtml(sheetOf(report));

  it('has no script, no handler, no address, and no element but its own', () => {
    const tags = new Set(
      [...html.matchAll(/<([a-z0-9]+)/gi)].map(([, tag]) => (tag as string).toLowerCase()),
    );
    const own =
      'html head meta title style body header main section h1 h2 h3 p ul ol li table thead tbody tr th td span';
    expect([...tags].filter((tag) => !own.split(' ').includes(tag))).toEqual([]);
    for (const [tag] of html.matchAll(/<[^>]*>/g)) expect(tag).not.toMatch(/\s(on\w+|src|href|style)\s*=/i);
  });

  it('lets nothing in but its one style, by a policy', () => {
    const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1] ?? '';
    const style = /<style>([\s\S]*)<\/style>/.exec(html)?.[1] ?? '';
    const hash = createHash('sha256').update(style).digest('base64');
    expect(policy.split('; ')).toEqual([
      "default-src 'none'",
      `style-src 'sha256-${hash}'`,
      "base-uri 'none'",
      "form-action 'none'",
    ]);
  });

  it('closes what it opens', () => {
    const open: string[] = [];
    for (const [, end, tag] of html.matchAll(/<(\/?)([a-z0-9]+)[^>]*>/g)) {
      if (tag === 'meta') continue;
      if (end === '') open.push(tag as string);
      else expect(open.pop()).toBe(tag);
    }
    expect(open).toEqual([]);
  });
});
