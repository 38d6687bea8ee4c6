import { describe, expect, it } from 'vitest';
import { forgetful, RunningMemory } from './memory.js';

/** Counts how often something is made. */
function counted<T>(value: T) {
  const made = { times: 0 };
  return {
    made,
    make: () => {
      made.times += 1;
      return value;
    },
  };
}

describe('a running memory', () => {
  it('gives what it gave from the same things, and makes it anew from others', () => {
    const memory = new RunningMemory();
    const [a, b] = [{ size: 1 }, { size: 1 }];
    const { made, make } = counted('done');
    memory.next();
    memory.of('step 1', [a, 3], make);
    memory.next();
    expect(memory.of('step 1', [a, 3], make)).toBe('done');
    expect(made.times).toBe(1);
    memory.of('step 1', [b, 3], make);
    memory.of('step 1', [b, 4], make);
    memory.of('step 1', [b, 4, undefined], make);
    memory.of('step 2', [b, 4, undefined], make);
    expect(made.times).toBe(5);
  });

  it('forgets what one job has not asked for', () => {
    const memory = new RunningMemory();
    const { made, make } = counted(7);
    memory.of('step', [], make);
    memory.next();
    memory.next();
    memory.of('step', [], make);
    expect(made.times).toBe(2);
  });

  it('keeps nothing of what could not be made', () => {
    const memory = new RunningMemory();
    const fails = () => memory.of('step', [], () => JSON.parse('{') as unknown);
    expect(fails).toThrow(SyntaxError);
    expect(fails).toThrow(SyntaxError);
    expect(memory.of('step', [], () => 1)).toBe(1);
  });

  it.each([
    [{ a: [1, { b: null }] }, { a: [1, { b: null }] }],
    [[], []],
    [Number.NaN, Number.NaN],
  ])('gives the earlier of two that are alike: %j', (before, after) => {
    const memory = new RunningMemory();
    memory.same('cut', before);
    memory.next();
    expect(memory.same('cut', after)).toBe(before);
  });

  it.each([
    [{ a: 1 }, { a: 1, b: undefined }],
    [
      { a: 1, b: undefined },
      { a: 1, c: undefined },
    ],
    [
      [1, 2],
      [1, 2, 3],
    ],
    [[], {}],
    [{ a: [1] }, { a: [2] }],
    [null, {}],
    [0, -0],
  ])('gives the later of two that are not: %j and %j', (before, after) => {
    const memory = new RunningMemory();
    memory.same<unknown>('cut', before);
    memory.next();
    expect(memory.same<unknown>('cut', after)).toBe(after);
  });

  it('keeps the places of its parts apart', () => {
    const memory = new RunningMemory();
    const { made, make } = counted(1);
    memory.of('step', [], make);
    memory.within('by cut').of('step', [], make);
    memory.within('by cut').within('last').of('step', [], make);
    expect(made.times).toBe(3);
    memory.within('by cut').of('step', [], make);
    expect(made.times).toBe(3);
    const cut = [1];
    memory.within('by cut').same('cut', cut);
    expect(memory.within('by cut').same('cut', [1])).toBe(cut);
  });
});

it('a forgetful one makes all anew', () => {
  const { made, make } = counted(1);
  forgetful.of('step', [], make);
  forgetful.within('part').of('step', [], make);
  expect(made.times).toBe(2);
  const cut = [1];
  expect(forgetful.same('cut', cut)).toBe(cut);
});
