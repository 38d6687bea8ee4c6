import type { ChainPlace, Link } from '../datum/chain.js';
import type { LengthUnit } from '../datum/length-unit.js';
import type { AxisZero } from '../datum/setup.js';
import { described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import type { LinkDocument } from '../document/schema.js';
import { bad, good, pointOf, type Read } from '../job/read-edges.js';
import { type ChainPart, OUTERMOST, placeOnPart, placeWord } from './read-chain-place.js';
import { sideIssues } from './touched-side.js';

/** The word for the place where the readout shows 0. */
const ZERO = 'zero';

/**
 * The chain of one axis, put in order from the zero of the readout to the part.
 * @param path JSON Pointer to the list of links
 * @param units of links that state none
 */
export function readChain(
  list: readonly LinkDocument[],
  path: string,
  part: ChainPart,
  units: LengthUnit,
): Read<AxisZero> {
  const links = list.map((link) => linkOf(link, units));
  const issues = [...gapIssues(links, path), ...repeatedNames(links, path), ...openEnds(links, path, part)];
  if (issues.length > 0) return { ok: false, issues };
  const nodes = [links[0]?.from ?? '', ...links.map(({ to }, k) => to ?? links[k + 1]?.from ?? null)];
  const fault = nodesFault(nodes.map((node) => node && placeWord(node)));
  if (fault !== null) return bad(path, fault);
  const isForward = nodes[0] === ZERO;
  const fromZero = isForward ? links : links.map(turnedRound).reverse();
  const end = (isForward ? nodes.at(-1) : nodes[0]) as ChainPlace;
  const place = placeOnPart(end, part);
  if (typeof place === 'string') {
    return bad(isForward ? `${path}/${links.length - 1}/to` : `${path}/0/from`, place);
  }
  const pathOf = (k: number) => `${path}/${isForward ? k : links.length - 1 - k}`;
  const sides = sideIssues(fromZero, place.outward, pathOf, !isForward);
  if (sides.length > 0) return { ok: false, issues: sides };
  return good({ place: place.words, at: place.at + 0, links: fromZero });
}

function linkOf(link: LinkDocument, units: LengthUnit): Link {
  const { from, to } = link;
  return {
    kind: link.kind,
    name: link.name ?? null,
    from: from === undefined ? null : placeOf(from),
    to: to === undefined ? null : placeOf(to),
    length: 'length' in link ? link.length : 'diameter' in link ? (link.diameter ?? null) : null,
    units: link.units ?? units,
    way: 'way' in link ? (link.way === '+' ? 1 : -1) : 0,
    tolerance: link.tolerance ?? null,
  };
}

function placeOf(place: NonNullable<LinkDocument['from']>): ChainPlace {
  return typeof place === 'string' ? place : pointOf(place);
}

function turnedRound(link: Link): Link {
  return { ...link, from: link.to, to: link.from, way: link.way === 0 ? 0 : link.way > 0 ? -1 : 1 };
}

/** Links that say where they start, and it is not where the link before says that it ends. */
function gapIssues(links: readonly Link[], path: string): JobIssue[] {
  return links.slice(1).flatMap(({ from }, i): JobIssue[] => {
    const before = links[i]?.to ?? null;
    if (from === null || before === null || placeWord(from) === placeWord(before)) return [];
    const message = `is ${described(placeWord(from))}, but the link before ends at ${described(placeWord(before))}; every link starts where the one before ends`;
    return [{ path: `${path}/${i + 1}/from`, message }];
  });
}

function repeatedNames(links: readonly Link[], path: string): JobIssue[] {
  return links.flatMap(({ name }, i): JobIssue[] => {
    const first = name === null ? i : links.findIndex((link) => link.name === name);
    if (first === i) return [];
    const message = `is ${described(name)} like that of link ${first}; one thing is in a chain once only`;
    return [{ path: `${path}/${i}/name`, message }];
  });
}

function openEnds(links: readonly Link[], path: string, { axis }: ChainPart): JobIssue[] {
  const last = links.length - 1;
  const [least, most] = OUTERMOST[axis];
  const say = (at: string): JobIssue => ({
    path: `${path}/${at}`,
    message: `is missing; one end of the chain is "zero" and the other a place on the part, such as "${least}" or "${most}"`,
  });
  return [
    ...(links[0]?.from === null ? [say('0/from')] : []),
    ...(links[last]?.to === null ? [say(`${last}/to`)] : []),
  ];
}

/** What is wrong with the places that a chain runs through, in order; null for those without a name. */
function nodesFault(nodes: readonly (string | null)[]): string | null {
  const zeros = nodes.filter((node) => node === ZERO).length;
  const [first, last] = [nodes[0] ?? '', nodes.at(-1) ?? ''];
  if (zeros === 0) {
    return `has no zero: it runs from ${described(first)} to ${described(last)}; one end must be "zero", where the readout shows 0`;
  }
  if (zeros > 1) return `has ${zeros} zeros; "zero" is one place, at one end of the chain only`;
  if (first !== ZERO && last !== ZERO) return 'goes on past "zero"; the chain must begin or end there';
  const named = nodes.filter((node) => node !== null);
  const again = named.find((node, k) => named.indexOf(node) < k);
  if (again !== undefined)
    return `is a loop: it comes back to ${described(again)}; go through every place once`;
  return null;
}
