import type { LengthUnit } from '../datum/length-unit.js';
import type { Setup } from '../datum/setup.js';
import { choices, described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import { MAX_BATCH_TARGETS } from '../document/limits.js';
import type { BatchPartDocument, JobDocument, SetupDocument } from '../document/schema.js';
import { Faults } from '../job/faults.js';
import { idIssues } from '../job/ids.js';
import type { BatchPart } from '../job/job.js';
import { type ReadPart, readSetups } from './read-setups.js';

/**
 * The parts of a job's batch; what is at fault is taken down and left out.
 * @param standsOf about how many places a setup goes to for a cut of an id
 */
export function readBatch(
  document: JobDocument,
  part: ReadPart,
  standsOf: (cut: string) => number,
  faults: Faults,
): BatchPart[] {
  if (!faults.sound('/batch') || document.batch === undefined) return [];
  const { batch, setups = [] } = document;
  faults.add(nameIssues(batch));
  if (!faults.sound('/setups')) return [];
  const known = measuredNames(setups);
  faults.add(batch.flatMap((one, k) => lengthIssues(one, k, batch[0] as BatchPartDocument, known)));
  const stands = setups.flatMap(({ cuts }) => cuts).reduce((sum, cut) => sum + standsOf(cut), 0);
  if (stands * batch.length > MAX_BATCH_TARGETS) {
    const message = `makes ${stands * batch.length} targets, ${stands} for each part; at most ${MAX_BATCH_TARGETS} are worked out: make it several batches`;
    faults.add([{ path: '/batch', message }]);
  }
  if (faults.issues.length > 0) return [];
  return batch.map((one, k) => {
    const own = new Faults();
    const read = readSetups({ ...document, setups: setupsFor(setups, one) }, part, own);
    faults.add(
      own.issues.map(({ message }) => ({ path: `/batch/${k}`, message: `as measured: ${message}` })),
    );
    return {
      name: one.name,
      measured: one.measured.map((length) => ({ ...length, units: unitsOf(length.name, read, document) })),
      setups: read,
    };
  });
}

/** The unit of the length of a name. */
function unitsOf(name: string, setups: readonly Setup[], { units }: JobDocument): LengthUnit {
  const links = setups.flatMap(({ zero }) => AXES.flatMap((axis) => zero[axis]?.links ?? []));
  return links.find((link) => link.name === name)?.units ?? units;
}

/** Names that two parts share, or that nobody tells apart. */
function nameIssues(batch: readonly BatchPartDocument[]): JobIssue[] {
  const issues = idIssues(
    batch.map(({ name }) => ({ id: name })),
    '/batch',
    'part',
  );
  return issues.map(({ path, message }) => ({ path: path.replace(/id$/, 'name'), message }));
}

function lengthIssues(
  { name: part, measured }: BatchPartDocument,
  k: number,
  first: BatchPartDocument,
  known: readonly string[],
): JobIssue[] {
  const own = measured.map(({ name }) => name);
  const missing = first.measured.filter(({ name }) => !own.includes(name));
  return [
    ...measured.flatMap(({ name }, i): JobIssue[] => {
      const say = (message: string) => [{ path: `/batch/${k}/measured/${i}/name`, message }];
      if (own.indexOf(name) < i)
        return say(`is ${described(name)}, which this part has already; give it once`);
      if (known.includes(name)) {
        if (k === 0 || first.measured.some((one) => one.name === name)) return [];
        return say(
          `is ${described(name)}, which part ${described(first.name)} has not; give it in every part`,
        );
      }
      const there = known.length === 0 ? 'none has a name' : `there is ${choices(known)}`;
      return say(`is ${described(name)}, but no measured length of a zero has that name; ${there}`);
    }),
    ...missing.map(({ name }) => ({
      path: `/batch/${k}/measured`,
      message: `lacks ${described(name)}, which part ${described(first.name)} has; give part ${described(part)} its own`,
    })),
  ];
}

/** What may be a measured length within an action: the action itself, or what lies between part and stop. */
interface Measure {
  readonly measured?: unknown;
  readonly name?: string | undefined;
  readonly block?: unknown;
}

const AXES = ['x', 'y', 'z'] as const;

/** The names of all measured lengths in zeros, each once. */
function measuredNames(setups: readonly SetupDocument[]): string[] {
  const all = setups.flatMap(({ zero }) => AXES.flatMap((axis) => (zero[axis] ?? []) as readonly Measure[]));
  const lengths = all.flatMap((one) => [one, ...betweenOf(one)]).filter((one) => one.measured !== undefined);
  return [...new Set(lengths.flatMap(({ name }) => name ?? []))];
}

function betweenOf({ block }: Measure): readonly Measure[] {
  return Array.isArray(block) ? block.filter((one) => typeof one === 'object') : [];
}

/** The setups with the measured lengths of a part in place of those that are written. */
function setupsFor(setups: readonly SetupDocument[], { measured }: BatchPartDocument): SetupDocument[] {
  const lengths = new Map(measured.map((one) => [one.name, one.measured]));
  const own = <M>(one: M): M => {
    const { name = '', measured: written } = one as Measure;
    const length = written === undefined ? undefined : lengths.get(name);
    return length === undefined ? one : { ...one, measured: length };
  };
  const done = <M>(one: M): M => {
    const { block } = one as Measure;
    return Array.isArray(block) ? { ...one, block: block.map(own) } : own(one);
  };
  return setups.map((setup) => {
    const { x, y, z } = setup.zero;
    return {
      ...setup,
      zero: { x: x.map(done), y: y.map(done), ...(z === undefined ? {} : { z: z.map(done) }) },
    };
  });
}
