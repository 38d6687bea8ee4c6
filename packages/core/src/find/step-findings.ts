import { cutSource } from '../geometry/source.js';
import type { Report, ReportBody, ReportCut, ReportStep } from '../report/report-schema.js';
import { angleWords, capital, lengthWords, massWords, volumeWords } from '../report/words.js';
import type { Told } from './told.js';

type Step = Omit<ReportStep, 'findings'>;

type Body = Pick<
  Report,
  'units' | 'massUnit' | 'bodies' | 'merges' | 'floors' | 'cuts' | 'limits' | 'knifeEdges'
> & {
  readonly steps: readonly Step[];
};

/** What to know of each step: what lets go in it, what hangs from then on, and what lies loose in its way. */
export function stepFindings(report: Body): Told[] {
  return [
    ...report.steps.flatMap((step, k) => [
      ...freesFindings(report, step, k),
      ...hangsFindings(report, step, k),
      ...meetsFindings(report, step, k),
    ]),
    ...heldFindings(report),
    ...mergeFindings(report),
  ];
}

/** What a sentence calls a step, within it: `cut seat`, `pass 2 of cut seat`. */
export function stepWords({ cut, pass }: Pick<Step, 'cut' | 'pass'>): string {
  return pass === null ? `cut ${cut}` : `pass ${pass} of cut ${cut}`;
}

/** Mass where it is known, else volume. */
function sizeWords({ units, massUnit }: Body, { mass, volume }: Pick<ReportBody, 'mass' | 'volume'>): string {
  return mass === null || massUnit === null ? volumeWords(volume, units) : massWords(mass, massUnit);
}

function freesFindings(report: Body, step: Step, number: number): Told[] {
  return step.frees.map((freed): Told => {
    const body = report.bodies.find(({ id }) => id === freed.body) as ReportBody;
    const size = sizeWords(report, freed);
    const when = `when the tool is ${lengthWords(freed.atDepth, report.units)} deep`;
    const later = body.endStep === null ? null : (report.steps[body.endStep] as Step);
    const clear =
      later === null
        ? 'Stop the spindle and let it cool before you take it out.'
        : `Stop the spindle, let it cool and take it out before you go on: ${stepWords(later)} runs through where it lies.`;
    const isSlug = body.role === 'slug';
    const cut = report.cuts.find(({ id }) => id === step.cut) as ReportCut;
    const guard = isSlug
      ? cut.relation === 'breaks out'
        ? 'it is hot and sharp, and the kerf is open at the side, so nothing keeps it from being thrown out'
        : 'it is hot and sharp, and may stay in the cutter or drop out'
      : 'nothing holds it, and the tool can catch and throw it. Clamp it as well, never hold it by hand, or change the cut so that it stays joined';
    return {
      code: isSlug ? 'loose-slug' : 'loose-offcut',
      message: `${capital(stepWords(step))} sets ${freed.body} free, ${size}, ${when}: ${guard}. ${clear}${edgeWords(report, body)}`,
      at: [...freed.at],
      about: [...aboutBody(body), cutSource(step.cut), `step:${number}`],
    };
  });
}

/** Of a body that a hand may take up: its knife edge, if it has one. Common practice, no source. */
function edgeWords({ knifeEdges, limits }: Body, { pieces }: ReportBody): string {
  const angles = knifeEdges.flatMap(({ piece, angle }) => (pieces.includes(piece) ? [angle] : []));
  const sharpest = Math.min(...angles);
  if (!(sharpest < limits.knifeEdge)) return '';
  return ` It has a knife edge of ${angleWords(sharpest)}: take it up with pliers, never with the bare hand.`;
}

/** A body has the name of the piece that is left of it, and one of its own where nothing is. */
function aboutBody({ id, pieces }: ReportBody): string[] {
  return [`body:${id}`, ...pieces.map((piece) => `piece:${piece}`)];
}

function hangsFindings(report: Body, step: Step, number: number): Told[] {
  return step.hangs.map((hung): Told => {
    const body = report.bodies.find(({ id }) => id === hung.body) as ReportBody;
    const force =
      hung.force === null
        ? ''
        : ` About ${Math.round(hung.force[0])} to ${Math.round(hung.force[1])} ${hung.forceUnit} tear it.`;
    return {
      code: 'hanging-body',
      message: `After ${stepWords(step)} ${hung.body}, ${sizeWords(report, hung)}, hangs by metal no more than ${lengthWords(hung.thickness, report.units)} thick: it may let go at any moment.${force} Clamp it, or cut it off under control, before you go on; never hold it by hand.`,
      at: [...hung.at],
      about: [...aboutBody(body), cutSource(step.cut), `step:${number}`],
    };
  });
}

function meetsFindings(report: Body, step: Step, number: number): Told[] {
  return step.meets.map(({ body }): Told => {
    const row = report.bodies.find(({ id }) => id === body) as ReportBody;
    const before = report.steps[row.step] as Step;
    return {
      code: 'loose-in-the-way',
      message: `${capital(body)}, loose since ${stepWords(before)}, lies in the way of ${stepWords(step)}: the tool catches and throws it. Take it out first, with the spindle stopped.`,
      at: step.center === null ? null : [...step.center],
      about: [...aboutBody(row), cutSource(step.cut), `step:${number}`],
    };
  });
}

/** Slugs that a floor holds, which is as thick as holds. */
function heldFindings(report: Body): Told[] {
  return report.bodies.flatMap((body): Told[] => {
    if (body.role !== 'held slug') return [];
    const step = report.steps[body.step] as Step;
    const floors = report.floors.flatMap((floor, k) => (floor.holds === body.id ? [{ floor, k }] : []));
    const [thinnest] = floors;
    const hold =
      thinnest === undefined
        ? 'metal under it'
        : `a floor ${lengthWords(thinnest.floor.thickness, report.units)} thick, along ${lengthWords(thinnest.floor.kerfLength ?? 0, report.units)} of kerf`;
    return [
      {
        code: 'held-slug',
        message: `Cut ${step.cut} does not go through: ${body.id} stays on ${hold}. Clamp it before you work on it; never hold it by hand.`,
        at: null,
        about: [
          `piece:${body.id}`,
          `body:${body.id}`,
          cutSource(step.cut),
          ...floors.map(({ k }) => `floor:${k}`),
        ],
      },
    ];
  });
}

/** Cuts that open into each other. */
function mergeFindings({ merges, steps }: Body): Told[] {
  return merges.map(({ step, cuts: [a, b], at }) => ({
    code: 'cuts-merge',
    message: `Cuts ${a} and ${b} open into each other: ${stepWords(steps[step] as Step)} takes the last of the land between them.`,
    at: [...at],
    about: [cutSource(a), cutSource(b), `step:${step}`],
  }));
}
