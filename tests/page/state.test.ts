import { describe, expect, it } from 'vitest';
import { followed } from '../../packages/previewer/page/src/document/follow.js';
import {
  changed,
  redone,
  sealed,
  startOf,
  undone,
} from '../../packages/previewer/page/src/document/history.js';
import {
  type Json,
  pointerOf,
  valueAt,
  withMoved,
  withoutMember,
  withValue,
} from '../../packages/previewer/page/src/document/json.js';
import { unitIn } from '../../packages/previewer/page/src/document/place.js';
import { namesOf, renamed, withoutNamed } from '../../packages/previewer/page/src/document/references.js';

const job: Json = { part: { thickness: 5 }, cuts: [{ id: 'a' }, { id: 'b' }, { id: 'c' }] };

describe('values in a job', () => {
  it('are read and replaced by their path, and all others are shared', () => {
    const next = withValue(job, ['cuts', 1, 'id'], 'x');
    expect(valueAt(next, ['cuts', 1, 'id'])).toBe('x');
    expect(valueAt(job, ['cuts', 1, 'id'])).toBe('b');
    expect(valueAt(next, ['part'])).toBe(valueAt(job, ['part']));
    expect(valueAt(next, ['cuts', 0])).toBe(valueAt(job, ['cuts', 0]));
  });

  it('are made with what is missing round them, and taken out', () => {
    expect(withValue({}, ['limits', 'web'], 2)).toEqual({ limits: { web: 2 } });
    expect(withValue({ a: 1, b: 2 }, ['a'], undefined)).toEqual({ b: 2 });
    expect(withValue({ cuts: 'none' }, ['cuts', 0, 'id'], 'a')).toEqual({ cuts: [{ id: 'a' }] });
  });

  it('are not found in the prototype of an object', () => {
    expect(valueAt({}, ['constructor'])).toBeUndefined();
  });

  it('are taken out of lists and moved in them', () => {
    expect(valueAt(withoutMember(job, ['cuts'], 0), ['cuts'])).toEqual([{ id: 'b' }, { id: 'c' }]);
    expect(valueAt(withMoved(job, ['cuts'], 2, 0), ['cuts'])).toEqual([
      { id: 'c' },
      { id: 'a' },
      { id: 'b' },
    ]);
    expect(withMoved(job, ['cuts'], 0, 3)).toBe(job);
    expect(withMoved(job, ['cuts'], 0, -1)).toBe(job);
  });

  it('have pointers as RFC 6901 writes them', () => {
    // Examples of RFC 6901, section 5.
    expect(pointerOf(['foo', 0])).toBe('/foo/0');
    expect(pointerOf(['a/b'])).toBe('/a~1b');
    expect(pointerOf(['m~n'])).toBe('/m~0n');
    expect(pointerOf([])).toBe('');
  });
});

describe('a history', () => {
  it('goes back and forth step by step', () => {
    const after = changed(changed(startOf(1), 2, null), 3, null);
    expect(undone(after).present).toBe(2);
    expect(undone(undone(after)).present).toBe(1);
    expect(undone(undone(undone(after))).present).toBe(1);
    expect(redone(undone(after)).present).toBe(3);
    expect(redone(after)).toBe(after);
  });

  it('takes changes of one kind in a row as one step, until it is sealed', () => {
    const typed = changed(changed(changed(startOf(0), 1, 'x'), 12, 'x'), 123, 'x');
    expect(undone(typed).present).toBe(0);
    expect(undone(changed(sealed(typed), 9, 'x')).present).toBe(123);
    expect(undone(changed(typed, 9, 'y')).present).toBe(123);
  });

  it('forgets what was taken back once something else is done', () => {
    const other = changed(undone(changed(startOf('a'), 'b', null)), 'c', null);
    expect(redone(other)).toBe(other);
    expect(undone(other).present).toBe('a');
  });

  it('does not grow without end', () => {
    let history = startOf(0);
    for (let k = 1; k <= 2000; k++) history = changed(history, k, null);
    expect(history.past.length).toBe(500);
    expect(history.past.at(-1)).toBe(1999);
  });
});

describe('the unit of a length', () => {
  const units = (job: object, pointer: string) => unitIn(job as Json, pointer);
  const setups = [
    {
      id: 'a',
      readout: { resolution: 0.0002 },
      zero: { x: [{ units: 'mm', tip: 3, reads: 0 }, { move: 3 }] },
    },
  ];
  const inch = { units: 'mm', readout: { units: 'inch', resolution: 0.0002 }, setups };

  it('is that of the readout it is in; that of a setup shows what the readout of the job shows', () => {
    expect(units(inch, '/readout/resolution')).toBe('inch');
    expect(units(inch, '/setups/0/readout/resolution')).toBe('inch');
    const own = { ...inch, setups: [{ ...setups[0], readout: { units: 'mm', resolution: 0.005 } }] };
    expect(units(own, '/setups/0/readout/resolution')).toBe('mm');
  });

  it('is that of the job elsewhere, or of an action that says its own', () => {
    expect(units(inch, '/resolution')).toBe('mm');
    expect(units(inch, '/cuts/0/diameter')).toBe('mm');
    expect(units({ ...inch, units: 'inch' }, '/setups/0/zero/x/0/tip')).toBe('mm');
    // What the readout is set to or moved by is what it shows.
    expect(units(inch, '/setups/0/zero/x/0/reads')).toBe('inch');
    expect(units(inch, '/setups/0/zero/x/1/move')).toBe('inch');
    expect(units({ units: 'mm', setups }, '/setups/0/zero/x/0/reads')).toBe('mm');
    expect(units({ ...inch, readout: {} }, '/setups/0/readout/resolution')).toBe('mm');
    expect(units({ units: 'inch', setups }, '/setups/0/readout/resolution')).toBe('inch');
  });
});

