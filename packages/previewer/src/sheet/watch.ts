import { cautionsOf, type Finding, type Report } from '@edgebite/core';
import { countText, gravestFirst } from '@edgebite/svg';

/** Most lines on what to watch: more than these are not read at the machine. */
const MOST = 9;

/** Findings that a step or a caution says in fewer words, or that matter at the desk and not at the machine. */
const SAID: ReadonlySet<string> = new Set([
  'loose-in-the-way',
  'hanging-body',
  'loose-slug',
  'loose-offcut',
  'held-slug',
  'knife-edge',
  'partial-hole',
  'speed-limit-missing',
  'grip-lost',
  'held-place-cut-away',
  'nothing-left',
  'hits-jaw',
  'hits-stop',
  'hits-parallel',
  'hits-clamp',
]);

/**
 * What to watch in some steps: the cautions that they call for, then what else was found of them that is no mere note;
 * no more than fits, and how many more there are.
 */
export function watchOf(report: Report, indices: readonly number[]): string[] {
  const part = partOf(report, indices);
  const cautions = cautionsOf(part).slice(0, -1);
  const others = gravestFirst({ ...report, findings: part.findings }).filter(
    ({ code, level }) => level !== 'note' && !SAID.has(code),
  );
  const lines = [...cautions, ...others].map(({ message }) => message);
  if (lines.length <= MOST) return lines;
  return [...lines.slice(0, MOST), `And ${countText(lines.length - MOST, 'more thing')}: see the report.`];
}

/** What of a report concerns some steps only; findings about no step, no setup and no cut concern all. */
function partOf(report: Report, indices: readonly number[]) {
  const steps = indices.flatMap((index) => report.steps[index] ?? []);
  const own = new Set([
    ...indices.map((index) => `step:${index}`),
    ...steps.flatMap(({ setup, cut }) => [`setup:${setup}`, `cut:${cut}`]),
  ]);
  const of = ({ about }: Finding, kind: string) => about.filter((name) => name.startsWith(kind));
  const isOwn = (finding: Finding) => {
    const named = KINDS.map((kind) => of(finding, kind)).find(({ length }) => length > 0);
    return named === undefined || named.some((name) => own.has(name));
  };
  const isOther = (name: string) => KINDS.some((kind) => name.startsWith(kind)) && !own.has(name);
  const cuts = new Set(steps.map(({ cut }) => cut));
  return {
    steps: report.steps,
    cuts: report.cuts.filter(({ id }) => cuts.has(id)),
    bodies: report.bodies.filter(({ step }) => own.has(`step:${step}`)),
    findings: report.findings
      .filter(isOwn)
      .map((finding) => ({ ...finding, about: finding.about.filter((name) => !isOther(name)) })),
  };
}

/** What a finding can be about that tells where it belongs, the closest first. */
const KINDS = ['step:', 'setup:', 'cut:'] as const;
