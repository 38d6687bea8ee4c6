import {
  examine,
  type JobDocument,
  parseJob,
  type Report,
  type ReportCut,
  type ReportEdge,
} from '@edgebite/core';

type CutDocument = JobDocument['cuts'][number];
type OutlineDocument = JobDocument['part']['outline'];

/** The part as it stands before the first cut (`after` 0), or after so many of them. */
export interface State {
  readonly after: number;
  /** The cut that was just made; null before the first. */
  readonly cut: ReportCut | null;
  /** What there is then; the report itself after the last cut. */
  readonly report: Report;
}

/** The steps of a job to be drawn, and the cuts that are left out between them. */
export interface Steps {
  readonly states: readonly State[];
  /** Indices of cuts that have no picture of their own. */
  readonly leftOut: readonly number[];
}

/**
 * The part before, after each cut and at the end, in at most so many pictures. Where there are more cuts, those that set
 * something loose come first, then those with findings of their own, then those that break out; the rest are named.
 * What stands after a cut is worked out anew from the outline and the cuts of the report, by the library itself.
 */
export function stepsOf(report: Report, most: number): Steps {
  const last = report.cuts.length;
  const chosen = chosenCuts(report, Math.max(most - 1, 1));
  return {
    states: [0, ...chosen.map((k) => k + 1)].map((after) => ({
      after,
      cut: after === 0 ? null : (report.cuts[after - 1] as ReportCut),
      report: after === last ? report : examine(parseJob(jobUpTo(report, after))),
    })),
    leftOut: report.cuts.map((_, k) => k).filter((k) => !chosen.includes(k)),
  };
}

function chosenCuts(report: Report, most: number): readonly number[] {
  const all = report.cuts.map((_, k) => k);
  if (all.length <= most) return all;
  const last = all.length - 1;
  const freed = new Set(report.bodies.map(({ step }) => report.steps[step]?.cut));
  const grave = new Set(
    report.findings.filter(({ level }) => level !== 'note').flatMap(({ about }) => about),
  );
  const weight = (k: number): number => {
    const cut = report.cuts[k] as ReportCut;
    if (k === last) return 4;
    if (freed.has(cut.id)) return 3;
    if (grave.has(cut.source)) return 2;
    return cut.relation === 'breaks out' ? 1 : 0;
  };
  return [...all]
    .sort((a, b) => weight(b) - weight(a) || a - b)
    .slice(0, most)
    .sort((a, b) => a - b);
}

/** A job of the first cuts of a report, under names of their own: their numbers. */
function jobUpTo(report: Report, count: number): JobDocument {
  return {
    edgebite: 1,
    units: report.units,
    part: { outline: outlineDocument(report), thickness: report.thickness },
    ...(report.keep === null ? {} : { keep: [...report.keep] as [number, number] }),
    limits: { ...report.limits },
    cuts: report.cuts.slice(0, count).flatMap(cutDocuments),
  };
}

function outlineDocument({ outline }: Report): OutlineDocument {
  const [part] = outline;
  return {
    edges: (part?.outer ?? []).map(edgeDocument),
    holes: (part?.holes ?? []).map((hole) => ({ edges: hole.map(edgeDocument) })),
  } as OutlineDocument;
}

/** A cut as a job has it; a path with several runs, between which the tool is lifted, as a cut for each of them. */
function cutDocuments(cut: ReportCut, number: number): CutDocument[] {
  const runs = cut.kind === 'swept' ? (cut.toolPath?.passes ?? []) : [];
  if (runs.length < 2) return [cutDocument(cut, String(number))];
  return runs.map(({ leadIn, cut: along, leadOut }, k) =>
    cutDocument({ ...cut, path: [...leadIn, ...along, ...leadOut] }, `${number}.${k}`),
  );
}

function cutDocument(cut: ReportCut, id: string): CutDocument {
  const depth = cut.through ? {} : { depth: cut.depth };
  const common = { id, diameter: cut.diameter, from: cut.from, ...depth };
  if (cut.kind === 'swept') {
    return { ...common, kind: 'swept', path: { edges: (cut.path ?? []).map(edgeDocument) } } as CutDocument;
  }
  const center = [...(cut.center as readonly [number, number])] as [number, number];
  if (cut.kind === 'bore') return { ...common, kind: 'bore', center } as CutDocument;
  return { ...common, kind: 'annular', center, wall: cut.wall as number } as CutDocument;
}

function edgeDocument(edge: ReportEdge): object {
  const ends = { kind: edge.kind, a: [...edge.a], b: [...edge.b] };
  return edge.kind === 'line' ? ends : { ...ends, center: [...edge.center], ccw: edge.ccw };
}
