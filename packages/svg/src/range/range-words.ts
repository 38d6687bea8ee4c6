import {
  betweenText,
  type FindingCode,
  type Outcome,
  type RangeChange,
  type RangeFinding,
  type RangeInterval,
  type RangeReport,
  sourceText,
} from '@edgebite/core';
import { countText, roleText } from '../pen/words.js';

type Role = keyof Outcome['pieces'];
type FindingChange = Extract<RangeChange, { what: 'finding' }>;

/** The roles of pieces, in the order in which they are told. */
const ROLES: readonly Role[] = ['kept', 'held slug', 'hanging', 'slug', 'offcut'];

/** The codes of findings on webs and on knife edges. */
const WEB = 'thin-web';
const KNIFE_EDGE = 'knife-edge';

/** The free number of a range, for a sentence: `centre along x`. */
export function alongText({ along }: RangeReport): string {
  return { x: 'centre along x', y: 'centre along y', diameter: 'diameter' }[along];
}

/** What an interval comes to: `inside; kept piece; adds thin web between cut seat and outline edge 2`. */
export function intervalText(
  { outcome, adds }: RangeInterval,
  cut: string,
  names: RangeReport['names'] = [],
): string {
  return [
    outcome.relation,
    piecesText(outcome),
    ...(adds.length === 0
      ? []
      : [`adds ${counted(adds.map((finding) => findingText(finding, cut, names)))}`]),
  ].join('; ');
}

/** The pieces that are left: `kept piece, 2 loose slugs`. */
function piecesText({ pieces }: Outcome): string {
  const told = ROLES.filter((role) => pieces[role] > 0).map((role) =>
    role === 'kept' ? 'kept piece' : countText(pieces[role], roleText(role)),
  );
  return told.length === 0 ? 'nothing left' : told.join(', ');
}

/**
 * What changes at a value, as the number grows: `breaks out, before: grazes; comes: knife edge between cut seat and
 * outline edge 2`.
 */
export function changesText(
  changes: readonly RangeChange[],
  cut: string,
  names: RangeReport['names'] = [],
): string {
  const told = changes.flatMap((change) => {
    if (change.what === 'relation') return [`${change.to}, before: ${change.from}`];
    return change.what === 'pieces' ? [countChange(change)] : [];
  });
  const findings = changes.flatMap((change) =>
    change.what === 'finding' && isNews(change, changes) ? [change] : [],
  );
  for (const way of ['comes', 'goes'] as const) {
    const texts = findings
      .filter(({ change }) => change === way)
      .map((finding) => findingText(finding, cut, names));
    if (texts.length > 0) told.push(`${way}: ${counted(texts)}`);
  }
  // A web or a knife edge can come in one layer of the part as it goes in another.
  return told.length > 0 ? told.join('; ') : 'a web or knife edge goes over to another depth';
}

function countChange({ role, from, to }: Extract<RangeChange, { what: 'pieces' }>): string {
  if (role === 'kept') return to === 0 ? 'nothing is left' : 'something is left';
  const now = to === 0 ? `no ${roleText(role)}` : countText(to, roleText(role));
  return `${now}, before: ${from === 0 ? 'none' : from}`;
}

/** The role of the pieces that a finding is about. */
const ROLE_OF: Readonly<Partial<Record<FindingCode, string>>> = {
  'loose-slug': 'slug',
  'loose-offcut': 'offcut',
  'held-slug': 'held slug',
};

/** Whether a finding says more than the change of relation or of pieces that it comes with. */
function isNews({ code }: FindingChange, changes: readonly RangeChange[]): boolean {
  const has = (what: RangeChange['what'], role?: string) =>
    changes.some((change) => change.what === what && (change.what !== 'pieces' || change.role === role));
  if (code === 'cut-misses' || code === 'cut-grazes') return !has('relation');
  if (code === 'nothing-left') return false;
  const role = ROLE_OF[code];
  return role === undefined || !has('pieces', role);
}

/** A finding in a few words; the cut that moves is named only beside others. */
function findingText({ code, about }: RangeFinding, cut: string, names: RangeReport['names']): string {
  const name = code.replaceAll('-', ' ');
  const [one = '', other = one] = about;
  if (code === WEB || code === KNIFE_EDGE) return `${name} between ${betweenText([one, other], names)}`;
  const others = about.filter((source) => source !== `cut:${cut}`);
  return others.length === 0 ? name : `${name} (${about.map((one) => sourceText(one, names)).join(', ')})`;
}

/** Each text once, with how often it was there if that was more than once. */
function counted(texts: readonly string[]): string {
  return [...new Set(texts)]
    .map((text) => {
      const count = texts.filter((other) => other === text).length;
      return count === 1 ? text : `${count} × ${text}`;
    })
    .join(', ');
}
