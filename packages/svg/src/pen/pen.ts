import type { Theme } from './theme.js';

/** With what a drawing is drawn: its colours, and what its ids begin with. */
export interface Pen {
  readonly theme: Theme;
  readonly prefix: string;
}
