import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { later, once } from './once.js';

describe('a constant made when it is first asked for', () => {
  it('is made then, and once', () => {
    let times = 0;
    const made = once(() => {
      times += 1;
      return { times };
    });
    expect(times).toBe(0);
    expect(made()).toBe(made());
    expect(times).toBe(1);
  });

  it('is asked for again where it could not be made', () => {
    const text = ['{', '{}'];
    const made = once(() => JSON.parse(text.shift() ?? '') as object);
    expect(made).toThrow(SyntaxError);
    expect(made()).toEqual({});
  });
});

describe('a shape made when it is first asked for', () => {
  it('has its keys in order, and the schemas of a plain one', () => {
    const asked: string[] = [];
    const schema = z
      .strictObject(
        later({
          b: () => {
            asked.push('b');
            return z.number();
          },
          a: () => {
            asked.push('a');
            return z.string().optional();
          },
        }),
      )
      .meta({ title: 'a shape' });
    expect(asked).toEqual([]);
    expect(schema.parse({ b: 1 })).toEqual({ b: 1 });
    expect(schema.safeParse({ b: 1, c: 2 }).success).toBe(false);
    expect(schema.safeParse({ b: '1' }).success).toBe(false);
    expect(Object.keys(schema.shape)).toEqual(['b', 'a']);
    expect(schema.shape.b).toBe(schema.shape.b);
    expect(asked).toEqual(['b', 'a']);
  });
});
