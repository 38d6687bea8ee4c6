import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { type Look, type Sight, type Stand, sight, stand } from './open.js';

/** The page as the tests of a file see it. */
export interface Looks {
  /** Opens the page in a fresh profile. */
  readonly look: (how?: Look) => Promise<Page>;
  /** Where the page is served. */
  readonly place: () => Stand;
}

/** Serves the page to the tests of a file. Whatever a test does, the page has nothing to say to a console. */
export function looks(): Looks {
  let place: Stand | undefined;
  const open: Sight[] = [];
  const standing = (): Stand => {
    if (place === undefined) throw new Error('the page is not served yet');
    return place;
  };
  beforeAll(async () => {
    place = await stand();
  }, 60_000);
  afterAll(async () => place?.stop());
  afterEach(async () => {
    const said = open.flatMap((one) => one.said);
    await Promise.all(open.map(({ context }) => context.close()));
    open.length = 0;
    expect(said).toEqual([]);
  });
  return {
    look: async (how = {}) => {
      const one = await sight(standing(), how);
      open.push(one);
      return one.page;
    },
    place: standing,
  };
}
