import { isList, isObject, type Json, type JsonObject, valueAt, withValue } from '../document/json.js';
import { cutsIn } from '../form/new-cut.js';
import { ROUGH } from './put-bite.js';

/** How a part can lie. */
export const LIES = [
  'as drawn',
  'turned round',
  'a quarter turn to the left',
  'a quarter turn to the right',
  'turned over, end for end',
  'turned over, front to back',
] as const;

export type Lie = (typeof LIES)[number];

const WRITTEN: Readonly<Record<Lie, JsonObject>> = {
  'as drawn': {},
  'turned round': { turn: 180 },
  'a quarter turn to the left': { turn: 90 },
  'a quarter turn to the right': { turn: -90 },
  'turned over, end for end': { flip: 'y' },
  'turned over, front to back': { flip: 'x' },
};

/** Where the zero of X is taken from. */
export const X_FROM = [
  'stop and block at the left',
  'stop and block at the right',
  'the left face itself',
  'the right face itself',
] as const;

export type XFrom = (typeof X_FROM)[number];

/** Whether a block lies between part and stop. */
export const hasBlock = (x: XFrom): boolean => x.startsWith('stop and block');

export const Y_FROM = ['front', 'back'] as const;

/** A setup as it is asked for: how the part lies, and what is done for its zero. */
export interface Lay {
  readonly lie: Lie;
  readonly x: XFrom;
  readonly y: (typeof Y_FROM)[number];
  /** Diameter of the tip of the edge finder, and length of the block. */
  readonly tip: number;
  readonly block: number;
  readonly cuts: readonly string[];
}

/** Cuts that are made one right after the other about one centre, by the name of the last. */
export interface Together {
  readonly name: string;
  readonly ids: readonly string[];
}

const setupsIn = (job: Json | null): readonly Json[] => {
  const setups = valueAt(job ?? undefined, ['setups']);
  return isList(setups) ? setups : [];
};

const COPY = / [1-9]\d*$/;

/** The cuts that no setup makes yet, a ring with the bore of its bite. */
export function cutsLeft(job: Json | null): readonly Together[] {
  const made = new Set(
    setupsIn(job)
      .flatMap((setup) => valueAt(setup, ['cuts']) ?? [])
      .flat(),
  );
  const ids = cutsIn(job).flatMap((cut) => (isObject(cut) && typeof cut.id === 'string' ? [cut.id] : []));
  // A name with a number behind is that of one of its copies.
  const isMade = (id: string) =>
    [...made].some((name) => name === id || (typeof name === 'string' && name.replace(COPY, '') === id));
  const left = ids.filter((id) => !isMade(id));
  return left.flatMap((id, k): Together[] => {
    if (left[k + 1] !== undefined && id === `${left[k + 1]}${ROUGH}`) return [];
    return [{ name: id, ids: left[k - 1] === `${id}${ROUGH}` ? [`${id}${ROUGH}`, id] : [id] }];
  });
}

/** Whether a job has a setup. */
export const hasSetups = (job: Json | null): boolean => setupsIn(job).length > 0;

/** A length that the last setup has at some place of its zero; null where it has none there. */
export function lastLength(job: Json | null, key: 'tip' | 'block'): number | null {
  const actions = setupsIn(job)
    .flatMap((setup) => valueAt(setup, ['zero', 'x']) ?? [])
    .flat();
  const found = actions.flatMap((action) => {
    const value = isObject(action) ? action[key] : undefined;
    return typeof value === 'number' ? [value] : [];
  });
  return found.at(-1) ?? null;
}

/** The words by which half the tip is taken off at once. */
const THEN = 'move half the tip and set 0';

/** The job with one more setup. */
export function withSetup(job: Json, lay: Lay): Json {
  const setups = setupsIn(job);
  const names = new Set(setups.map((setup) => valueAt(setup, ['id'])));
  let number = setups.length + 1;
  while (names.has(`setup-${number}`)) number++;
  return withValue(job, ['setups'], [...setups, setupOf(lay, `setup-${number}`)]);
}

function setupOf({ lie, x, y, tip, block, cuts }: Lay, id: string): JsonObject {
  const touch = (touched: string): JsonObject => ({ touch: touched, tip, then: THEN });
  const side = x.includes('right') ? 'right' : 'left';
  // The same stop has the same name in every setup, so that it is off by the same in each.
  const stop = `stop at the ${side}`;
  const isStopped = hasBlock(x);
  const bears: JsonObject = { bears: side, on: stop, block };
  return {
    id,
    name: lie,
    ...WRITTEN[lie],
    ...(isStopped ? { stops: [{ id: stop, face: side }] } : {}),
    zero: { x: isStopped ? [touch(stop), bears] : [touch(side)], y: [touch(y)] },
    cuts,
  };
}
