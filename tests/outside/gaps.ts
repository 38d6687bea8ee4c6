import type { Gap } from './reference.js';

/** Quantities without an outside value. What says `from memory` in a report is here or a second copy above. */
export const gaps: readonly Gap[] = [
  {
    quantity: 'limits that a job does not give: thin web, knife edge, clearance, room under a part',
    why: 'defaults of our own; a job may state others',
  },
  {
    quantity: 'densities; titanium and soft grades of aluminium and brass',
    why: 'from memory; no sheet was found, and the second copy tells of slips of the hand only',
  },
  {
    quantity: 'turns of an annular cutter by diameter; its feed, high end; feed of a boring head',
    why: 'no table was found: hole saws stand in for the first, the others are from memory',
  },
  {
    quantity: 'speed limit of a boring head',
    why: 'no published one was found; the job has to give it',
  },
  {
    quantity: 'feed of an end mill that plunges, a quarter to a half',
    why: 'common practice, no source',
  },
  {
    quantity: 'where a drill grabs, is led aside, or a tool cannot enter',
    why: 'common practice, no source; the geometry that decides it is checked, the advice is not',
  },
  {
    quantity: 'what really breaks a floor or a web',
    why: 'the formulas are checked; no measured force was found, and a notch or a blow changes it by more than the range',
  },
  {
    quantity: 'which of several ways to back off, or directions to step in, is the best',
    why: 'a choice of our own; that it is clear and takes what it says is checked above',
  },
  {
    quantity: 'side load as a measure of one-sidedness',
    why: 'a measure of our own; it follows chord over arc of the handbook, cutting forces are not worked out',
  },
  {
    quantity: 'words of findings and cautions',
    why: 'cautions are re-worded from the rule books in docs/cutting-numbers.md; the words have no value to compare',
  },
];
