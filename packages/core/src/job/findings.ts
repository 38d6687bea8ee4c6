import type { AnnularCut, Cut } from '../cut/cut.js';
import type { Point } from '../geometry/point.js';
import type { Left } from '../left/left.js';
import { faceAt } from '../region/faces.js';
import type { Job } from './job.js';
import type { Finding, Report, ReportCut, ReportPiece } from './report-schema.js';
import { angleWords, lengthWords, placeWords, sourceWords } from './words.js';

type Body = Omit<Report, 'findings'>;

/** What to know before cutting: dangers first, then what to check, then notes. */
export function findingsOf(job: Job, left: Left, report: Body): Finding[] {
  const all = [
    ...keptFindings(left, report),
    ...report.pieces.flatMap((piece) => pieceFinding(job, report, piece)),
    ...passingFindings(report),
    ...partialFindings(report),
    ...report.cuts.flatMap((cut, k) => cutFindings(job, left, cut, job.cuts[k] as Cut, k)),
    ...webFindings(report),
    ...knifeFindings(report),
    ...floorFindings(report),
  ];
  const rank = { danger: 0, check: 1, note: 2 };
  return all
    .map((finding, k) => ({ finding, k }))
    .sort((a, b) => rank[a.finding.level] - rank[b.finding.level] || a.k - b.k)
    .map(({ finding }) => finding);
}

function keptFindings(left: Left, report: Body): Finding[] {
  const findings: Finding[] = [];
  if (report.pieces.length === 0) {
    findings.push({
      level: 'danger',
      code: 'nothing-left',
      message: 'The cuts take all of the part: nothing is left to hold.',
      at: null,
      about: report.cuts.map(({ source }) => source),
    });
  } else if (left.pieces.keepStands === false && report.keep !== null) {
    findings.push({
      level: 'danger',
      code: 'held-place-cut-away',
      message: `The place where the part is held, ${placeWords(report.keep, report.units)}, is cut away. The largest piece is taken as the one that is kept.`,
      at: report.keep,
      about: ['piece:kept'],
    });
  }
  return findings;
}

function pieceFinding(job: Job, report: Body, piece: ReportPiece): Finding[] {
  const at = middleOf(piece);
  const about = [`piece:${piece.id}`, ...(piece.freedBy === null ? [] : [`cut:${piece.freedBy}`])];
  const by = piece.freedBy === null ? 'The cuts set' : `Cut ${piece.freedBy} sets`;
  switch (piece.role) {
    case 'kept':
      return [];
    case 'slug': {
      const cut = report.cuts.find(({ id }) => id === piece.freedBy);
      const open = cut !== undefined && cut.relation === 'breaks out';
      const guard = open
        ? 'the kerf is open at the side, so nothing keeps it from being thrown out'
        : 'it may stay in the cutter or drop out';
      return [
        {
          level: 'danger',
          code: 'loose-slug',
          message: `${by} ${piece.id} free: it is hot and sharp, and ${guard}. Keep clear of it until the spindle has stopped.`,
          at,
          about,
        },
      ];
    }
    case 'offcut':
      return [
        {
          level: 'danger',
          code: 'loose-offcut',
          message: `${by} ${piece.id} free: nothing holds it, and the tool can catch and throw it. Hold it, or saw it off first.`,
          at,
          about,
        },
      ];
    case 'held slug':
      return [heldSlugFinding(job, report, piece, at, about)];
  }
}

/** A slug that a later cut bores out is loose in between, and no drawing of what is left shows it. */
function passingFindings(report: Body): Finding[] {
  return report.passing.map(({ freedBy, slug }) => {
    const cut = report.cuts.find(({ id }) => id === freedBy);
    return {
      level: 'danger',
      code: slug ? 'loose-slug' : 'loose-offcut',
      message: slug
        ? `Cut ${freedBy} sets a slug free that a later cut would take: it is hot and sharp. Stop and lift it out before you go on.`
        : `Cut ${freedBy} sets a piece free that a later cut would take: nothing holds it, and the tool can throw it. Stop and take it off before you go on.`,
      at: cut?.center ?? null,
      about: [`cut:${freedBy}`],
    };
  });
}

/** All partial holes in one note. */
function partialFindings(report: Body): Finding[] {
  const partial = report.cuts
    .filter(({ kind }) => kind !== 'swept')
    .filter(({ relation, removedVolume }) => relation === 'breaks out' && removedVolume > 0);
  const first = partial[0];
  if (first === undefined) return [];
  const ids = partial.map(({ id }) => id);
  const what =
    ids.length === 1
      ? `Cut ${ids[0]} is a partial hole: it leaves the part`
      : `Cuts ${ids.slice(0, -1).join(', ')} and ${ids.at(-1)} are partial holes: they leave the part`;
  return [
    {
      level: 'note',
      code: 'partial-hole',
      message: `${what}, so the cut is interrupted and pushes to one side.`,
      at: ids.length === 1 ? first.center : null,
      about: partial.map(({ source }) => source),
    },
  ];
}

function heldSlugFinding(
  job: Job,
  report: Body,
  piece: ReportPiece,
  at: [number, number],
  about: string[],
): Finding {
  const floors = report.floors.flatMap((floor, k) => (floor.holds === piece.id ? [{ floor, k }] : []));
  const thinnest = floors[0]?.floor;
  const hold =
    thinnest === undefined
      ? 'metal under it'
      : `a floor ${lengthWords(thinnest.thickness, job.units)} thick, along ${lengthWords(thinnest.kerfLength ?? 0, job.units)} of kerf`;
  return {
    level: 'check',
    code: 'held-slug',
    message: `Cut ${piece.freedBy} does not go through: ${piece.id} stays on ${hold}. It can break out while you work on.`,
    at,
    about: [...about, ...floors.map(({ k }) => `floor:${k}`)],
  };
}

