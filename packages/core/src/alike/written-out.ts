/*
 * Room: cuts that repeat, written out one by one; the mirrored twin of a part.
 * In: cuts with `repeat`, motions.
 * Out: a plain document without repeats.
 */

import { described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import { MAX_LENGTH } from '../document/limits.js';
import type { CutDocument, JobDocument } from '../document/schema.js';
import { edgeBounds } from '../geometry/measure.js';
import { shownNumber } from '../geometry/shown.js';
import type { Faults } from '../job/faults.js';
import type { JobCut } from '../job/plan.js';
import { pointOf, readEdges } from '../job/read-edges.js';
import { type Copy, copiesOf } from './copies.js';
import type { Motion } from './motion.js';
import { plainCut } from './plain-cut.js';
import { motionsOf, type NamedPart } from './read-motions.js';
import { samePlaceIssues } from './same-place.js';
import { namesSpread, type Spread } from './spread.js';

/** A job with every copy of a cut written out as a cut of its own. */
export interface WrittenOut {
  readonly document: JobDocument;
  readonly copies: readonly Copy[];
  /** The same faults, taken down where the job is written by those who read it as it is written out. */
  readonly faults: Faults;
}

/** What the cuts of a job are read to be; null for one with faults. */
export type ReadCuts = readonly (JobCut | null)[];

/**
 * A job without repeats: each copy stands in the list of cuts, and setups and tools name copies one by one. Null where the
 * repeats cannot be told; their faults are taken down. A cut with faults of its own is copied as it stands.
 */
export function writtenOut(
  document: JobDocument,
  read: ReadCuts,
  part: NamedPart | null,
  faults: Faults,
): WrittenOut | null {
  const isSound = faults.sound('/repeat') && faults.holds('/cuts');
  if (!isSound || !document.cuts.every((cut, k) => hasId(cut) && faults.sound(`/cuts/${k}/id`))) return null;
  const { copies, issues } = copiesOf(document);
  faults.add([...issues, ...alongIssues(document)]);
  if (issues.length > 0) return null;
  const motions = part === null ? null : allMotions(document, part, faults);
  const motionOf = ({ by }: Copy) => by.flatMap(({ repeat, motion }) => motions?.[repeat]?.[motion] ?? []);
  const cuts = copies.map((copy): CutDocument => {
    const written = document.cuts[copy.cut] as CutDocument;
    const own = read[copy.cut] ?? null;
    if (copy.by.length === 0 || own === null || motions === null) return { ...written, id: copy.id };
    return plainCut(written, own, copy.id, motionOf(copy));
  });
  if (motions !== null) {
    faults.add(farIssues(cuts, copies, read));
    faults.add(samePlaceIssues(copies, read, motionOf));
  }
  return spreadOut(document, cuts, copies, faults);
}

function spreadOut(
  document: JobDocument,
  cuts: readonly CutDocument[],
  copies: readonly Copy[],
  faults: Faults,
): WrittenOut {
  const setups = namesSpread(document, 'setups', copies, faults);
  const tools = namesSpread(document, 'tools', copies, faults);
  const { repeat: _, ...plain } = document;
  return {
    copies,
    document: {
      ...plain,
      cuts,
      ...(setups === null ? {} : { setups: setups.members }),
      ...(tools === null ? {} : { tools: tools.members }),
    } as JobDocument,
    faults: faults.through(placeIn(copies, { setups, tools })),
  };
}

/** The motions of each repeat; null where one is at fault. */
function allMotions(
  { repeat = [] }: JobDocument,
  part: NamedPart,
  faults: Faults,
): readonly (readonly Motion[])[] | null {
  const all = repeat.map((one, k) => faults.take(motionsOf(one, `/repeat/${k}`, part)));
  return all.some((one) => one === null) ? null : (all as (readonly Motion[])[]);
}

/** A path along the outline has no copy: there is no second outline for it to follow. */
function alongIssues({ cuts, repeat = [] }: JobDocument): JobIssue[] {
  const along = new Set(cuts.flatMap((cut) => (isAlong(cut) ? [cut.id] : [])));
  return repeat.flatMap((one, k) =>
    one.cuts.flatMap((id, i): JobIssue[] => {
      if (!along.has(id)) return [];
      const message = `is ${described(id)}, whose path follows the outline of the part, and a copy would follow nothing; give it a path of its own, or write each one out`;
      return [{ path: `/repeat/${k}/cuts/${i}`, message }];
    }),
  );
}

// The cuts of a job with faults may be anything.
function hasId(cut: CutDocument): boolean {
  return typeof cut === 'object' && cut !== null && typeof cut.id === 'string';
}

function isAlong(cut: CutDocument): boolean {
  const { path } = (cut ?? {}) as { readonly path?: unknown };
  return typeof path === 'object' && path !== null && 'along' in path;
}

/** Copies that lie where no coordinate goes. */
function farIssues(cuts: readonly CutDocument[], copies: readonly Copy[], read: ReadCuts): JobIssue[] {
  const told = new Set<number>();
  return cuts.flatMap((cut, k): JobIssue[] => {
    const { by, id, cut: own } = copies[k] as Copy;
    const last = by.at(-1);
    // One with faults of its own is told of where it is written.
    if ((read[own] ?? null) === null) return [];
    if (last === undefined || told.has(last.repeat)) return [];
    const farthest = farthestOf(cut);
    if (farthest <= MAX_LENGTH) return [];
    told.add(last.repeat);
    const message = `puts ${described(id)} ${shownNumber(farthest)} from zero; coordinates go up to ${MAX_LENGTH}`;
    return [{ path: `/repeat/${last.repeat}`, message }];
  });
}

function farthestOf(cut: CutDocument): number {
  const numbers =
    cut.kind !== 'swept'
      ? Array.isArray(cut.center)
        ? Object.values(pointOf(cut.center as readonly [number, number]))
        : []
      : pathNumbers(cut);
  return numbers.reduce((most, n) => Math.max(most, Math.abs(n)), 0);
}

function pathNumbers({ path }: CutDocument & { readonly kind: 'swept' }): number[] {
  if (!('edges' in path)) return [];
  const read = readEdges(path.edges, '');
  return read.ok ? read.value.flatMap((edge) => Object.values(edgeBounds(edge))) : [];
}

/** From a place in the job as written out to the one as it is written. */
function placeIn(
  copies: readonly Copy[],
  spreads: { readonly setups: Spread | null; readonly tools: Spread | null },
): (issue: JobIssue) => JobIssue {
  return (issue) => {
    const [, list = '', first = '', key = '', second = '', ...rest] = issue.path.split('/');
    if (list === 'cuts' && first !== '') {
      const copy = copies[Number(first)];
      const path = issue.path.replace(/^\/cuts\/\d+/, `/cuts/${copy?.cut}`);
      const isCopy = copy !== undefined && copy.by.length > 0;
      return { path, message: isCopy ? `of copy ${described(copy.id)} ${issue.message}` : issue.message };
    }
    if ((list !== 'setups' && list !== 'tools') || key !== 'cuts' || second === '') return issue;
    const from = spreads[list]?.from[Number(first)]?.[Number(second)];
    if (from === undefined) return issue;
    return { ...issue, path: ['', list, first, key, from, ...rest].join('/') };
  };
}
