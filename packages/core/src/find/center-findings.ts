import { pointToJson } from '../format/json.js';
import type { PartName, Units } from '../job/job.js';
import type { Report, ReportCut } from '../report/report-schema.js';
import { lengthWords, placeWords, sourceText } from '../report/words.js';
import type { CenterCut } from '../result/center-cuts.js';
import type { Told } from './told.js';

type Body = Pick<Report, 'cuts' | 'units' | 'names'>;

/** What to know of where tools stand and what they meet there. One finding tells of all cuts of one cause. */
export function centerFindings({ cuts, units, names }: Body, centers: readonly CenterCut[]): Told[] {
  return cuts.flatMap((cut, k) => cutFindings(cut, centers[k] as CenterCut, units, names));
}

function cutFindings(
  cut: ReportCut,
  { passesFault, gouges }: CenterCut,
  units: Units,
  names: readonly PartName[],
): Told[] {
  const findings: Told[] = [];
  const about = [cut.source];
  if (passesFault !== null) {
    findings.push({
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
      code: 'gouge',
      message: `The tool of cut ${cut.id} goes ${lengthWords(gouge.depth, units)} past the outline that it is meant to keep to, at ${placeWords(at, units)}${more}.`,
      at,
      about: [...about, ...gouge.sources],
    });
  }
  return [...findings, ...pathFindings(cut, units), ...placementFindings(cut, units, names)];
}

function pathFindings({ id, source, diameter, toolPath }: ReportCut, units: Units): Told[] {
  if (toolPath === null) return [];
  const { unreached, missed } = toolPath;
  const [largest] = unreached;
  const findings: Told[] = [];
  const tool = `The tool of cut ${id}, ${lengthWords(diameter, units)} across,`;
  if (largest !== undefined) {
    const least = Math.min(...unreached.map(({ largestTool }) => largestTool));
    const remedy =
      least > 0
        ? `One of ${lengthWords(least, units)} or less reaches all of it`
        : 'No round tool reaches all of a sharp corner';
    const places = unreached.length === 1 ? 'a place' : `${unreached.length} places`;
    findings.push({
      code: 'path-leaves-metal',
      message: `${tool} does not reach ${places} along its path, the largest at ${placeWords(largest.at, units)}. ${remedy}.`,
      at: [...largest.at],
      about: [source],
    });
  }
  if (missed.length > 0) {
    const message = `${tool} does not fit along ${missed.join(', ')} and leaves it out.`;
    findings.push({ code: 'path-misses-loop', message, at: null, about: [source] });
  }
  return findings;
}

/** A depth or an opening that the named face is too short for. */
function placementFindings(
  { id, source, center, placement, bites }: ReportCut,
  units: Units,
  names: readonly PartName[],
): Told[] {
  if (placement === null || !['depth', 'opening'].includes(placement.form)) return [];
  const [face = ''] = placement.about;
  const { entry, exit } = placement;
  if (entry === null || exit === null || (entry.source === face && exit.source === face)) return [];
  const sizes = bites.map(
    (bite) =>
      `${lengthWords(bite.depth, units)} deep from ${sourceText(bite.face, names)}, of which it takes ${lengthWords(bite.opening, units)}`,
  );
  const goes = sizes.length === 0 ? '' : `: in the part it goes ${sizes.join(', and ')}`;
  return [
    {
      code: 'opening-past-face',
      message: `The opening of cut ${id} goes past the end of ${sourceText(face, names)}${goes}.`,
      at: center,
      about: [source, face],
    },
  ];
}
