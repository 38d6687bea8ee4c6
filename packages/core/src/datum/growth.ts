/** By how much the radius of a cut's outside grows, and that of the core that a ring leaves. */
export interface Growth {
  readonly rim: number;
  readonly core: number;
}

/** What cuts as large as it says. */
export const EXACT: Growth = { rim: 0, core: 0 };

/** How far the size of a cut may be off. */
export interface Size {
  /** What it cuts over its size on the whole. */
  readonly known: Growth;
  /** Each anywhere from all of it backwards to all of it forwards; another key, another cause. */
  readonly causes: readonly { readonly key: string; readonly grows: Growth }[];
}

/** A size that is exact. */
export const EXACT_SIZE: Size = { known: EXACT, causes: [] };

/** How far a tool may be off, in the unit of the part. */
export interface ToolErrors {
  /** Its diameter, to either side, and what that is one with. */
  readonly diameter: number;
  readonly diameterKey: string;
  /** Full reading of an indicator on its teeth at most, and what that is one with. */
  readonly runOut: number;
  readonly runOutKey: string;
}

/**
 * How far the size of what a tool cuts may be off. A cutter that runs out turns about another axis than its own: it cuts
 * a circle larger by up to the reading of the indicator, which is somewhere between none and all of it. Its ring leaves a
 * core that is as much smaller. A diameter that is off makes rim and core larger or smaller together: teeth are as wide as
 * they are said to be.
 *
 * Source: indicator reading (FIM) = twice the eccentricity (definition); bounds that are not even about the figure, JCGM
 * 100:2008 (GUM), 4.3.8: its middle is taken, and half their distance to either side.
 */
export function sizeOf({ diameter, diameterKey, runOut, runOutKey }: ToolErrors): Size {
  const over = runOut / 4;
  const grows = { rim: over, core: 0 - over };
  return {
    known: runOut === 0 ? EXACT : grows,
    causes: [
      ...(diameter === 0 ? [] : [{ key: diameterKey, grows: { rim: diameter / 2, core: diameter / 2 } }]),
      ...(runOut === 0 ? [] : [{ key: runOutKey, grows }]),
    ],
  };
}

/** The largest growth of a cut's outside. */
export function mostGrowth({ known, causes }: Size): number {
  return causes.reduce((sum, { grows }) => sum + Math.abs(grows.rim), known.rim);
}
