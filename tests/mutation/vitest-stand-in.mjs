/* What the tests take from vitest, for running them many thousand times in one process: see runner.mjs. */
import { readFileSync } from 'node:fs';
import { format } from 'node:util';
import { JestAsymmetricMatchers, JestChaiExpect, JestExtend } from '@vitest/expect';
import * as chai from 'chai';

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

export const expect = chai.expect;

expect.extend(expect, {
  /** In place of `toMatchFileSnapshot`, which the runner writes so with the place of the test. */
  toBeFile(text, test, file) {
    const pass = text === readFileSync(new URL(file, test), 'utf8');
    return { pass, message: () => `is not what ${file} has` };
  },
});

/** Tests in the order in which they are declared: `{ name, body }`. */
export const tests = [];
const names = new Map();
let path = [];

export function describe(name, body) {
  const outer = path;
  path = [...path, name];
  body();
  path = outer;
}

export function it(name, body) {
  const full = [...path, name].join(' > ');
  const count = names.get(full) ?? 0;
  names.set(full, count + 1);
  tests.push({ name: count === 0 ? full : `${full} (${count + 1})`, body });
}

const each =
  (declare) =>
  (rows) =>
  (name, body, ...rest) => {
    for (const row of rows) {
      const values = Array.isArray(row) ? row : [row];
      declare(titled(name, values), () => body(...values), ...rest);
    }
  };

export { it as test };

describe.each = each(describe);
it.each = each(it);

/** A name with its `%s` and `$key` filled in. */
function titled(name, values) {
  const [first] = values;
  const keyed = name.replace(/\$(\w+)/g, (all, key) =>
    first?.[key] === undefined ? all : String(first[key]),
  );
  const wanted = keyed.match(/%[sdifjo]/g)?.length ?? 0;
  return format(keyed, ...values.slice(0, wanted));
}
