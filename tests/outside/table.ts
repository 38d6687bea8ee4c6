import { readFileSync } from 'node:fs';
import { type Reference, worstOf } from './reference.js';
import { references } from './references.js';

/** Deviations smaller than this are the rounding of doubles, which differs from one way of adding up to another. */
const ROUNDING = 1e-11;

/** A row of the table, as worked out. */
export interface Row {
  readonly reference: Reference;
  readonly values: number;
  readonly deviation: number;
  readonly ofAllowed: number;
}

/** All references, each compared anew. */
export async function rows(): Promise<readonly Row[]> {
  return Promise.all(
    references.map(async (reference) => {
      const pairs = await reference.pairs();
      return { reference, values: pairs.length, ...worstOf(pairs) };
    }),
  );
}

/** The page docs/outside-checks.md, whose text above the table is kept. */
export function page(current: string, all: readonly Row[]): string {
  const head = current.slice(0, current.indexOf(TABLE));
  const lines = all.map(line);
  return `${head}${TABLE}\n|--|--|--|--|--|\n${lines.join('\n')}\n`;
}

const TABLE = '| reference | kind | what it checks | values | largest deviation |';

function line({ reference, values, deviation }: Row): string {
  const { letters, source, kind, checks } = reference;
  const name = letters === undefined ? source : `${source} (${letters})`;
  const shown = deviation < ROUNDING ? 'under 1e-11' : deviation.toExponential(0);
  return `| ${name} | ${kind} | ${checks} | ${values} | ${shown} |`;
}

/** The letters of the sources that docs/maths.md lists. */
export function lettersInMaths(): readonly string[] {
  const text = readFileSync(new URL('../../docs/maths.md', import.meta.url), 'utf8');
  return [...text.matchAll(/^- \*\*(\w+)\*\*/gm)].map(([, letters]) => letters ?? '');
}
