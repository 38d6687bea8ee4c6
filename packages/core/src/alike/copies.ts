import { described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import { MAX_CUTS, MAX_NAME } from '../document/limits.js';
import type { JobDocument, RepeatDocument } from '../document/schema.js';
import { looksOf } from '../job/look-alike.js';
import { countOf } from './read-motions.js';

/** A cut that is made: the written one, or a copy of it. */
export interface Copy {
  /** Its own name: that of the cut where it is not repeated, else with a number from 1 on. */
  readonly id: string;
  /** Number of the written cut. */
  readonly cut: number;
  /** What takes the written cut there, in turn: repeats by number, and which of their motions. None for the written one. */
  readonly by: readonly { readonly repeat: number; readonly motion: number }[];
}

type Unnamed = Omit<Copy, 'id'>;

/**
 * All cuts that a job comes to, in the order in which they are made; with what is wrong with its repeats in themselves.
 * Where their geometry is at fault it makes no difference here.
 */
export function copiesOf({ cuts, repeat = [] }: JobDocument): {
  readonly copies: readonly Copy[];
  readonly issues: readonly JobIssue[];
} {
  const numbers = new Map(cuts.map(({ id }, k) => [id, k]));
  const issues: JobIssue[] = [];
  let made: readonly Unnamed[] = cuts.map((_, cut) => ({ cut, by: [] }));
  for (const [k, one] of repeat.entries()) {
    const found = namedIn(one, k, numbers);
    issues.push(...found.issues);
    const own = new Set(found.cuts);
    const count = made.filter(({ cut }) => own.has(cut)).length;
    const total = made.length + count * (countOf(one) - 1);
    if (total > MAX_CUTS) {
      const message = `makes ${total} cuts of the job; at most ${MAX_CUTS} are made`;
      return { copies: [], issues: [...issues, { path: `/repeat/${k}`, message }] };
    }
    const next = repeated(made, one, k, own);
    if (next === null) issues.push({ path: `/repeat/${k}/order`, message: APART });
    made = next ?? made;
  }
  const copies = numbered(made, cuts);
  return { copies, issues: [...issues, ...nameIssues(copies, cuts)] };
}

const APART =
  'is "place by place", but other cuts are made between those that are repeated; bring them together in "cuts", or repeat them cut by cut';

function namedIn(
  { cuts }: RepeatDocument,
  k: number,
  numbers: ReadonlyMap<string, number>,
): { readonly cuts: readonly number[]; readonly issues: readonly JobIssue[] } {
  const issues: JobIssue[] = [];
  const found: number[] = [];
  cuts.forEach((id, i) => {
    const path = `/repeat/${k}/cuts/${i}`;
    const number = numbers.get(id);
    if (number === undefined) {
      const message = `is ${described(id)}, but no cut has that id; name cuts as they are written, without a number behind`;
      issues.push({ path, message });
    } else if (found.includes(number)) {
      issues.push({ path, message: `is ${described(id)}, which is named before; name every cut once` });
    } else found.push(number);
  });
  return { cuts: found, issues };
}

/** The cuts with those of a repeat made again; null where they are to be made place by place and lie apart. */
function repeated(
  made: readonly Unnamed[],
  one: RepeatDocument,
  repeat: number,
  own: ReadonlySet<number>,
): readonly Unnamed[] | null {
  const times = countOf(one);
  const again = (items: readonly Unnamed[]): Unnamed[] =>
    Array.from({ length: times - 1 }, (_, motion) =>
      items.map(({ cut, by }) => ({ cut, by: [...by, { repeat, motion }] })),
    ).flat();
  if (one.order !== 'place by place') {
    const last = new Map(made.map(({ cut }, k) => [cut, k]));
    return made.flatMap((item, k) => {
      if (!own.has(item.cut) || last.get(item.cut) !== k) return [item];
      return [item, ...again(made.filter(({ cut }) => cut === item.cut))];
    });
  }
  const first = made.findIndex(({ cut }) => own.has(cut));
  if (first < 0) return made;
  const end = made.findLastIndex(({ cut }) => own.has(cut)) + 1;
  const run = made.slice(first, end);
  if (run.some(({ cut }) => !own.has(cut))) return null;
  return [...made.slice(0, end), ...again(run), ...made.slice(end)];
}

/** A cut that is made several times has a number behind its name. */
function numbered(made: readonly Unnamed[], cuts: JobDocument['cuts']): Copy[] {
  const many = new Set(made.flatMap(({ cut, by }) => (by.length > 0 ? [cut] : [])));
  const counts = new Map<number, number>();
  return made.map(({ cut, by }) => {
    const id = cuts[cut]?.id ?? '';
    if (!many.has(cut)) return { id, cut, by };
    const number = (counts.get(cut) ?? 0) + 1;
    counts.set(cut, number);
    return { id: `${id} ${number}`, cut, by };
  });
}

/** Copies whose name another cut has already, as written or as a copy, and those whose name is too long. */
function nameIssues(copies: readonly Copy[], cuts: JobDocument['cuts']): JobIssue[] {
  const written = new Map(cuts.map(({ id }, k) => [looksOf(id), k]));
  const told = new Set<number>();
  return copies.flatMap(({ id, cut }): JobIssue[] => {
    const own = cuts[cut]?.id ?? '';
    if (id === own || told.has(cut)) return [];
    const other = written.get(looksOf(id));
    if (other !== undefined && other !== cut) {
      told.add(cut);
      const message = `is ${described(cuts[other]?.id)}, which is taken for a copy of cut ${cut}, ${described(own)}; give one of the two another name`;
      return [{ path: `/cuts/${other}/id`, message }];
    }
    if (id.length <= MAX_NAME) return [];
    told.add(cut);
    const message = `is so long that a copy's name has ${id.length} characters; it has at most ${MAX_NAME}`;
    return [{ path: `/cuts/${cut}/id`, message }];
  });
}
