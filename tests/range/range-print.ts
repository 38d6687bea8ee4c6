import type { Cut, Job, Outcome, RangeQuery, Report } from '@edgebite/core';

/** The job with the free number set to a value. */
export function withValue(job: Job, { cut: id, along }: RangeQuery, value: number): Job {
  return { ...job, cuts: job.cuts.map((cut) => (cut.id === id ? cutWith(cut, along, value) : cut)) };
}

function cutWith(cut: Cut, along: RangeQuery['along'], value: number): Cut {
  if (along === 'diameter') return { ...cut, diameter: value };
  if (cut.kind !== 'swept') return { ...cut, center: { ...cut.center, [along]: value } };
  const start = cut.path[0]?.a;
  if (start === undefined) throw new Error('a path without edges');
  const by = value - start[along];
  const put = (p: { readonly x: number; readonly y: number }) => ({ ...p, [along]: p[along] + by });
  return {
    ...cut,
    path: cut.path.map((edge) =>
      edge.kind === 'line'
        ? { ...edge, a: put(edge.a), b: put(edge.b) }
        : { ...edge, a: put(edge.a), b: put(edge.b), center: put(edge.center) },
    ),
  };
}

/** What a report says, without the numbers that change all the time. */
export function printOf(report: Report, id: string): string {
  const roles = report.pieces.map(({ role }) => role).sort();
  const marks = (rows: readonly { readonly between: readonly string[]; readonly slab: number }[]) =>
    rows.map(({ between, slab }) => `${between.join('+')}@${slab}`).sort();
  return print(
    report.cuts.find((cut) => cut.id === id)?.relation ?? '',
    roles,
    marks(report.webs),
    marks(report.knifeEdges),
    findingsText(report.findings),
  );
}

/** Findings that a range tells of: on what is left and whether a cut bites, not on how the part is set up and cut. */
const TOLD =
  /^(nothing-left|held-place-cut-away|loose-(slug|offcut)|held-slug|hanging-body|loose-in-the-way|cuts-merge|cut-(misses|grazes|in-air)|no-metal-under-centre|reach-too-short|thin-floor)$/;

/** Those on webs and knife edges are left to the marks: they are counted by place, which others may share. */
function findingsText(findings: Outcome['findings']): string[] {
  return findings
    .filter(({ code }) => TOLD.test(code))
    .map(({ level, code, about }) => `${level} ${code} ${aboutText(about)}`)
    .sort();
}

export function outcomePrint({ relation, pieces, webs, knifeEdges, findings }: Outcome): string {
  const roles = Object.entries(pieces).flatMap(([role, count]) => Array<string>(count).fill(role));
  const marks = (rows: Outcome['webs']) =>
    rows.map(({ between, slab }) => `${between.join('+')}@${slab}`).sort();
  return print(relation, roles.sort(), marks(webs), marks(knifeEdges), findingsText(findings));
}

function aboutText(about: readonly string[]): string {
  const lasting = about.filter((name) => ['outline', 'hole', 'cut'].includes(name.split(':')[0] ?? ''));
  return [...new Set(lasting)].sort().join(',');
}

function print(
  relation: string,
  roles: string[],
  webs: string[],
  knives: string[],
  findings: string[],
): string {
  return `${relation} | ${roles.join(' ')} | webs ${webs.join(' ')} | knife edges ${knives.join(' ')} | ${findings.join('; ')}`;
}
