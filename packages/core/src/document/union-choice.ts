import { FINISHED_KEYS, PATH_KEYS } from './schema.js';
import { MIRROR_KEYS, REPEAT_KEYS, ROW_KEYS } from './schema-alike.js';
import { DIMENSION_KEYS, PLACEMENT_KEYS } from './schema-center.js';
import { ACTION_KEYS, BETWEEN_KEYS, HEIGHT_KEYS } from './schema-setups.js';

/** What a value can be where the schema has several answers and no kind to tell them apart. */
export interface UnionChoice {
  /** In words, where it is no object. */
  readonly plain?: string;
  /** Whether it can be a place too, which is the first branch of the schema then. */
  readonly point?: boolean;
  /** The branch of the schema that is a list, where there is one. */
  readonly list?: number;
  /** The keys of which an object has exactly one, in the order of the branches. */
  readonly keys?: readonly string[];
}

/** What the value at a path of a job can be; null for a shape. */
export function choiceAt(path: readonly PropertyKey[]): UnionChoice | null {
  const last = path.at(-1);
  const holder = path.at(-2);
  if (path[0] === 'setups') return zeroChoice(last, holder);
  if (path[0] === 'repeat') return { keys: repeatKeys(last) };
  if (last === 'finished') return { keys: FINISHED_KEYS };
  if (last === 'path') return { keys: PATH_KEYS };
  if (last === 'center') return { point: true, keys: PLACEMENT_KEYS };
  if (holder === 'distances') return { keys: DIMENSION_KEYS };
  if (holder === 'along' && last === 'lead') return { plain: 'a radius, "largest" or "none"' };
  if (holder === 'along') return { point: true, keys: ['edge'] };
  if (holder === 'passes') return { plain: 'an angle from -360 to 360 degrees or "smoothest"' };
  return null;
}

/** The keys of a repeat, of its row or of its mirror. */
function repeatKeys(last: PropertyKey | undefined): readonly string[] {
  if (last === 'row') return ROW_KEYS;
  return last === 'mirror' ? MIRROR_KEYS : REPEAT_KEYS;
}

/** What a value can be among the actions of a zero. */
function zeroChoice(last: PropertyKey | undefined, holder: PropertyKey | undefined): UnionChoice | null {
  if (holder === 'x' || holder === 'y') return { keys: ACTION_KEYS };
  if (holder === 'z') return { keys: HEIGHT_KEYS };
  if (last === 'dial in') return { plain: 'a name or a place [x, y]' };
  if (last === 'block') return { plain: 'a length over 0 or a list of them', list: 1 };
  if (holder === 'block') {
    return { plain: 'a length over 0, { "block": length } or { "measured": length }', keys: BETWEEN_KEYS };
  }
  return null;
}
