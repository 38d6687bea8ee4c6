import { axesOf, inUnit, type Report, type ReportSetup } from '@edgebite/core';
import type { ZeroLink } from '../pen/zero-words.js';
import type { Place } from '../view/edges.js';
import { asItLies } from '../view/view.js';

/** An axis of the machine in which a zero is found. */
export type ZeroAxis = 'x' | 'y' | 'z';

/** A stretch along an axis: a block, a feeler or a measured length. */
export interface Between {
  readonly from: number;
  readonly to: number;
  readonly link: ZeroLink;
}

/** What there is to see once an action is done, along the axis as the part lies, in the unit of the report. */
export interface ZeroScene {
  /** Number of the action, from 0. */
  readonly action: number;
  readonly links: readonly ZeroLink[];
  /** Whether the part is there yet: it is put against a stop after that was touched. */
  readonly isThere: boolean;
  /** The face of a stop, and which way it looks along the axis. */
  readonly stop: { readonly id: string; readonly at: number; readonly outward: 1 | -1 } | null;
  readonly blocks: readonly Between[];
  /** What is measured in this action. */
  readonly measured: readonly Between[];
  /** Where the spindle or the end of the tool comes to; null in an action that leaves it where it is. */
  readonly spindle: {
    readonly at: number;
    /** How wide what touches is; null over a middle, and in Z. */
    readonly across: number | null;
    /** Where it stood when it touched, and what: null where this action touches nothing. */
    readonly touched: { readonly at: number; readonly face: number } | null;
  } | null;
  /** In Z: how thick the feeler is that lies under the tool. */
  readonly feeler: number;
  /** What has been come to, and what the readout shows over it; null where it is not set. */
  readonly reached: { readonly of: string; readonly at: number; readonly reads: number | null };
}

/** The scenes of an axis, one for each action; none if the setup has no zero there. */
export function scenesOf(report: Report, setup: ReportSetup, axis: ZeroAxis): ZeroScene[] {
  const row = setup.zero[axis];
  if (row === null || row.links.length === 0) return [];
  const { units } = axis === 'z' ? setup.heights : setup.readout;
  // The numbers of a quill grow downwards.
  const sign = axis === 'z' && setup.heights.on === 'quill' ? -1 : 1;
  const own = (value: number) => sign * inUnit(value, units, report.units);
  const goesOn = ({ kind }: ZeroLink) => ['block', 'measured', 'bears'].includes(kind);
  const way = row.links.filter(goesOn).reduce((sum, { offset }) => sum + own(offset), 0);
  const first = row.links[0] as ZeroLink;
  const start = endOf(report, setup, axis) - way;
  const isStop = first.of?.startsWith('stop:') === true;
  const bears = row.links.findIndex(({ kind }) => kind === 'bears');
  const scenes: ZeroScene[] = [];
  let [at, spindle, of] = [start, start - own(first.offset), first.of ?? ''];
  const across = axis === 'z' || first.kind !== 'touch' ? null : acrossOf(first, report);
  const blocks: Between[] = [];
  for (const [action, links] of byAction(row.links)) {
    const measured: Between[] = [];
    for (const link of links) {
      const to = at + (goesOn(link) ? own(link.offset) : 0);
      if (link.of === null && (link.kind === 'block' || link.kind === 'measured'))
        blocks.push({ from: at, to, link });
      else if (link.kind === 'measured') measured.push({ from: at, to, link });
      if (link.kind === 'move') spindle -= own(link.offset);
      if (goesOn(link) && link.of !== null) of = link.of;
      at = to;
    }
    const last = links.at(-1) as ZeroLink;
    scenes.push({
      action,
      links,
      isThere: !isStop || (bears >= 0 && row.links.indexOf(last) >= bears),
      stop: isStop
        ? { id: (first.of as string).slice('stop:'.length), at: start, outward: first.offset > 0 ? -1 : 1 }
        : null,
      blocks: [...blocks],
      measured,
      spindle: links.some(goesOn)
        ? null
        : {
            at: spindle,
            across,
            touched: links.some(({ kind }) => kind === 'touch')
              ? { at: start - own(first.offset), face: start }
              : null,
          },
      feeler: axis === 'z' ? Math.abs(own(first.offset)) : 0,
      reached: { of, at, reads: last.at },
    });
  }
  return scenes;
}

function acrossOf({ length, units }: ZeroLink, report: Report): number {
  return inUnit(length ?? 0, units, report.units);
}

/** Links by the action that they belong to, in order. */
function byAction(links: readonly ZeroLink[]): ReadonlyMap<number, readonly ZeroLink[]> {
  const all = new Map<number, ZeroLink[]>();
  for (const link of links) all.set(link.action, [...(all.get(link.action) ?? []), link]);
  return all;
}

/** Where the place lies that a chain ends at: along the axis as the part lies, or over the face that it lies on. */
function endOf(report: Report, setup: ReportSetup, axis: ZeroAxis): number {
  const row = setup.zero[axis];
  if (row === null) return 0;
  if (axis !== 'z') {
    const zero = asItLies(axesOf(setup), setup.zero.at as Place)[axis === 'x' ? 0 : 1];
    return zero + inUnit(row.at, setup.readout.units, report.units);
  }
  if (row.place === 'top') return report.thickness;
  return report.keepOut.find(({ id }) => id === row.place)?.to ?? 0;
}