describe('a place of a job', () => {
  const list = (...members: Json[]): Json => ({ list: members });
  const [a, b, c]: Json[] = [{ id: 'a' }, { id: 'b' }, { id: 'c' }];

  it.each<[string, Json, number, Json, number | null]>([
    ['changed', list(1, 2, 3), 1, list(1, 20, 3), 1],
    ['changed to what another one is', list(1, 2, 3), 1, list(1, 3, 3), 1],
    ['changed from what another one is', list(1, 3, 3), 2, list(1, 3, 30), 2],
    ['moved', list(a as Json, b as Json, c as Json), 2, list(c as Json, a as Json, b as Json), 0],
    [
      'before which one was taken out',
      list(a as Json, b as Json, c as Json),
      2,
      list(a as Json, c as Json),
      1,
    ],
    ['before which one of its value was taken out', list(1, 1, 2), 1, list(1, 2), 0],
    ['before which one was put in', list(a as Json, b as Json), 1, list(a as Json, c as Json, b as Json), 2],
    ['taken out', list(a as Json, b as Json, c as Json), 1, list(a as Json, c as Json), null],
  ])('is found again where it was %s', (_, before, index, after, wanted) => {
    expect(followed(['list', index], before, after)).toEqual(wanted === null ? null : ['list', wanted]);
  });

  it('is followed through lists of lists', () => {
    const before: Json = { setups: [{ zero: { x: [1, 2] } }, { zero: { x: [3, 4] } }] };
    const after = withoutMember(before, ['setups'], 0);
    expect(followed(['setups', 1, 'zero', 'x', 1], before, after)).toEqual(['setups', 0, 'zero', 'x', 1]);
  });
});

describe('names', () => {
  const shop: Json = {
    cuts: [{ id: 'a' }, { id: 'b' }, { id: 'a' }],
    setups: [{ id: 's', cuts: ['b', 'a', 'a'] }],
    tools: [{ id: 't', cuts: ['a'] }],
    keepOut: [{ id: 'j', setup: 's' }, { id: 'k' }],
  };

  it('are found wherever they stand, for the first of a name alone', () => {
    expect(namesOf(shop, ['cuts'], 0)).toEqual([
      ['setups', 0, 'cuts', 1],
      ['setups', 0, 'cuts', 2],
      ['tools', 0, 'cuts', 0],
    ]);
    expect(namesOf(shop, ['cuts'], 2)).toEqual([]);
    expect(namesOf(shop, ['setups'], 0)).toEqual([['keepOut', 0, 'setup']]);
    expect(namesOf(shop, ['tools'], 0)).toEqual([]);
  });

  it('of tools of a drawer are found in the cuts that name them, and stay there when it is gone', () => {
    const drawn: Json = {
      drawer: [{ id: 'head' }, { id: 'drill' }],
      cuts: [{ tool: 'drill' }, { tool: 'head' }],
    };
    const names = namesOf(drawn, ['drawer'], 0);
    expect(names).toEqual([['cuts', 1, 'tool']]);
    expect(renamed(drawn, ['drawer', 0, 'id'], names, 'large head')).toMatchObject({
      drawer: [{ id: 'large head' }, {}],
      cuts: [{ tool: 'drill' }, { tool: 'large head' }],
    });
    expect(withoutNamed(drawn, ['drawer'], 0)).toMatchObject({
      drawer: [{ id: 'drill' }],
      cuts: [{}, { tool: 'head' }],
    });
  });

  it('go with what is taken out where they stand in lists, and stay where something belongs to it alone', () => {
    expect(withoutNamed(shop, ['cuts'], 0)).toMatchObject({
      cuts: [{ id: 'b' }, { id: 'a' }],
      setups: [{ cuts: ['b'] }],
      tools: [{ cuts: [] }],
    });
    expect(withoutNamed(shop, ['setups'], 0)).toMatchObject({ setups: [], keepOut: [{ setup: 's' }, {}] });
  });

  it('are found with the numbers of copies behind, which stay', () => {
    const row: Json = {
      cuts: [{ id: 'seat' }, { id: 'seat 9' }],
      repeat: [{ cuts: ['seat'], row: { step: [10, 0], count: 3 } }],
      setups: [{ id: 's', cuts: ['seat 2', 'seat 9'] }],
      tools: [{ id: 't', cuts: ['seat'] }],
    };
    const names = namesOf(row, ['cuts'], 0);
    expect(names).toEqual([
      ['setups', 0, 'cuts', 0],
      ['tools', 0, 'cuts', 0],
      ['repeat', 0, 'cuts', 0],
    ]);
    expect(renamed(row, ['cuts', 0, 'id'], names, 'rest')).toEqual({
      cuts: [{ id: 'rest' }, { id: 'seat 9' }],
      repeat: [{ cuts: ['rest'], row: { step: [10, 0], count: 3 } }],
      setups: [{ id: 's', cuts: ['rest 2', 'seat 9'] }],
      tools: [{ id: 't', cuts: ['rest'] }],
    });
  });
});
