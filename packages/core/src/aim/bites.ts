import { intersect } from '../combine/boolean.js';
import { subtract } from '../combine/subtract.js';
import type { JobIssue } from '../document/errors.js';
import type { OutlineDocument } from '../document/schema.js';
import { pointToJson } from '../format/json.js';
import { area } from '../region/measure.js';
import type { Loop, Region } from '../region/region.js';
import { SAME_SHARE } from './aim.js';

/** The blank without some bites, as an outline; null if that is no part, with what is wrong taken down. */
export function bittenOutline(
  blank: Region,
  bites: readonly Region[],
  issues: JobIssue[],
): OutlineDocument | null {
  const nothing = SAME_SHARE * area(blank);
  bites.forEach((bite, k) => {
    if (area(intersect([blank, bite])) > nothing) return;
    issues.push({
      path: `/finished/bites/${k}`,
      message: 'takes nothing of the blank; move it there, or take it out',
    });
  });
  const [part, ...others] = subtract(blank, bites);
  if (part === undefined || others.length > 0) {
    const left = part === undefined ? 'nothing' : `${others.length + 1} pieces that do not hang together`;
    const message = `leave ${left}; a part is one piece: move a bite, or make it smaller`;
    issues.push({ path: '/finished/bites', message });
    return null;
  }
  return {
    edges: loopDocument(part.outer),
    holes: part.holes.map((hole) => ({ edges: loopDocument(hole) })),
  };
}

type Written = Extract<OutlineDocument, { readonly edges: unknown }>['edges'];

function loopDocument(loop: Loop): Written {
  return loop.map((edge) => {
    const ends = { a: pointToJson(edge.a), b: pointToJson(edge.b) };
    if (edge.kind === 'line') return { kind: 'line', ...ends };
    return { kind: 'arc', ...ends, center: pointToJson(edge.center), ccw: edge.ccw };
  });
}
