import { EdgebiteError } from '@edgebite/core';
import { expect, it } from 'vitest';
import { spoiled } from './bad-values.js';
import type { Row } from './rows-geometry.js';

export type Call = (...given: readonly unknown[]) => unknown;

/** The functions among what a module exports, by name. */
export function functionsOf(module: Readonly<Record<string, unknown>>): [string, Call][] {
  return Object.entries(module).filter(
    ([, value]) => typeof value === 'function' && !/^class\b/.test(Function.prototype.toString.call(value)),
  ) as [string, Call][];
}

/** Tests that there is a row for each function and that each takes what is right, and refuses what is wrong as an EdgebiteError. */
export function testTable(functions: readonly [string, Call][], rows: Readonly<Record<string, Row>>): void {
  it('has a row here, and every row a function', () => {
    expect(Object.keys(rows).sort()).toEqual(functions.map(([name]) => name).sort());
  });

  it.each(functions)('%s takes what is right', (name, call) => {
    const { good } = rows[name] as Row;
    expect(notNumber(call(...good))).toBeNull();
  });

  it.each(functions)('%s refuses what is wrong', (name, call) => {
    const { good, what } = rows[name] as Row;
    const wrong: string[] = [];
    what.forEach((one, k) => {
      for (const { name: how, value, fine } of spoiled(one, good[k])) {
        const fault = faultOf(() => call(...good.with(k, value)), name, fine);
        if (fault !== null) wrong.push(`argument ${k}${how}: ${fault}`);
      }
    });
    expect(wrong).toEqual([]);
  });
}

function faultOf(call: () => unknown, name: string, fine: boolean): string | null {
  try {
    const made = call();
    // What is wrong with a region is told with the value that it has.
    const bad = name === 'checkRegion' ? null : notNumber(made);
    if (bad !== null) return `gives ${bad}`;
    return fine ? null : `is taken, and gives ${JSON.stringify(made)?.slice(0, 80)}`;
  } catch (error) {
    if (!(error instanceof EdgebiteError)) return `throws ${String(error)}`;
    const { code, message, place } = error;
    if (code === 'fault') return `is taken for a fault of the library: ${message}`;
    const says = message.length > 10 && (place.length > 0 || code === 'job' || code === 'fit');
    const named = code !== 'argument' && code !== 'region' ? true : place.startsWith(`${name}: `);
    return says && named ? null : `is refused without saying where: ${code}, "${place}", ${message}`;
  }
}

/** Where an answer has a number that is none; null if nowhere. */
function notNumber(made: unknown, at = 'answer', deep = 0): string | null {
  if (typeof made === 'number') return Number.isNaN(made) ? `${at}: NaN` : null;
  if (typeof made === 'string') return /NaN|undefined/.test(made) ? `${at}: ${made}` : null;
  if (typeof made !== 'object' || made === null || deep > 8) return null;
  for (const [key, value] of Object.entries(made)) {
    const found = notNumber(value, `${at}.${key}`, deep + 1);
    if (found !== null) return found;
  }
  return null;
}
