import type { Finding, Report } from '@edgebite/core';
import type { FindingMark, Label } from '../pen/label.js';
import type { Theme } from '../pen/theme.js';
import { gravestFirst, readName } from '../pen/words.js';
import { placeInside } from '../view/scan.js';
import { onSheet, type View } from '../view/view.js';

/** The numbers of the findings in the list beside the drawing, from 1, by their index in the report. */
export function findingNumbers(report: Report): ReadonlyMap<number, number> {
  return new Map(gravestFirst(report).map((finding, i) => [report.findings.indexOf(finding), i + 1]));
}

/**
 * The labels with the numbers of the findings that speak of them, and a label of its own for each finding that speaks of
 * none of them; dangers first. A finding goes to what it names first: the thinnest thing that has a label.
 */
export function withFindings(
  labels: readonly Label[],
  report: Report,
  view: View,
  theme: Theme,
): readonly Label[] {
  const numbers = findingNumbers(report);
  const marks = new Map<Label, FindingMark[]>();
  const alone: Label[] = [];
  report.findings.forEach((finding, index) => {
    const mark: FindingMark = {
      index,
      number: numbers.get(index) ?? index + 1,
      grave: finding.level === 'danger',
    };
    const owner = ownerOf(finding, labels);
    if (owner !== undefined) marks.set(owner, [...(marks.get(owner) ?? []), mark]);
    else {
      // One without a place speaks of the whole part.
      const place = finding.at ?? placeInside(report.outline) ?? [0, 0];
      alone.push({ text: '', at: onSheet(view, place), end: 'dot', about: [], findings: [mark] });
    }
  });
  const own = (label: Label): Label => {
    const found = marks.get(label)?.sort((a, b) => a.number - b.number);
    return found === undefined ? label : { ...label, findings: found, near: false };
  };
  const all: readonly Label[] = [
    ...labels.map(own),
    ...alone.map((label) => ({ ...label, colour: theme.ink })),
  ];
  return [...all.filter(isGrave), ...all.filter((label) => !isGrave(label))];
}

/** Whether a label has to do with a danger: then it comes first, while there is room beside what it names. */
function isGrave({ findings }: Label): boolean {
  return findings?.some(({ grave }) => grave) === true;
}

/** Kinds of what a finding can be about, the one that says best where it is first. */
const KINDS = ['web', 'knifeEdge', 'piece', 'keepOut', 'cut'];

function ownerOf({ about }: Finding, labels: readonly Label[]): Label | undefined {
  for (const kind of KINDS) {
    for (const name of about.filter((one) => readName(one).kind === kind)) {
      const label = labels.find((one) => one.about.includes(name));
      if (label !== undefined) return label;
    }
  }
  return undefined;
}
