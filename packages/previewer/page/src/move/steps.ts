import { isObject, type JsonObject } from '../document/json.js';
import type { Place } from '../worker/sketch.js';
import type { Steps, Worked } from '../worker/worked.js';
import { bounded, type Free, type Moves, setting, upTo } from './free.js';
import { between, dot } from './vector.js';

/** So many passes a job may have at most. */
const MOST_PASSES = 1000;

/** The largest bite of a cut that steps in; null if it does not. */
export function biteOf({ passes }: JsonObject): number | null {
  return isObject(passes) && passes.kind === 'step in' && typeof passes.bite === 'number'
    ? passes.bite
    : null;
}

/**
 * What is free of the centre of one pass, counted from 1: the largest bite. Passes share the way in evenly, so a pass
 * can stand where whole numbers of them divide it; the bite is the smallest with which they are no more than that.
 */
export function passMoves(cut: JsonObject, worked: Worked | null, number: number): Moves | null {
  const bite = biteOf(cut);
  const steps = worked?.steps ?? null;
  if (bite === null || steps === null) return null;
  return { frees: [biteFree(cut, bite, steps, number)], at: stopOf(steps, number), why: null };
}

function biteFree(cut: JsonObject, bite: number, { approach, touch, travel }: Steps, number: number): Free {
  const finish = isObject(cut.passes) && typeof cut.passes.finish === 'number' ? cut.passes.finish : 0;
  const way = travel > finish ? travel - finish : travel;
  return {
    name: 'largest bite',
    value: bite,
    grows: approach,
    at: (place) => {
      const gone = dot(between(touch, place), approach);
      const count = gone > 0 ? Math.floor((number * way) / gone) : MOST_PASSES;
      const [fewer, more] = [count, count + 1].map((many) => way / bounded(many, [number, MOST_PASSES]));
      const off = (bite = way): number => Math.abs(number * bite - gone);
      return off(fewer) <= off(more) ? (fewer ?? way) : (more ?? way);
    },
    put: (value, step) => {
      const least = Math.max(step, finish, way / MOST_PASSES);
      return setting([
        [['passes', 'bite'], bounded(upTo(value, step), [upTo(least, step), upTo(way, step)])],
      ]);
    },
  };
}

function stopOf({ stops, touch, approach, travel }: Steps, number: number): Place {
  return stops[number - 1] ?? [touch[0] + approach[0] * travel, touch[1] + approach[1] * travel];
}
