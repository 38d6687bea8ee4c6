import type { Report, ReportKnifeEdge } from '@edgebite/core';

/** The name of the piece that a knife edge is on, as drawings have it; null on the kept one, where they all are else. */
export function ownerOf(report: Report, { piece }: ReportKnifeEdge): string | null {
  const owner = report.pieces.find(({ id }) => id === piece);
  return owner === undefined || owner.role === 'kept' ? null : owner.label;
}
