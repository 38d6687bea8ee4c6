import { cautionsOf, type Finding, type Report } from '@edgebite/core';
import { countText, gravestFirst } from '@edgebite/svg';

/** Most lines on what to watch: more than these are not read at the machine. */
const MOST = 9;

/** Findings that a caution says in fewer words, or that matter at the desk and not at the machine. */
const SAID: ReadonlySet<string> = new Set([
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
 * What to watch in some cuts: the cautions that they call for, then what else was found of them that is no mere note;
 * no more than fits, and how many more there are.
 */
export function watchOf(report: Report, cuts: readonly string[], setup: string | null): string[] {
  const part = partOf(report, new Set(cuts), setup);
  const cautions = cautionsOf(part).slice(0, -1);
  const others = gravestFirst({ ...report, findings: part.findings }).filter(
    ({ code, level }) => level !== 'note' && !SAID.has(code),
  );
  const lines = [...cautions, ...others].map(({ message }) => message);
  if (lines.length <= MOST) return lines;
  return [...lines.slice(0, MOST), `And ${countText(lines.length - MOST, 'more thing')}: see the report.`];
}

/** A report with what concerns some cuts only; findings about no cut and no setup concern all. */
function partOf(report: Report, own: ReadonlySet<string>, setup: string | null): Report {
  const isOther = (name: string) => name.startsWith('cut:') && !own.has(name.slice('cut:'.length));
  const isOwn = (finding: Finding) => {
    const setups = finding.about.filter((name) => name.startsWith('setup:'));
    if (setups.length > 0) return setups.includes(`setup:${setup}`);
    const named = finding.about.filter((name) => name.startsWith('cut:'));
    return named.length === 0 || named.some((name) => !isOther(name));
  };
  const frees = ({ freedBy }: { readonly freedBy: string | null }) => freedBy !== null && own.has(freedBy);
  return {
    ...report,
    cuts: report.cuts.filter(({ id }) => own.has(id)),
    pieces: report.pieces.filter((piece) => piece.role === 'kept' || frees(piece)),
    findings: report.findings
      .filter(isOwn)
      .map((finding) => ({ ...finding, about: finding.about.filter((name) => !isOther(name)) })),
  };
}
