/*
 * Room: setups, zeros, named faces, batches and keep-outs read.
 * In: a document and its outline.
 * Out: `Setup` and keep-outs of the job, or faults.
 */

import type { LengthUnit } from '../datum/length-unit.js';
import { axesOf, type Lie } from '../datum/lie.js';
import type { AxisZero, HeightScale, Readout, Setup, Stop } from '../datum/setup.js';
import { described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import { MAX_SAME_CUT } from '../document/limits.js';
import type { ActionDocument, HeightActionDocument, JobDocument, SetupDocument } from '../document/schema.js';
import { SIDES } from '../document/schema-setups.js';
import { DEGREE } from '../geometry/angle.js';
import type { Faults } from '../job/faults.js';
import { idIssues } from '../job/ids.js';
import { DEFAULT_RESOLUTION, type PartName } from '../job/job.js';
import type { Region } from '../region/region.js';
import { readHeight } from './read-height.js';
import { readZero } from './read-zero.js';
import { type NumberedSetup, sameThingIssues } from './same-things.js';
import { orderIssues } from './setup-order.js';

/** The part of a job as far as it is sound: null where its outline is at fault itself. */
export interface ReadPart {
  readonly outline: Region | null;
  readonly names: readonly PartName[];
}

/**
 * The setups of a job; what is at fault is taken down and left out. What is sound is checked even where other things
 * are at fault already.
 */
export function readSetups(document: JobDocument, part: ReadPart, faults: Faults): Setup[] {
  if (!faults.holds('/setups') || !faults.sound('/units') || document.setups === undefined) return [];
  const { setups } = document;
  faults.add(idIssues(setups, '/setups', 'setup'));
  faults.add(cutIssues(document, faults));
  const read = setups.flatMap((setup, number): NumberedSetup[] => {
    const one = readSetup(document, setup, number, part, faults);
    return one === null ? [] : [{ setup: one, number }];
  });
  faults.add(sameThingIssues(read));
  if (faults.sound('/setups') && faults.sound('/cuts')) faults.add(orderIssues(document));
  return read.map(({ setup }) => setup);
}

function readSetup(
  document: JobDocument,
  setup: SetupDocument,
  number: number,
  { outline, names }: ReadPart,
  faults: Faults,
): Setup | null {
  const path = `/setups/${number}`;
  if (!faults.holds(path)) return null;
  const readout = readReadout(document, setup, path, faults);
  if (readout !== null) faults.add(unitIssues(document, setup, readout, path, faults));
  const stops = readStops(setup, path, names, faults);
  const lie: Lie = { flip: setup.flip ?? null, turn: setup.turn ?? 0 };
  const isLaid = faults.sound(`${path}/flip`) && faults.sound(`${path}/turn`);
  const zeroOf = (axis: 'x' | 'y'): AxisZero | null => {
    const at = `${path}/zero/${axis}`;
    if (!faults.sound(at) || outline === null || readout === null || stops === null || !isLaid) return null;
    const axes = axesOf(lie);
    const across = axes[axis === 'x' ? 'y' : 'x'];
    const part = { outline, names, axis, direction: axes[axis], across };
    const task = { part, stops, units: document.units, shows: readout.units };
    return faults.take(readZero(setup.zero[axis], at, task));
  };
  const [x, y] = [zeroOf('x'), zeroOf('y')];
  const heights = readout === null || !faults.sound(`${path}/quill`) ? null : scaleOf(setup, readout);
  const z = heightOf(document, setup, path, heights, faults);
  if (
    !faults.sound(path) ||
    readout === null ||
    heights === null ||
    stops === null ||
    x === null ||
    y === null
  )
    return null;
  const { id, name = null, cuts } = setup;
  const angleTolerance = (setup.angleTolerance ?? 0) * DEGREE;
  return { id, name, lie, angleTolerance, readout, heights, stops, zero: { x, y, z }, cuts };
}

/** What heights are read on. */
function scaleOf({ quill }: SetupDocument, readout: Readout): HeightScale {
  if (quill === undefined) return { ...readout, on: 'readout', sense: 1 };
  const { units = readout.units, graduation } = quill;
  return { units, resolution: graduation, on: 'quill', sense: -1 };
}

/** The zero of a setup in Z; null where it has none, or where that is at fault. */
function heightOf(
  document: JobDocument,
  setup: SetupDocument,
  path: string,
  heights: HeightScale | null,
  faults: Faults,
): AxisZero | null {
  const at = `${path}/zero/z`;
  const isSound = faults.sound(at) && faults.sound('/part/thickness') && faults.sound('/keepOut');
  if (!isSound || setup.zero.z === undefined || heights === null) return null;
  const parallels = (document.keepOut ?? [])
    .filter((one) => one.kind === 'parallel' && (one.setup === undefined || one.setup === setup.id))
    .map(({ id, to }) => ({ id, height: to }));
  const { units: shows, sense } = heights;
  const task = { thickness: document.part.thickness, parallels, units: document.units, shows, sense };
  return faults.take(readHeight(setup.zero.z, at, task));
}

/** The stops of a setup; null where they are at fault. */
function readStops(
  { stops = [] }: SetupDocument,
  path: string,
  names: readonly PartName[],
  faults: Faults,
): readonly Stop[] | null {
  const at = `${path}/stops`;
  if (!faults.sound(at)) return null;
  faults.add(idIssues(stops, at, 'stop'));
  const taken: readonly string[] = [...SIDES, 'top', 'bottom', ...names.map(({ name }) => name)];
  faults.add(
    stops.flatMap(({ id }, k): JobIssue[] =>
      taken.includes(id)
        ? [
            {
              path: `${at}/${k}/id`,
              message: `is ${described(id)}, which is a face of the part; give the stop another name`,
            },
          ]
        : [],
    ),
  );
  return faults.sound(at) ? stops : null;
}

/** The readout of a setup: what it does not say is as in the job. */
function readReadout(
  document: JobDocument,
  setup: SetupDocument,
  path: string,
  faults: Faults,
): Readout | null {
  const sound = ['/readout', '/resolution', `${path}/readout`].every((at) => faults.sound(at));
  if (!sound) return null;
  const ofJob = document.readout;
  const own = setup.readout;
  const units = own?.units ?? ofJob?.units ?? document.units;
  const jobUnits = ofJob?.units ?? document.units;
  const candidates = [
    { resolution: own?.resolution, units },
    { resolution: ofJob?.resolution, units: jobUnits },
    { resolution: document.resolution, units: document.units },
  ];
  const stated = candidates.find(({ resolution }) => resolution !== undefined);
  if (stated === undefined) return { units, resolution: DEFAULT_RESOLUTION[units] };
  if (stated.units === units) return { units, resolution: stated.resolution as number };
  const message = `is missing: this readout shows ${units}, and the resolution given elsewhere is in ${stated.units}; say the step that this one shows`;
  faults.add([{ path: `${path}/readout/resolution`, message }]);
  return null;
}

/** Where job, readout and actions are not all in one unit, every action that has a length must say its own. */
function unitIssues(
  document: JobDocument,
  setup: SetupDocument,
  readout: Readout,
  path: string,
  faults: Faults,
): JobIssue[] {
  const lists = (['x', 'y', 'z'] as const).flatMap((axis) => {
    const at = `${path}/zero/${axis}`;
    const actions: readonly (ActionDocument | HeightActionDocument)[] = faults.sound(at)
      ? (setup.zero[axis] ?? [])
      : [];
    return actions.flatMap((action, k) => measuresOf(action, `${at}/${k}`));
  });
  const used = new Set<LengthUnit>([
    document.units,
    readout.units,
    setup.quill?.units ?? readout.units,
    ...lists.flatMap(({ units }) => units ?? []),
  ]);
  if (used.size < 2) return [];
  return lists
    .filter(({ units, needed }) => units === undefined && needed)
    .map(({ at }) => ({
      path: `${at}/units`,
      message: 'is missing: this setup has both mm and inch, so say in which of them this is given',
    }));
}

interface Measure {
  readonly at: string;
  readonly units: LengthUnit | undefined;
  /** Whether it has a length or a tolerance, which have a unit. */
  readonly needed: boolean;
}

/** What of an action has a unit: itself, and the blocks of a list, which have that of the action if they say none. */
function measuresOf(action: ActionDocument | HeightActionDocument, at: string): Measure[] {
  if ('move' in action || 'set' in action) return [];
  const { units, tolerance } = action;
  const own = ['tip', 'tool', 'measured', 'feeler'].some((key) => key in action);
  if (!('bears' in action) || !Array.isArray(action.block)) {
    return [
      {
        at,
        units,
        needed: own || tolerance !== undefined || ('block' in action && action.block !== undefined),
      },
    ];
  }
  const list: readonly unknown[] = action.block;
  const plain = list.some((one) => typeof one === 'number');
  return [
    { at, units, needed: tolerance !== undefined || plain },
    ...list.flatMap((one, i): Measure[] => {
      const given = one as { readonly units?: LengthUnit };
      return typeof one === 'number'
        ? []
        : [{ at: `${at}/block/${i}`, units: given.units ?? units, needed: true }];
    }),
  ];
}

/** Cuts that there are none of, that are named twice in a setup, or that are in too many. */
function cutIssues(document: JobDocument, faults: Faults): JobIssue[] {
  if (!faults.holds('/cuts')) return [];
  const known = new Set(document.cuts.flatMap((cut, i) => (faults.sound(`/cuts/${i}/id`) ? [cut.id] : [])));
  const isComplete = known.size === document.cuts.length;
  const times = new Map<string, number>();
  return (document.setups ?? []).flatMap((setup, i) => {
    if (!faults.sound(`/setups/${i}/cuts`)) return [];
    return setup.cuts.flatMap((id, k): JobIssue[] => {
      const path = `/setups/${i}/cuts/${k}`;
      const first = setup.cuts.indexOf(id);
      if (first < k)
        return [{ path, message: `is ${described(id)} like entry ${first}; name every cut once` }];
      if (!known.has(id)) {
        return isComplete ? [{ path, message: `is ${described(id)}, but the job has no such cut` }] : [];
      }
      const count = (times.get(id) ?? 0) + 1;
      times.set(id, count);
      if (count !== MAX_SAME_CUT + 1) return [];
      return [
        { path, message: `is ${described(id)}, which is in over ${MAX_SAME_CUT} setups; make it in fewer` },
      ];
    });
  });
}
