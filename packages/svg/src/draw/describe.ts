import {
  betweenText,
  type KnifeMark,
  knifeMarks,
  type RangeReport,
  type Report,
  webMarks,
} from '@edgebite/core';
import { angleText, numberText, unitText } from '../pen/numbers.js';
import { countText, roleText } from '../pen/words.js';
import { ownerOf } from '../plan/owner.js';
import { rangeDescription } from '../range/range-describe.js';

/** The drawing's title, for those who do not see it. */
export function titleOf(report: Report): string {
  return `${report.name === '' ? 'Job without a name' : report.name}: what the cuts leave`;
}

/** What the drawing shows, in sentences, for those who do not see it. */
export function descriptionOf(report: Report, range?: RangeReport): string {
  const length = (value: number): string => `${numberText(value, report.units)} ${unitText(report.units)}`;
  const pieces = report.pieces.map((piece) => `${piece.id} (${roleText(piece.role)})`);
  const webs = webMarks(report);
  const knives = knifeMarks(report);
  const [web] = webs;
  const [knife] = knives;
  const sentences = [
    `Plan of a part ${length(report.thickness)} thick after ${countText(report.cuts.length, 'cut')}.`,
    pieces.length === 0 ? 'Nothing is left.' : `Left: ${pieces.join(', ')}.`,
    web === undefined
      ? 'No web under the limit.'
      : `${countText(webs.length, 'web')} under the limit; the thinnest, ${web.id}, is ${length(web.web.thickness)} between ${betweenText(web.web.between, report.names)}.`,
    knife === undefined
      ? 'No knife edge under the limit.'
      : `${countText(knives.length, 'knife edge')} under the limit; the sharpest, ${knife.id}, has ${angleText(knife.knifeEdge.angle)} degrees between ${betweenText(knife.knifeEdge.between, report.names)}${ownerText(report, knife)}.`,
    ...report.findings.filter(({ level }) => level === 'danger').map(({ message }) => `Danger: ${message}`),
    ...(range === undefined ? [] : [rangeDescription(range)]),
  ];
  return sentences.join(' ');
}

function ownerText(report: Report, { knifeEdge }: KnifeMark): string {
  const owner = ownerOf(report, knifeEdge);
  return owner === null ? '' : `, on ${owner}`;
}
