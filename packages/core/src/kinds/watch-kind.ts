import { type Check, callable, faultIn, flag, type Kind, type Kinds } from './kinds.js';

const watched: Kinds = {
  signal: { maybe: { has: { aborted: flag } } },
  progress: { maybe: callable },
};

/** What watches over a long call. */
export const watch: Kind = { maybe: { only: watched } };

const ofRange: Kind = { maybe: { only: { ...watched, isOver: { maybe: callable } } } };

/** Of a range: or only what is asked whether to stop. */
export const rangeWatch: Check = (value) => (typeof value === 'function' ? null : faultIn(ofRange, value));
