import type { Disagreement, Verdict } from './compare-peers.js';

const EXPLANATIONS: Record<Verdict, string> = {
  'peer threw':
    'The library gave an exception and no answer. The slab method has our areas, pieces and holes.',
  'peer area wrong':
    'Its area differs from ours by more than its method explains. The slab method has our area, pieces and holes.',
  'peer counts differ':
    'Areas agree, pieces or holes do not, and no two of our loops touch. The slab method counts as we do. The causes: gaps, webs or slits thinner than the chord error or the tolerance of the library (near-tangent and near-coincident circles), and sides that coincide but for rounding, between which it leaves a slit.',
  'contact at a point':
    'Areas agree. In our answer loops touch at a point: circles tangent to an edge or to each other, through a corner, or through a common point. We give one loop for each side of the contact; the peer runs one loop through it, or, with chords in place of arcs, does not reach it and leaves a web. The slab method counts as we do.',
  'at the weld tolerance':
    'The case plants a gap of a billionth of the part or less. Whether pieces that close hang together is for the tolerance to decide; all three areas agree.',
};

/** What a run of the peers compared. */
export interface PeerRun {
  readonly seed: number;
  readonly cases: number;
  readonly peers: readonly string[];
  /** Disagreements in which the third computation did not bear us out. */
  readonly unexplained: number;
}

/** The page docs/peer-disagreements.md: what differed, how often, and why, with an example of each kind. */
export function disagreementReport(found: readonly Disagreement[], run: PeerRun): string {
  const verdicts = Object.keys(EXPLANATIONS) as Verdict[];
  const lines = [
    '# Where other libraries answer differently',
    '',
    `Written by \`npm run prove -- --seed ${run.seed}\`: ${run.cases} generated cases (outline less discs, rings and other cuts, circles written as three arcs), each given to ${run.peers.join(' and ')}. Compared: area, number of pieces, number of holes. Where one differed, a third computation that shares no code with either decided: the slab method of \`tests/tools/slabs.ts\`. It did not bear us out in ${run.unexplained} of them; any would be a fault of ours. Pieces thinner than a peer can resolve are not counted, and pieces under a billionth of the squared extent are left to the laws.`,
    '',
  ];
  for (const peer of run.peers)
    lines.push(
      ...peerSection(
        peer,
        found.filter((d) => d.peer === peer),
        verdicts,
      ),
    );
  lines.push('## What the verdicts mean', '');
  for (const verdict of verdicts) lines.push(`- **${verdict}**: ${EXPLANATIONS[verdict]}`);
  return `${lines.join('\n')}\n`;
}

function peerSection(peer: string, found: readonly Disagreement[], verdicts: readonly Verdict[]): string[] {
  if (found.length === 0) return [`## ${peer}`, '', 'No disagreement.', ''];
  const lines = [`## ${peer}`, '', '| family | verdict | cases | for example |', '|---|---|--:|---|'];
  const familyNames = [...new Set(found.map((d) => d.family))];
  for (const family of familyNames) {
    for (const verdict of verdicts) {
      const same = found.filter((d) => d.family === family && d.verdict === verdict);
      if (same.length > 0) lines.push(`| ${family} | ${verdict} | ${same.length} | ${same[0]?.what ?? ''} |`);
    }
  }
  return [...lines, ''];
}
