import type { AnnularCut, Cut } from '../cut/cut.js';
import type { Job } from '../job/job.js';
import type { Finding, Report, ReportCut, ReportPiece } from '../report/report-schema.js';
import type { CenterCut } from '../result/center-cuts.js';
import type { Facts } from '../result/facts.js';
import type { SetUp } from '../result/set-up.js';
import { centerFindings } from './center-findings.js';
import { keepOutFindings } from './keep-out-findings.js';
import { merged, SAME_PLACE } from './merged.js';
import { runningFindings } from './running-findings.js';
import { type Said, saidOf } from './said.js';
import { setupFindings } from './setup-findings.js';
import { uncertainFindings } from './uncertain-findings.js';
import { angleWords, lengthWords, placeWords, sourceWords } from './words.js';

type Body = Omit<Report, 'findings' | 'cautions'>;

/**
 * What to know before cutting: dangers first, then what to check, then notes.
 * @param said findings on rows that were made before, to be used again
 */
export function findingsOf(
  job: Job,
  facts: Facts,
  report: Body,
  set: SetUp,
  centers: readonly CenterCut[],
  said?: Said,
): Finding[] {
  const all = [
    ...keptFindings(facts, report),
    ...report.pieces.flatMap((piece) => pieceFinding(job, report, piece)),
    ...passingFindings(report),
    ...centerFindings(report, centers),
    ...report.cuts.flatMap((cut, k) => cutFindings(job, facts, cut, job.cuts[k] as Cut, k)),
    ...webFindings(report, said),
    ...knifeFindings(report, said),
    ...floorFindings(report),
    ...runningFindings(job, report),
    ...setupFindings(job, set, report),
    ...uncertainFindings(job, set, report),
    ...keepOutFindings(job, set, report),
  ];
  return (['danger', 'check', 'note'] as const).flatMap((rank) => all.filter(({ level }) => level === rank));
}

function keptFindings(facts: Facts, report: Body): Finding[] {
  const findings: Finding[] = [];
  if (report.pieces.length === 0) {
    findings.push({
      level: 'danger',
      code: 'nothing-left',
      message: 'The cuts take all of the part: nothing is left to hold.',
      at: null,
      about: report.cuts.map(({ source }) => source),
    });
  } else if (facts.keepStands === false && report.keep !== null) {
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

function cutFindings(job: Job, facts: Facts, row: ReportCut, cut: Cut, number: number): Finding[] {
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
  if (cut.kind === 'annular')
    findings.push(...annularFindings(job, row, cut, facts.bears[number] as boolean));
  return findings;
}

function annularFindings(job: Job, row: ReportCut, cut: AnnularCut, bears: boolean): Finding[] {
  const findings: Finding[] = [];
  const at: [number, number] = [cut.center.x + 0, cut.center.y + 0];
  const about = [`cut:${cut.id}`];
  if (row.removedVolume > 0 && !bears) {
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

function webFindings(report: Body, said: Said | undefined): Finding[] {
  return merged(report.webs, report.limits.web * SAME_PLACE).map(({ row, numbers }) =>
    saidOf(said, row, numbers, 'web', () => ({
      level: 'check',
      code: 'thin-web',
      message: `Only ${lengthWords(row.thickness, report.units)} of metal between ${sourceWords(row.between)}: it can bend away from the tool or break.`,
      at: [...row.at],
    })),
  );
}

function knifeFindings(report: Body, said: Said | undefined): Finding[] {
  return merged(report.knifeEdges, report.limits.web * SAME_PLACE).map(({ row, numbers }) =>
    saidOf(said, row, numbers, 'knifeEdge', () => {
      const feather =
        row.feather === null
          ? ''
          : `, thinner than ${lengthWords(report.limits.web, report.units)} for ${lengthWords(row.feather, report.units)}`;
      return {
        level: 'check',
        code: 'knife-edge',
        message: `Knife edge of ${angleWords(row.angle)} between ${sourceWords(row.between)}${feather}: it cuts hands and breaks off.`,
        at: [...row.at],
      };
    }),
  );
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
