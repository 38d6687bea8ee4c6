import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { sheetHtml } from '../../packages/previewer/src/sheet/html.js';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { picturesOf } from '../../packages/previewer/src/sheet/pictures.js';
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

describe('the pictures of a printed sheet', () => {
  const job = JSON.parse(
    readFileSync(new URL('../../examples/saddle-block.json', import.meta.url), 'utf8'),
  ) as object;
  const report = examine(parseJob(job));
  const sheet = sheetOf(report);
  const pictures = picturesOf(report, sheet);
  const html = sheetHtml(sheet, pictures);

  it('show for each setup how the part lies, and once how its zero is found', () => {
    expect(pictures).toHaveLength(sheet.blocks.length);
    for (const [k, block] of sheet.blocks.entries()) {
      const first = report.steps[(block.steps[0]?.number ?? 0) - 1];
      expect(pictures[k]?.lies).toContain(`Step ${block.steps[0]?.number} ${first?.cut}`);
      expect(pictures[k]?.zero).toContain(`Zero of ${block.setup}`);
    }
    expect(html.match(/<figure class="lies">/g)).toHaveLength(sheet.blocks.length);
    expect(html.match(/<figure class="zeros">/g)).toHaveLength(sheet.blocks.length);
  });

  it('have ids of their own, and nothing that the policy of the sheet forbids', () => {
    const ids = [...html.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, wanted] of html.matchAll(/url\(#([^)]*)\)/g)) expect(ids).toContain(wanted);
    expect(html).not.toMatch(/<script|<image|<use|href=| style="/);
  });

  it('leave the zero out where it cannot be found, and all of it without a report', () => {
    const lost = { ...report, findings: report.findings.map((one) => ({ ...one })) };
    const step = { ...report.steps[0], findings: [0] } as (typeof report.steps)[number];
    const bad = {
      ...lost,
      findings: [{ ...report.findings[0], code: 'face-cut-away' }, ...report.findings.slice(1)],
      steps: [step, ...report.steps.slice(1)],
    } as typeof report;
    expect(picturesOf(bad, sheetOf(bad))[0]?.zero).toBeNull();
    expect(sheetHtml(sheet)).not.toContain('<svg');
  });
});
