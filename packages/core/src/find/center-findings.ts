import { pointToJson } from '../format/json.js';
import type { Units } from '../job/job.js';
import type { Finding, Report, ReportCut, ReportLoad } from '../report/report-schema.js';
import type { CenterCut } from '../result/center-cuts.js';
import { angleWords, lengthWords, nameWords, placeWords } from './words.js';

type Body = Pick<Report, 'cuts' | 'units'>;

/** From half a circle in metal on down the load is one-sided: that much of it is 2 / pi. */
const ONE_SIDED = 2 / Math.PI;

/** Loads closer to that limit than this are half a circle: rounding. */
const SLACK = 1e-9;

/** What to know of where tools stand and what they meet there. One finding tells of all cuts of one cause. */
export function centerFindings({ cuts, units }: Body, centers: readonly CenterCut[]): Finding[] {
  return [
    ...partialFindings(cuts),
    ...crossedFindings(cuts),
    ...oneSidedFindings(cuts),
    ...cuts.flatMap((cut, k) => cutFindings(cut, centers[k] as CenterCut, units)),
  ];
}

function partialFindings(cuts: readonly ReportCut[]): Finding[] {
  const partial = cuts.filter(
    ({ kind, relation, removedVolume }) => kind !== 'swept' && relation === 'breaks out' && removedVolume > 0,
  );
  const [first, second] = partial;
  if (first === undefined) return [];
  const what =
    second === undefined
      ? `${namesOf(partial)} is a partial hole: it leaves the part`
      : `${namesOf(partial)} are partial holes: they leave the part`;
  const strikes = second === undefined && first.load !== null ? strikesOf(first.load) : '';
  return [noteOn(partial, 'partial-hole', `${what}, so the cut is interrupted${strikes}.`)];
}

/** Cuts within the part whose circle runs through what earlier cuts have opened. */
function crossedFindings(cuts: readonly ReportCut[]): Finding[] {
  const crossed = cuts.filter(({ relation, load }) => relation === 'inside' && load?.interrupted === true);
  const [first, second] = crossed;
  if (first === undefined || first.load === null) return [];
  const runs = second === undefined ? `runs` : `run`;
  const strikes = second === undefined ? strikesOf(first.load) : '';
  const message = `${namesOf(crossed)} ${runs} into what earlier cuts have opened, so the cut is interrupted${strikes}.`;
  return [noteOn(crossed, 'interrupted-cut', message)];
}

function strikesOf({ entries, angle }: ReportLoad): string {
  if (entries === 0) return '';
  const times = entries === 1 ? 'once' : entries === 2 ? 'twice' : `${entries} times`;
  return `: each tooth strikes the metal ${times} a turn and cuts for ${angleWords(angle)} of it`;
}

function oneSidedFindings(cuts: readonly ReportCut[]): Finding[] {
  const sizeOf = ({ load }: ReportCut) => load?.sideLoad.size ?? 0;
  // A cut that only grazes is told of as such.
  const loaded = cuts.filter(
    (cut) => sizeOf(cut) >= ONE_SIDED - SLACK && cut.removedVolume > 0 && cut.relation !== 'grazes',
  );
  const [first, second] = loaded;
  if (first === undefined) return [];
  const worst = loaded.reduce((most, cut) => (sizeOf(cut) > sizeOf(most) ? cut : most));
  const load = `side load ${sizeOf(worst).toFixed(2)} of 1, which pushes the part towards ${angleWords(worst.load?.sideLoad.direction ?? 0)}`;
  const message =
    second === undefined
      ? `${namesOf(loaded)} has half its circle in metal or less: ${load}. Clamp the part against that, never hold it by hand.`
      : `${namesOf(loaded)} have half their circles in metal or less, ${worst.id} the least: ${load}. Clamp the part against that, never hold it by hand.`;
  return [noteOn(loaded, 'one-sided-load', message)];
}

function cutFindings(cut: ReportCut, { passesFault, gouges }: CenterCut, units: Units): Finding[] {
  const findings: Finding[] = [];
  const about = [cut.source];
  if (passesFault !== null) {
    findings.push({
      level: 'check',
      code: 'passes-not-possible',
      message: `The passes of cut ${cut.id} cannot be made: ${passesFault}.`,
      at: cut.center,
      about,
    });
  }
  const [gouge] = gouges;
  if (gouge !== undefined) {
    const at = pointToJson(gouge.at);
    const more = gouges.length === 1 ? '' : `, and at ${gouges.length - 1} more`;
    findings.push({
      level: 'check',
      code: 'gouge',
      message: `The tool of cut ${cut.id} goes ${lengthWords(gouge.depth, units)} past the outline that it is meant to keep to, at ${placeWords(at, units)}${more}.`,
      at,
      about: [...about, ...gouge.sources],
    });
  }
  return [...findings, ...pathFindings(cut, units), ...placementFindings(cut, units)];
}

function pathFindings({ id, source, diameter, toolPath }: ReportCut, units: Units): Finding[] {
  if (toolPath === null) return [];
  const { unreached, missed } = toolPath;
  const [largest] = unreached;
  const findings: Finding[] = [];
  const tool = `The tool of cut ${id}, ${lengthWords(diameter, units)} across,`;
  if (largest !== undefined) {
    const least = Math.min(...unreached.map(({ largestTool }) => largestTool));
    const remedy =
      least > 0
        ? `One of ${lengthWords(least, units)} or less reaches all of it`
        : 'No round tool reaches all of a sharp corner';
    const places = unreached.length === 1 ? 'a place' : `${unreached.length} places`;
    findings.push({
      level: 'check',
      code: 'path-leaves-metal',
      message: `${tool} does not reach ${places} along its path, the largest at ${placeWords(largest.at, units)}. ${remedy}.`,
      at: [...largest.at],
      about: [source],
    });
  }
  if (missed.length > 0) {
    const message = `${tool} does not fit along ${missed.join(', ')} and leaves it out.`;
    findings.push({ level: 'check', code: 'path-misses-loop', message, at: null, about: [source] });
  }
  return findings;
}

/** A depth or an opening that the named face is too short for. */
function placementFindings({ id, source, center, placement }: ReportCut, units: Units): Finding[] {
  if (placement === null || !['depth', 'opening'].includes(placement.form)) return [];
  const [face = ''] = placement.about;
  const { entry, exit, depth, opening } = placement;
  if (entry === null || exit === null || (entry.source === face && exit.source === face)) return [];
  const sizes =
    depth === null || opening === null
      ? ''
      : `: in the part it is ${lengthWords(depth, units)} deep and opens ${lengthWords(opening, units)}, straight across`;
  return [
    {
      level: 'note',
      code: 'opening-past-face',
      message: `The opening of cut ${id} goes past the end of ${nameWords(face)}${sizes}.`,
      at: center,
      about: [source, face],
    },
  ];
}

function noteOn(cuts: readonly ReportCut[], code: string, message: string): Finding {
  const [first] = cuts;
  const at = cuts.length === 1 && first !== undefined ? first.center : null;
  return { level: 'note', code, message, at, about: cuts.map(({ source }) => source) };
}

/** So many cuts a sentence names. */
const NAMED = 12;

function namesOf(cuts: readonly ReportCut[]): string {
  const ids = cuts.map(({ id }) => id);
  if (ids.length === 1) return `Cut ${ids[0]}`;
  if (ids.length > NAMED) return `Cuts ${ids.slice(0, NAMED).join(', ')} and ${ids.length - NAMED} more`;
  return `Cuts ${ids.slice(0, -1).join(', ')} and ${ids.at(-1)}`;
}
