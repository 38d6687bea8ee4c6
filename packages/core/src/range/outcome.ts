import { cutSource } from '../geometry/source.js';
import type { FindingCode } from '../report/finding-codes.js';
import type { Finding, Report, ReportCut, ReportPiece } from '../report/report-schema.js';
import { isOnShape } from './shape.js';

/** What a cut is to the part, in the words of a report. */
export type RangeRelation = ReportCut['relation'];

/** A web or a knife edge under the limit, by what it lies between; one in each slab that it is found in. */
export interface RangeMark {
  readonly between: readonly [string, string];
  /** Index into the slabs of a report, going up. */
  readonly slab: number;
}

/** A finding without its sentence and its place, and about nothing but edges and cuts. */
export interface RangeFinding {
  readonly level: Finding['level'];
  readonly code: FindingCode;
  readonly about: readonly string[];
}

/** What comes of a job, without the numbers that change all the time. */
export interface Outcome {
  /** Of the cut that moves. */
  readonly relation: RangeRelation;
  /** How many pieces there are of each role. */
  readonly pieces: Readonly<Record<ReportPiece['role'], number>>;
  readonly webs: readonly RangeMark[];
  readonly knifeEdges: readonly RangeMark[];
  readonly findings: readonly RangeFinding[];
}

/** One thing that changes at a value, seen as the free number grows. */
export type RangeChange =
  | { readonly what: 'relation'; readonly from: RangeRelation; readonly to: RangeRelation }
  | {
      readonly what: 'pieces';
      readonly role: ReportPiece['role'];
      readonly from: number;
      readonly to: number;
    }
  | ({ readonly what: 'web' | 'knife edge'; readonly change: 'comes' | 'goes' } & RangeMark)
  | ({ readonly what: 'finding'; readonly change: 'comes' | 'goes' } & RangeFinding);

/** The roles of pieces, in the order in which they are told. */
const ROLES = [
  'kept',
  'slug',
  'held slug',
  'hanging',
  'offcut',
] as const satisfies readonly ReportPiece['role'][];

/** Names of a report that stand for the same thing in every report on the job. */
const LASTING = /^(outline|hole|cut|keepOut):/;

/** The outcome that a report tells of, with an eye on one of the cuts. */
export function outcomeOf(report: Report, cut: number): Outcome {
  const count = (role: ReportPiece['role']) => report.pieces.filter((piece) => piece.role === role).length;
  return {
    relation: (report.cuts[cut] as ReportCut).relation,
    pieces: {
      kept: count('kept'),
      slug: count('slug'),
      'held slug': count('held slug'),
      hanging: count('hanging'),
      offcut: count('offcut'),
    },
    webs: inOrder(websIn(report)),
    knifeEdges: inOrder(knifeEdgesIn(report)),
    findings: findingsIn(report),
  };
}

/**
 * From this share of a limit on, metal is as thick as the limit and an edge as blunt: where both are the same number
 * on the drawing, rounding would have it one way at one value and the other at the next.
 */
const AT_LIMIT = 1 - 1e-9;

function websIn({ webs, limits }: Report): RangeMark[] {
  return webs.filter(({ thickness }) => thickness < limits.web * AT_LIMIT).map(markOf);
}

function knifeEdgesIn({ knifeEdges, limits }: Report): RangeMark[] {
  return knifeEdges.filter(({ angle }) => angle < limits.knifeEdge * AT_LIMIT).map(markOf);
}

function markOf({ between, slab }: RangeMark): RangeMark {
  return { between: [between[0], between[1]], slab };
}

/**
 * The findings of a report as they can be compared with those of another report on the job. One on a web or a knife
 * edge tells of all slabs in which it is at the same place, whatever it is between there; here each pair of names has
 * as many as there are in the slab that has the most, so that it does not matter which of them happen to be in line.
 */
