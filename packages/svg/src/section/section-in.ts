import type { ReportPiece, ReportRegion } from '@edgebite/core';

/** A stretch of heights, such as a slab. */
export interface Heights {
  readonly from: number;
  readonly to: number;
}

/** What a piece is at all heights of a slab; nothing where it is not there. */
export function sectionIn({ sections }: ReportPiece, { from, to }: Heights): ReportRegion {
  return sections.find((own) => own.from <= from && own.to >= to)?.region ?? [];
}
