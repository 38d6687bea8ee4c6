import type { PlainCut } from '../document/schema.js';
import type { DrawerTool } from '../document/schema-drawer.js';

type WithoutId<T> = T extends unknown ? Omit<T, 'id'> : never;

/** A cut that a way is made of. */
export interface PlannedCut {
  /** Its id in the job. */
  readonly id: string;
  readonly tool: DrawerTool;
  /** It comes after all cuts of the same feature with a lower number. */
  readonly stage: number;
  /** id of the feature that it is made for. */
  readonly feature: string;
  readonly side: 'top' | 'bottom';
  /** Whether it forms the wall that is to be left. */
  readonly isLast: boolean;
  readonly document: WithoutId<PlainCut>;
}

/** One way to make one feature. */
export interface Method {
  readonly cuts: readonly PlannedCut[];
  /** About how many passes one of its cuts takes; one by default. */
  readonly passes?: number;
}
