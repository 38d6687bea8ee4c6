import { readFileSync } from 'node:fs';
import { gaps } from './gaps.js';
import { KINDS, type Kind, type Reference, worstOf } from './reference.js';
import { references } from './references.js';

/** Deviations smaller than this are the rounding of doubles, which differs from one way of adding up to another. */
const ROUNDING = 1e-11;

/** A row of the table, as worked out. */
export interface Row {
  readonly reference: Reference;
  readonly values: number;
  readonly deviation: number;
  readonly ofAllowed: number;
  readonly allowed: readonly [number, number];
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

/** The page docs/outside-checks.md, whose text above the list of kinds is kept. */
export function page(current: string, all: readonly Row[]): string {
  const head = current.slice(0, current.indexOf(KIND_HEAD));
  const kinds = (Object.keys(KINDS) as Kind[]).map((kind) => kindLine(kind, all));
  return [
    `${head}${KIND_HEAD}\n|--|--|--|--|`,
    ...kinds,
    `\n${TABLE}\n|--|--|--|--|--|--|--|`,
    ...all.map(line),
    `\n## Without an outside value\n\n| quantity | why |\n|--|--|`,
    ...gaps.map(({ quantity, why }) => `| ${quantity} | ${why} |`),
    '',
  ].join('\n');
}

const KIND_HEAD = '| kind | what that is | rows | values |';

const TABLE = '| quantity | reference | kind | what it checks | values | met to | largest deviation |';

function kindLine(kind: Kind, all: readonly Row[]): string {
  const own = all.filter(({ reference }) => reference.kind === kind);
  const values = own.reduce((sum, row) => sum + row.values, 0);
  return `| ${kind} | ${KINDS[kind]} | ${own.length} | ${values} |`;
}

function line({ reference, values, deviation, allowed }: Row): string {
  const { quantity, letters, source, kind, checks, agrees } = reference;
  const name = letters === undefined ? source : `${source} (${letters})`;
  const cells = agrees === true ? ['agrees', 'none'] : [allowedText(allowed), deviationText(deviation)];
  return `| ${[quantity, name, kind, checks, values, ...cells].join(' | ')} |`;
}

function deviationText(deviation: number): string {
  return deviation < ROUNDING ? 'under 1e-11' : deviation.toExponential(0);
}

/** Between what tolerances values are met; rounding only where it is that. */
function allowedText([least, most]: readonly [number, number]): string {
  const text = (within: number) => (within <= ROUNDING ? 'rounding' : within.toExponential(0));
  return text(least) === text(most) ? text(most) : `${text(least)} to ${text(most)}`;
}

/** The letters of the sources that docs/maths.md lists. */
export function lettersInMaths(): readonly string[] {
  const text = readFileSync(new URL('../../docs/maths.md', import.meta.url), 'utf8');
  return [...text.matchAll(/^- \*\*(\w+)\*\*/gm)].map(([, letters]) => letters ?? '');
}
