import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonFault } from './json-fault.js';

describe('jsonFault', () => {
  it.each([
    ['', 0],
    ['  ', 2],
    ['{', 1],
    ['{"a"', 4],
    ['{"a":', 5],
    ['{"a":1', 6],
    ['{"a":1,}', 7],
    ['{,}', 1],
    ['{1:2}', 1],
    ['{"a" 1}', 5],
    ['{"a":1 "b":2}', 7],
    ['[1,]', 3],
    ['[1 2]', 3],
    ['[1}', 2],
    ['{"a":1]', 6],
    ['1 2', 2],
    [']', 0],
    ['01', 1],
    ['+1', 0],
    ['.5', 0],
    ['1.', 1],
    ['[NaN]', 1],
    ['[nul]', 1],
    ['tru', 0],
    ['"abc', 4],
    ['"a\nb"', 2],
    ['"a\\qb"', 2],
    ['"a\\u12g4"', 2],
    ['[1,"a" "b"]', 7],
    ["{'a':1}", 1],
    ['{"a":1}x', 7],
  ])('finds the fault in %s at %d', (text, position) => {
    expect(() => JSON.parse(text)).toThrow(SyntaxError);
    expect(jsonFault(text)).toBe(position);
  });

  // The engine's own parser is the reference: what comes before the fault can be mended, what is there cannot.
  it('agrees with the engine on what can be gone on with', () => {
    fc.assert(
      fc.property(
        fc.json({ maxDepth: 3 }),
        fc.nat(),
        fc.constantFrom(...'{}[]:,"1xn \n\\'),
        (text, where, sign) => {
          const at = where % (text.length + 1);
          const broken = text.slice(0, at) + sign + text.slice(at);
          if (isJson(broken)) return;
          const position = jsonFault(broken);
          expect(mendable(broken.slice(0, position))).toBe(true);
          // A broken word, number or escape is named where it starts.
          if (position < broken.length && !/[\w.+\\-]/.test(broken[position] as string)) {
            expect(mendable(broken.slice(0, position + 1))).toBe(false);
          }
        },
      ),
      { numRuns: 3000 },
    );
  });

  it('gets through long texts', () => {
    expect(jsonFault(`["${'\\n'.repeat(1_000_000)}" x]`)).toBe(2_000_004);
  });
});

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

/** Whether some ending makes JSON of a text that breaks off: the rest of a text in quotes, a value, and all closing brackets. */
function mendable(text: string): boolean {
  const brackets = text.replace(/"(?:[^"\\]|\\.)*("|$)/g, '').replace(/[^[\]{}]/g, '');
  const open: string[] = [];
  for (const sign of brackets) {
    if ('[{'.includes(sign)) open.push(sign);
    else open.pop();
  }
  const closing = open.reverse().map((sign) => (sign === '[' ? ']' : '}'));
  const quotes = ['', '"', 'n"'];
  const values = ['', '0', ':0', '"":0'];
  return quotes.some((quote) => values.some((value) => isJson(text + quote + value + closing.join(''))));
}
