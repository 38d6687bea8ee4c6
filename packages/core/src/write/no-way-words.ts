import type { NoWay } from '../load/way-off.js';

/** Why no way leads off a wall, in words that go after a colon. */
export function noWayWords(why: NoWay): string {
  switch (why.reason) {
    case 'walled in':
      return why.share >= 1
        ? 'the wall goes all the way round'
        : 'the wall goes round by more than half a turn';
    case 'core stands':
      return 'a core stands inside of the cutter';
    case 'no room':
      return 'other metal leaves no room to the side';
    case 'keep-out':
      return `${why.ids.join(' and ')} ${why.ids.length === 1 ? 'is' : 'are'} in the way`;
  }
}
