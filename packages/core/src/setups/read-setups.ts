import type { LengthUnit } from '../datum/length-unit.js';
import { axesOf, type Lie } from '../datum/lie.js';
import type { AxisZero, Readout, Setup } from '../datum/setup.js';
import { described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import { MAX_SAME_CUT } from '../document/limits.js';
import type { JobDocument, LinkDocument, SetupDocument } from '../document/schema.js';
import type { Faults } from '../job/faults.js';
import { idIssues } from '../job/ids.js';
import { DEFAULT_RESOLUTION } from '../job/job.js';
import type { Region } from '../region/region.js';
import { readChain } from './read-chain.js';
import { sameThingIssues } from './same-things.js';
import { orderIssues } from './setup-order.js';

/**
 * The setups of a job; what is at fault is taken down and left out. What is sound is checked even where other things
 * are at fault already.
 * @param outline null where it is at fault itself
 */
export function readSetups(document: JobDocument, outline: Region | null, faults: Faults): Setup[] {
  if (!faults.holds('/setups') || !faults.sound('/units') || document.setups === undefined) return [];
  const { setups } = document;
  faults.add(idIssues(setups, '/setups', 'setup'));
  faults.add(cutIssues(document, faults));
  const read = setups.flatMap((setup, i) => readSetup(document, setup, i, outline, faults) ?? []);
  if (faults.sound('/setups')) faults.add(sameThingIssues(setups, document.units));
  if (faults.sound('/setups') && faults.sound('/cuts')) faults.add(orderIssues(document));
  return read;
}

function readSetup(
  document: JobDocument,
  setup: SetupDocument,
  number: number,
  outline: Region | null,
  faults: Faults,
): Setup | null {
  const path = `/setups/${number}`;
  if (!faults.holds(path)) return null;
  const readout = readReadout(document, setup, path, faults);
  if (readout !== null) faults.add(unitIssues(document, setup, readout, path, faults));
  const lie: Lie = { flip: setup.flip ?? null, turn: setup.turn ?? 0 };
  const isLaid = faults.sound(`${path}/flip`) && faults.sound(`${path}/turn`);
  const chain = (axis: 'x' | 'y'): AxisZero | null => {
    const at = `${path}/zero/${axis}`;
    if (!faults.sound(at) || outline === null || !isLaid) return null;
    const part = { outline, axis, direction: axesOf(lie)[axis] };
    return faults.take(readChain(setup.zero[axis], at, part, document.units));
  };
  const [x, y] = [chain('x'), chain('y')];
  if (!faults.sound(path) || readout === null || x === null || y === null) return null;
  const { id, name = null, cuts } = setup;
  return { id, name, lie, readout, zero: { x, y }, cuts };
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

/** Where job, readout and links are not all in one unit, every link that has a length must say its own. */
function unitIssues(
  document: JobDocument,
  setup: SetupDocument,
  readout: Readout,
  path: string,
  faults: Faults,
): JobIssue[] {
  const lists = (['x', 'y'] as const).flatMap((axis) => {
    const at = `${path}/zero/${axis}`;
    return faults.sound(at) ? setup.zero[axis].map((link, k) => ({ link, at: `${at}/${k}/units` })) : [];
  });
  const used = new Set<LengthUnit>([
    document.units,
    readout.units,
    ...lists.flatMap(({ link }) => link.units ?? []),
  ]);
  if (used.size < 2) return [];
  return lists
    .filter(({ link }) => link.units === undefined && hasLength(link))
    .map(({ at }) => ({
      path: at,
      message: 'is missing: this setup has both mm and inch, so say in which of them this link is given',
    }));
}

function hasLength(link: LinkDocument): boolean {
  return 'length' in link || 'diameter' in link || link.tolerance !== undefined;
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
