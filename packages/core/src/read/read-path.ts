import type { JobIssue } from '../document/errors.js';
import type { PathDocument } from '../document/schema.js';
import { extentOf, joined } from '../geometry/bounds.js';
import type { Edge } from '../geometry/edge.js';
import { edgeBounds } from '../geometry/measure.js';
import { shownNumber } from '../geometry/shown.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { bad, good, type Read, readEdges, readSvgPath, readWkt } from '../job/read-edges.js';
import { edgeFault } from '../outline/edge-faults.js';
import { joinEdges } from '../outline/join.js';

/** A path that is drawn, and not taken from the outline. */
export type DrawnPath = Exclude<PathDocument, { along: unknown }>;

/** The edges of the path of a swept cut, each of which starts where the one before ends. */
export function readPath(document: DrawnPath, path: string): Read<readonly Edge[]> {
  if ('edges' in document) {
    const read = readEdges(document.edges, `${path}/edges`);
    return read.ok ? connected(read.value, (edge) => `${path}/edges/${edge}`) : read;
  }
  if ('svgPath' in document) {
    const read = readSvgPath(document.svgPath, `${path}/svgPath`);
    if (!read.ok) return read;
    const [chain, ...others] = read.value;
    return chain === undefined || others.length > 0
      ? bad(`${path}/svgPath`, `draws ${read.value.length} lines apart; make each a cut of its own`)
      : connected(chain.edges, () => `${path}/svgPath`);
  }
  const read = readWkt(document.wkt, `${path}/wkt`);
  if (!read.ok) return read;
  return read.value.kind === 'curve'
    ? connected(read.value.chain.edges, () => `${path}/wkt`)
    : bad(`${path}/wkt`, 'must be a LINESTRING, CIRCULARSTRING or COMPOUNDCURVE; a polygon is no path');
}

function connected(edges: readonly Edge[], pathOf: (edge: number) => string): Read<readonly Edge[]> {
  const tolerance = weldTolerance(extentOf(edges.map(edgeBounds).reduce(joined)));
  const bent = edges.flatMap((edge, i): JobIssue[] => {
    const fault = edgeFault(edge, tolerance);
    return fault === null ? [] : [{ path: pathOf(i), message: `edge ${i} ${fault}` }];
  });
  const { edges: whole, gaps } = joinEdges(edges, false);
  const broken = gaps.map(({ edge, next, size }) => ({
    path: pathOf(edge),
    message: `edge ${edge} ends ${shownNumber(size)} from where edge ${next} starts; a path is one line`,
  }));
  const issues = [...bent, ...broken];
  return issues.length > 0 ? { ok: false, issues } : good(whole);
}
