import type { Place } from '../sim/shapes.js';

/* The steps of a report, as far as this check reads them. */

export interface ToldDirection {
  readonly words: string;
  readonly degrees: number;
}

export interface ToldLoad {
  readonly from: number;
  readonly to: number;
  readonly share: number;
  readonly strikes: number;
  readonly sideLoad: number;
  readonly push: ToldDirection | null;
  readonly pushDrawn: number | null;
}

export interface ToldStand {
  readonly what: 'center' | 'start' | 'lead in' | 'path' | 'lead out' | 'back off';
  readonly at: Place;
  readonly readout: Place;
  readonly rounding: Place;
  readonly arc: null | {
    readonly center: Place;
    readonly radius: number;
    readonly sense: 'clockwise' | 'counter-clockwise';
  };
  readonly lifted: boolean;
}

export interface ToldBody {
  readonly body: string;
  readonly volume: number;
  readonly mass?: number | null;
  readonly atDepth: number;
  readonly thickness?: number;
}

export interface ToldSection {
  readonly from: number;
  readonly to: number;
  readonly region: ToldRegion;
}

export type ToldRegion = readonly {
  readonly outer: readonly ToldEdge[];
  readonly holes: readonly (readonly ToldEdge[])[];
}[];

export type ToldEdge =
  | { readonly kind: 'line'; readonly a: Place; readonly b: Place }
  | {
      readonly kind: 'arc';
      readonly a: Place;
      readonly b: Place;
      readonly center: Place;
      readonly ccw: boolean;
    };

export interface ToldStep {
  readonly setup: string;
  readonly cut: string;
  readonly pass: number | null;
  readonly passes: number;
  readonly up: 'top' | 'bottom';
  readonly center: Place | null;
  readonly diameter: number;
  readonly wall: number | null;
  readonly reaches: number;
  readonly area: number;
  readonly volume: number;
  readonly before: readonly ToldSection[] | null;
  readonly after: readonly ToldSection[] | null;
  readonly volumes: { readonly kept: number; readonly loose: number; readonly removed: number };
  readonly frees: readonly (ToldBody & { readonly view: ToldRegion })[];
  readonly hangs: readonly ToldBody[];
  readonly meets: readonly { readonly body: string; readonly volume: number }[];
  readonly under: { readonly below: number; readonly over: string | null; readonly margin: number | null };
  readonly milling: 'climb' | 'conventional' | null;
  readonly starts: 'metal' | 'air' | null;
  readonly load: null | {
    readonly heights: readonly ToldLoad[];
    readonly entry: ToldLoad | null;
    readonly worst: ToldLoad | null;
    readonly breakThrough: ToldLoad | null;
  };
  readonly backOff: {
    readonly by: number | null;
    readonly machine: ToldDirection | null;
    readonly drawn: number | null;
    readonly to: Place | null;
    readonly readout: Place | null;
    readonly gap: number | null;
    readonly why: string | null;
  };
  readonly stands: readonly ToldStand[];
  readonly findings: readonly number[];
}

export interface ToldReport {
  readonly thickness: number;
  readonly outline: ToldRegion;
  readonly pieces: readonly { readonly id: string; readonly role: string; readonly volume: number }[];
  readonly steps: readonly ToldStep[];
  readonly bodies: readonly {
    readonly id: string;
    readonly role: string;
    readonly step: number;
    readonly atDepth: number;
    readonly volume: number;
    readonly end: 'left' | 'lifted out' | 'cut into';
    readonly endStep: number | null;
    readonly pieces: readonly string[];
  }[];
  readonly findings: readonly {
    readonly level: string;
    readonly code: string;
    readonly message: string;
    readonly about: readonly string[];
  }[];
}
