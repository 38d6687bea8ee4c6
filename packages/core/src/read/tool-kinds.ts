import { choices } from '../document/described.js';
import type { CutDocument, ToolDocument } from '../document/schema.js';

/** Which kinds of tool make which kind of cut. */
export const FITS: Readonly<Record<CutDocument['kind'], readonly ToolDocument['kind'][]>> = {
  bore: ['drill', 'boring head', 'end mill'],
  annular: ['annular cutter'],
  swept: ['end mill'],
};

/** What a kind of cut is called. */
export const KIND_NAME = { bore: 'a bore', annular: 'an annular cut', swept: 'a swept cut' } as const;

/** Most ids that a message lists. */
const LISTED = 8;

/** The end of a message that some id is not there: the ids that are, if they are few. */
export function listed(ids: readonly string[]): string {
  if (ids.length === 0 || ids.length > LISTED) return '';
  return `; there is ${choices(ids).replace(' or ', ' and ')}`;
}
