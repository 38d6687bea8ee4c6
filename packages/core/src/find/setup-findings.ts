import { inUnit } from '../datum/length-unit.js';
import type { Laid } from '../datum/setup.js';
import { cutSource } from '../geometry/source.js';
import type { Job } from '../job/job.js';
import { goesDown, reachBeyond } from '../load/underneath.js';
import type { ReportRows } from '../report/report-schema.js';
import { capital, lengthWords } from '../report/words.js';
import type { SetUp } from '../result/set-up.js';
import type { Told } from './told.js';

/** What is missing or doubtful in the setups of a job. */
export function setupFindings(job: Job, { lays }: SetUp, report: ReportRows): Told[] {
  if (lays.length === 0) return [];
  return [
    ...lays.flatMap((lay) => [
      ...missingTolerances(lay),
      ...coarseReadout(lay, report),
      ...wrongSide(job, lay),
      ...mayLeaveSkin(job, lay, report),
    ]),
    ...notSetUp(job),
  ];
}

function about({ setup }: Laid): string[] {
  return [`setup:${setup.id}`];
}

/** A chain in which nothing has a tolerance: its intervals are those of the readout alone. */
function missingTolerances(lay: Laid): Told[] {
  const axes = (['x', 'y'] as const).filter((axis) => lay[axis].links.every(({ basis }) => basis === 'none'));
  if (axes.length === 0) return [];
  return [
    {
      code: 'zero-without-tolerance',
      message: `Setup ${lay.setup.id} has no tolerance in the chain of ${axes.join(' and ')}: its zero counts as exact there.`,
      at: null,
      about: about(lay),
    },
  ];
}

/** Targets that rounding moves by more than their zero may be off. */
function coarseReadout(lay: Laid, report: ReportRows): Told[] {
  const row = report.setups.find(({ id }) => id === lay.setup.id);
  const off = new Set<string>();
  for (const { cut, roundingError } of row?.targets ?? []) {
    const isOver = (['x', 'y'] as const).some((axis, k) => {
      const { worst } = lay[axis];
      return worst > 0 && Math.abs(roundingError[k] as number) > worst * (1 + SLACK);
    });
    if (isOver) off.add(cut);
  }
  if (off.size === 0) return [];
  const { resolution, units } = lay.setup.readout;
  return [
    {
      code: 'rounding-over-tolerance',
      message: `In setup ${lay.setup.id} the step of the readout, ${resolution} ${units === 'mm' ? 'mm' : 'in'}, is coarser than its zero: rounding alone moves ${listed([...off])} by more than the tolerance of the chain.`,
      at: null,
      about: [...about(lay), ...[...off].map((id) => cutSource(id))],
    },
  ];
}

/** Rounding of a sum counts as nothing. */
const SLACK = 1e-9;

/** Cuts that start from the face that lies down. */
function wrongSide(job: Job, lay: Laid): Told[] {
  const up = lay.setup.lie.flip === null ? 'top' : 'bottom';
  const own = new Set(lay.setup.cuts);
  const wrong = job.cuts.filter(({ id, from, through }) => own.has(id) && !through && from !== up);
  if (wrong.length === 0) return [];
  return [
    {
      code: 'wrong-side-up',
      message: `In setup ${lay.setup.id} the part lies with its ${up} up, but ${listed(wrong.map(({ id }) => id))} ${wrong.length === 1 ? 'starts' : 'start'} from the ${up === 'top' ? 'bottom' : 'top'}.`,
      at: null,
      about: [...about(lay), ...wrong.map(({ id }) => cutSource(id))],
    },
  ];
}

/** Cuts through the part that may stop short of its lower face by what their depth may be off. */
function mayLeaveSkin(job: Job, { setup, part }: Laid, report: ReportRows): Told[] {
  const targets = report.setups.find(({ id }) => id === setup.id)?.targets ?? [];
  return job.cuts.flatMap((cut): Told[] => {
    const depth = targets.find((one) => one.cut === cut.id)?.depth ?? null;
    if (!cut.through || depth === null) return [];
    const worst = inUnit(depth.worst, setup.heights.units, part.units);
    const tool = job.tools.find(({ cuts }) => cuts.includes(cut.id))?.kind ?? null;
    const past = reachBeyond(goesDown(cut, tool, cut.diameter));
    if (past > worst || worst === 0) return [];
    const words = (value: number) => lengthWords(value, job.units);
    const squares = inUnit(depth.rss, setup.heights.units, part.units);
    const message = `Cut ${cut.id} comes out ${words(past)} below the part, and in setup ${setup.id} its depth may be off by ${words(worst)} at worst, ${words(squares)} by root of squares: it may leave a skin${slugWords(report, cut.id)}. See that nothing stands there, and give it a "breakThrough" of more than that.`;
    const about = [`setup:${setup.id}`, cutSource(cut.id)];
    return [{ code: 'may-not-go-through', message, at: null, about }];
  });
}

/** A slug that is loose as drawn stays on a skin. */
function slugWords({ steps }: ReportRows, cut: string): string {
  const slugs = steps
    .filter((step) => step.cut === cut)
    .flatMap(({ frees }) => frees.map(({ body }) => body));
  return slugs.length === 0 ? '' : `, and ${slugs.join(' and ')} may hang on it`;
}

/** Cuts in no setup: no target, and no telling how far they may be off. */
function notSetUp(job: Job): Told[] {
  const made = new Set(job.setups.flatMap(({ cuts }) => cuts));
  const left = job.cuts.filter(({ id }) => !made.has(id));
  if (left.length === 0) return [];
  return [
    {
      code: 'cut-in-no-setup',
      message: `${capital(listed(left.map(({ id }) => id)))} ${left.length === 1 ? 'is' : 'are'} in no setup: there are no targets for ${left.length === 1 ? 'it' : 'them'}.`,
      at: null,
      about: left.map(({ id }) => cutSource(id)),
    },
  ];
}

/** Most cuts that a sentence names. */
const NAMED = 5;

/** `cut a`, `cuts a, b and c`; many are counted. */
export function listed(ids: readonly string[]): string {
  if (ids.length > NAMED) return `${ids.length} cuts`;
  if (ids.length === 1) return `cut ${ids[0]}`;
  return `cuts ${ids.slice(0, -1).join(', ')} and ${ids.at(-1)}`;
}
