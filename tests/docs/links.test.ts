import { existsSync } from 'node:fs';
import { posix } from 'node:path';
import { describe, expect, it } from 'vitest';
import { pages, ROOT, textOf } from './pages.js';

/** Markdown without its code, in which brackets are no links. */
const prose = (page: string): string =>
  textOf(page)
    .replace(/^```[\s\S]*?^```$/gm, '')
    .replace(/`[^`\n]*`/g, '');

const linksOf = (page: string): string[] =>
  [...prose(page).matchAll(/\]\(([^)\s]+)\)/g)].map(([, to]) => to ?? '');

/** The name by which a heading can be linked to: lower case, spaces to hyphens, other signs left out. */
const anchorsOf = (page: string): string[] =>
  [...textOf(page).matchAll(/^#+ (.*)$/gm)].map(([, heading = '']) =>
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N} _-]/gu, '')
      .replaceAll(' ', '-'),
  );

function leadsSomewhere(page: string, link: string): boolean {
  if (/^https:\/\/[\w.-]+\.\w+(\/|$)/.test(link)) return true;
  if (/^[a-z]+:|^\//.test(link)) return false;
  const [path = '', anchor] = link.split('#');
  const target = path === '' ? page : posix.join(posix.dirname(page), path);
  if (!existsSync(`${ROOT}${target}`)) return false;
  return anchor === undefined || anchorsOf(target).includes(anchor);
}

describe('links', () => {
  it.each(pages())('of %s lead somewhere', (page) => {
    expect(linksOf(page).filter((link) => !leadsSomewhere(page, link))).toEqual([]);
  });

  it('that lead nowhere are found', () => {
    for (const link of [
      'none.md',
      '/README.md',
      'http:x',
      'README.md#none',
      '#none',
      '../docs',
      'https://x',
    ]) {
      expect([link, leadsSomewhere('docs/README.md', link)]).toEqual([link, link === '../docs']);
    }
    expect(leadsSomewhere('README.md', 'docs/README.md')).toBe(true);
    expect(linksOf('README.md').length).toBeGreaterThan(5);
  });

  it('lead from the index to every guide page, and from the README to the index', () => {
    const listed = linksOf('docs/README.md');
    const guides = pages().filter((page) => page.startsWith('docs/') && page !== 'docs/README.md');
    expect(guides.map((page) => page.slice('docs/'.length)).filter((name) => !listed.includes(name))).toEqual(
      [],
    );
    expect(linksOf('README.md').some((link) => link === 'docs/README.md')).toBe(true);
  });
});
