import { describe, expect, it } from 'vitest';
import { withRooms } from '../tools/rooms.mjs';
import { textOf } from './pages.js';

const page = textOf('docs/architecture.md');

describe('docs/architecture.md', () => {
  it('has the rooms, and who imports whom, as the sources have them', () => {
    expect(withRooms(page) === page, 'read what changed, then run npm run rooms -- --update').toBe(true);
  });

  it('is put right where it is out of date', () => {
    expect(page).toContain('core_job --> core_read');
    expect(withRooms(page.replaceAll('core_job --> core_read', 'core_read --> core_job'))).toBe(page);
  });

  it('is refused where the place of a picture is missing', () => {
    expect(() => withRooms('# Architecture')).toThrow('the page has no <!-- way -->');
  });
});