export function findingsIn(report: Report): readonly RangeFinding[] {
  return inOrder(
    report.findings
      .filter((found) => isOnShape(found) && found.code !== WEB && found.code !== KNIFE_EDGE)
      .map(lastingOf)
      .concat(
        markFindings(report, WEB, websIn(report)),
        markFindings(report, KNIFE_EDGE, knifeEdgesIn(report)),
      ),
  );
}

/** A finding with the names alone that stand for the same thing in every report on the job. */
export function lastingOf({ level, code, about }: Report['findings'][number]): RangeFinding {
  return { level, code, about: [...new Set(about.filter((name) => LASTING.test(name)))].sort() };
}

/** The codes of findings on webs and on knife edges. */
const WEB = 'thin-web';
const KNIFE_EDGE = 'knife-edge';

function markFindings(report: Report, code: FindingCode, marks: readonly RangeMark[]) {
  const found = report.findings.find((finding) => finding.code === code);
  if (found === undefined) return [];
  const counts = new Map<string, number>();
  const most = new Map<string, { readonly mark: RangeMark; readonly count: number }>();
  for (const mark of marks) {
    const inSlab = `${keyOf(mark.between)} ${mark.slab}`;
    const count = (counts.get(inSlab) ?? 0) + 1;
    counts.set(inSlab, count);
    const known = most.get(keyOf(mark.between));
    if (known === undefined || known.count < count) most.set(keyOf(mark.between), { mark, count });
  }
  return [...most.values()].flatMap(({ mark, count }) =>
    Array.from({ length: count }, () => ({
      level: found.level,
      code,
      about: [...new Set(mark.between)].sort(),
    })),
  );
}

/** A text that two outcomes share only if they are the same. */
export function keyOf(outcome: unknown): string {
  return JSON.stringify(outcome);
}

function inOrder<T>(items: readonly T[]): T[] {
  return items
    .map((item) => ({ item, key: keyOf(item) }))
    .sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0))
    .map(({ item }) => item);
}

/** Findings on a cut that follow from its relation to the part. */
const BY_RELATION: readonly FindingCode[] = ['cut-misses', 'cut-grazes', 'cut-in-air'];

/** What of an outcome does not hang on the relation of the cut alone. */
export function besideRelation({ relation: _, findings, ...rest }: Outcome, id: string): unknown {
  const isAbout = ({ about }: RangeFinding) => about.includes(cutSource(id));
  const others = findings.filter((finding) => !(BY_RELATION.includes(finding.code) && isAbout(finding)));
  return { ...rest, findings: others };
}

/** What changes from one outcome to the next. */
export function changesBetween(before: Outcome, after: Outcome): RangeChange[] {
  const changes: RangeChange[] = [];
  if (before.relation !== after.relation) {
    changes.push({ what: 'relation', from: before.relation, to: after.relation });
  }
  for (const role of ROLES) {
    const [from, to] = [before.pieces[role], after.pieces[role]];
    if (from !== to) changes.push({ what: 'pieces', role, from, to });
  }
  const compare = <T>(
    one: readonly T[],
    other: readonly T[],
    told: (item: T, change: 'comes' | 'goes') => RangeChange,
  ) => {
    changes.push(...without(one, other).map((item) => told(item, 'goes')));
    changes.push(...without(other, one).map((item) => told(item, 'comes')));
  };
  compare(before.webs, after.webs, (mark, change) => ({ what: 'web', change, ...mark }));
  compare(before.knifeEdges, after.knifeEdges, (mark, change) => ({ what: 'knife edge', change, ...mark }));
  compare(before.findings, after.findings, (finding, change) => ({ what: 'finding', change, ...finding }));
  return changes;
}

/** What is in one list beyond what is in another, each as often as it is over. */
export function without<T>(items: readonly T[], others: readonly T[]): T[] {
  const left = new Map<string, number>();
  for (const other of others) left.set(keyOf(other), (left.get(keyOf(other)) ?? 0) + 1);
  return items.filter((item) => {
    const count = left.get(keyOf(item)) ?? 0;
    left.set(keyOf(item), count - 1);
    return count <= 0;
  });
}
