import type { AnnularCut } from '../cut/cut.js';
import { inUnit } from '../datum/length-unit.js';
import { targetAt } from '../datum/target.js';
import { distance } from '../geometry/point.js';
import type { Floor } from '../left/floors.js';
import { relationOf } from '../left/relation.js';
import { engagementOf } from '../load/engagement.js';
import type { Region } from '../region/region.js';
import type { ReportWayOut } from '../report/report-schema.js';
import { lengthWords, sourceText } from '../report/words.js';
import type { Result } from '../step/result.js';
import { type Lay, lineRow, straightFace } from './way-out-line.js';

/** A body that is held, with the floors that hold it. */
interface Held {
  readonly plan: Region;
  readonly area: number;
  readonly floors: readonly Floor[];
  readonly lay: Lay;
}

/** The ways to free a slug that floors hold, under the cut that stopped short. */
export function waysOutOfFloor(result: Result, held: Held): ReportWayOut[] {
  const [floor] = held.floors;
  const cut = floor === undefined ? undefined : result.job.cuts[floor.under];
  if (cut === undefined || cut.kind !== 'annular') return [];
  const thickness = Math.max(...held.floors.map((one) => one.thickness));
  const kerf = held.floors.reduce((sum, { kerfLength }) => sum + (kerfLength ?? 0), 0);
  return [
    sawOut(result, held, cut, thickness, kerf),
    ...otherSide(result, held, cut, thickness, kerf),
    longerReach(result, cut, thickness),
    alongKerf(result, cut, thickness),
  ];
}

/** In from the straight face that the slug has, level with the floor; where it has none, along the kerf. */
function sawOut(result: Result, held: Held, cut: AnnularCut, thickness: number, kerf: number): ReportWayOut {
  const { job, set, standing } = result;
  const { units } = job;
  const length = (value: number) => lengthWords(value, units);
  const face = straightFace(held.plan);
  if (face === null) {
    const isRound =
      relationOf(standing, job.cuts.indexOf(cut), cut, job.outline, job.resolution) === 'inside';
    const hole = isRound ? ' Drill a hole in the kerf for the blade first.' : '';
    return {
      kind: 'saw',
      words: `Saw along the kerf of ${cut.id}, ${length(kerf)} long, through the floor of ${length(thickness)}.${hole}`,
      line: null,
      length: kerf,
      through: thickness,
      size: null,
      tool: null,
      leaves: `A lip of the floor up to ${length(cut.wall)} wide and ${length(thickness)} high on the wall, along ${length(kerf)}: mill or file it back to the wall.`,
      clean: { width: cut.wall, height: thickness, length: kerf },
    };
  }
  const across = distance(face.a, face.b);
  const floorArea = held.floors.reduce((sum, { area }) => sum + area, 0);
  return {
    kind: 'saw',
    words: `Saw in from ${sourceText(face.source, set.names)}, level with the floor, ${length(cut.depth)} under the face that the cut starts from: a line of ${length(across)}, ${length(face.deep)} in.`,
    line: lineRow(held.lay, face.a, face.b),
    length: across,
    through: face.deep,
    size: null,
    tool: null,
    leaves: `The floor, ${length(thickness)} thick, under slug and kerf: mill, bore or file it out.`,
    clean: { width: (held.area + floorArea) / across, height: thickness, length: across },
  };
}

/** The same cut from the other side; not where its cutter does not reach as deep as the floor is thick. */
function otherSide(
  { job }: Result,
  { lay }: Held,
  cut: AnnularCut,
  thickness: number,
  kerf: number,
): ReportWayOut[] {
  if (cut.reach !== null && cut.reach < thickness) return [];
  const { units } = job;
  const length = (value: number) => lengthWords(value, units);
  const side = cut.from === 'top' ? 'bottom' : 'top';
  const isSetUp = job.setups.includes(lay.setup);
  const [x, y] = targetAt(lay, cut.center).worst;
  // Either side may be off by as much.
  const step = isSetUp ? 2 * inUnit(Math.hypot(x, y), lay.setup.readout.units, units) : null;
  const words =
    step === null ? 'as high as the two centres are off each other' : `up to ${length(step)} high`;
  return [
    {
      kind: 'other side',
      words: `Turn the part over and cut ${cut.id} from the ${side} too, about the same centre, over ${length(thickness)} deep.`,
      line: null,
      length: null,
      through: thickness,
      size: null,
      tool: null,
      leaves: `A step at the seam, ${length(thickness)} from the ${side}, ${words}: bore both sides in one setting, or dress it.`,
      clean: step === null ? null : { width: step, height: thickness, length: kerf },
    },
  ];
}

function longerReach(
  { job: { units, thickness: part } }: Result,
  cut: AnnularCut,
  floor: number,
): ReportWayOut {
  const reach = Math.min(part, cut.depth + floor);
  return {
    kind: 'longer reach',
    words: `Cut ${cut.id} with a cutter that reaches over ${lengthWords(reach, units)}.`,
    line: null,
    length: null,
    through: floor,
    size: reach,
    tool: null,
    leaves: 'The burr where it breaks through.',
    clean: null,
  };
}

/** An end mill in the kerf, along its outer wall: what is left of the floor goes with the slug. */
function alongKerf({ job }: Result, cut: AnnularCut, thickness: number): ReportWayOut {
  const { units } = job;
  const length = (value: number) => lengthWords(value, units);
  const mills = job.tools.flatMap(({ kind, id, diameter }) =>
    kind === 'end mill' && diameter !== undefined && diameter <= cut.wall ? [{ id, diameter }] : [],
  );
  const own = mills.reduce<(typeof mills)[number] | null>(
    (best, one) => (best === null || one.diameter > best.diameter ? one : best),
    null,
  );
  const size = own?.diameter ?? cut.wall;
  const radius = (cut.diameter - size) / 2;
  const way = radius * engagementOf(job.outline, cut.center, radius).angle;
  const mill =
    own === null ? `an end mill of ${length(size)} or less` : `end mill ${own.id}, ${length(size)}`;
  return {
    kind: 'end mill',
    words: `Mill along the kerf of ${cut.id} with ${mill}, its centre ${length(radius)} from that of the cut, ${length(cut.depth + thickness)} deep, ${length(way)} along.`,
    line: null,
    length: way,
    through: thickness,
    size,
    tool: own?.id ?? null,
    leaves: 'A witness line on the wall where the cutter stopped; the lip goes with the slug.',
    clean: null,
  };
}