function middleOf(piece: ReportPiece): [number, number] {
  const [minX, minY, maxX, maxY] = piece.bounds;
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

function cutFindings(job: Job, left: Left, row: ReportCut, cut: Cut, number: number): Finding[] {
  const findings: Finding[] = [];
  const about = [row.source];
  const at = row.center;
  if (row.relation === 'clear') {
    findings.push({
      level: 'check',
      code: 'cut-misses',
      message: `Cut ${cut.id} misses the part.`,
      at,
      about,
    });
  } else if (row.relation === 'grazes') {
    const message = `Cut ${cut.id} only grazes the part: within ${lengthWords(job.resolution, job.units)} it could as well miss.`;
    findings.push({ level: 'check', code: 'cut-grazes', message, at, about });
  } else if (row.removedVolume === 0) {
    const message = `Cut ${cut.id} takes nothing that the cuts before it have left.`;
    findings.push({ level: 'note', code: 'cut-in-air', message, at, about });
  }
  if (cut.kind === 'annular') findings.push(...annularFindings(job, left, cut, number));
  return findings;
}

function annularFindings(job: Job, left: Left, cut: AnnularCut, number: number): Finding[] {
  const findings: Finding[] = [];
  const at: [number, number] = [cut.center.x + 0, cut.center.y + 0];
  const about = [`cut:${cut.id}`];
  if ((left.taken[number] as { volume: number }).volume > 0 && !metalUnder(left, cut.center, number)) {
    findings.push({
      level: 'check',
      code: 'no-metal-under-centre',
      message: `The centre of cut ${cut.id} is off the metal: a centre pin or ejector has nothing to bear on there.`,
      at,
      about,
    });
  }
  const written = job.document.cuts.find(({ id }) => id === cut.id);
  const wanted = written?.depth === undefined || written.depth === 'through' ? job.thickness : written.depth;
  if (cut.depth < wanted) {
    findings.push({
      level: 'check',
      code: 'reach-too-short',
      message: `The cutter of ${cut.id} reaches ${lengthWords(cut.depth, job.units)} of the ${lengthWords(wanted, job.units)} asked for.`,
      at,
      about,
    });
  }
  return findings;
}

/** Whether metal stands at a place, at the height where a cut starts, when its turn comes. */
function metalUnder(left: Left, at: Point, number: number): boolean {
  const { cells } = left;
  const n = cells.slabs.length;
  const face = faceAt(cells.subdivision, at);
  if ((cells.covers[face] as readonly number[])[0] !== 0) return false;
  const { low, high } = cells.removals[number] as (typeof cells.removals)[number];
  return cells.slabs.some(({ from, to }, s) => {
    const middle = (from + to) / 2;
    if (middle < low || middle > high) return false;
    const by = cells.taker[face * n + s] as number;
    return by < 0 || by >= number;
  });
}

/** Places closer than this share of the limit are one web in several slabs. */
const SAME_PLACE = 1e-6;

/** Rows that say the same of several slabs, put together: the first, and the numbers of all. */
function merged<
  T extends { readonly at: readonly [number, number]; readonly piece: string; readonly slab: number },
>(rows: readonly T[], near: number): { row: T; numbers: number[] }[] {
  const groups: { row: T; numbers: number[]; slabs: Set<number> }[] = [];
  const buckets = new Map<string, typeof groups>();
  rows.forEach((row, k) => {
    const key = `${Math.round(row.at[0] / (near * 8))},${Math.round(row.at[1] / (near * 8))}`;
    const bucket = buckets.get(key) ?? [];
    buckets.set(key, bucket);
    const known = bucket.find(
      (group) =>
        !group.slabs.has(row.slab) &&
        Math.hypot(group.row.at[0] - row.at[0], group.row.at[1] - row.at[1]) <= near,
    );
    if (known !== undefined) {
      known.numbers.push(k);
      known.slabs.add(row.slab);
      return;
    }
    const group = { row, numbers: [k], slabs: new Set([row.slab]) };
    bucket.push(group);
    groups.push(group);
  });
  return groups;
}

function webFindings(report: Body): Finding[] {
  return merged(report.webs, report.limits.web * SAME_PLACE).map(({ row, numbers }) => ({
    level: 'check',
    code: 'thin-web',
    message: `Only ${lengthWords(row.thickness, report.units)} of metal between ${sourceWords(row.between)}: it can bend away from the tool or break.`,
    at: [...row.at],
    about: [...numbers.map((k) => `web:${k}`), ...row.between],
  }));
}

function knifeFindings(report: Body): Finding[] {
  return merged(report.knifeEdges, report.limits.web * SAME_PLACE).map(({ row, numbers }) => {
    const feather =
      row.feather === null
        ? ''
        : `, thinner than ${lengthWords(report.limits.web, report.units)} for ${lengthWords(row.feather, report.units)}`;
    return {
      level: 'check',
      code: 'knife-edge',
      message: `Knife edge of ${angleWords(row.angle)} between ${sourceWords(row.between)}${feather}: it cuts hands and breaks off.`,
      at: [...row.at],
      about: [...numbers.map((k) => `knifeEdge:${k}`), ...row.between],
    };
  });
}

function floorFindings(report: Body): Finding[] {
  return report.floors.flatMap((floor, k) => {
    if (floor.holds !== null || floor.thickness >= report.limits.web) return [];
    return [
      {
        level: 'check' as const,
        code: 'thin-floor',
        message: `Cut ${floor.under} leaves a floor of only ${lengthWords(floor.thickness, report.units)}: it can tear or push through.`,
        at: [...floor.at] as [number, number],
        about: [`floor:${k}`, `cut:${floor.under}`],
      },
    ];
  });
}
