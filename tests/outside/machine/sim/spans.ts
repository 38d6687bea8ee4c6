/** A stretch of a line or a turn: in metal, in none, or not told. */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly state: 'in' | 'out' | 'untold';
}

/** What is known of all of a stretch: `split` asks for its halves, `untold` says that those would not help. */
export type Told = 'in' | 'out' | 'untold' | 'split';

/**
 * Parts a stretch into what is in metal and what is not, by halving until each is told or too short to matter.
 * Stretches alike that follow each other are one.
 */
export function spansOf(
  from: number,
  to: number,
  shortest: number,
  tell: (middle: number, half: number) => Told,
): Span[] {
  const spans: { from: number; to: number; state: Span['state'] }[] = [];
  const add = (a: number, b: number, state: Span['state']) => {
    const last = spans.at(-1);
    if (last !== undefined && last.state === state) last.to = b;
    else spans.push({ from: a, to: b, state });
  };
  const part = (a: number, b: number) => {
    const half = (b - a) / 2;
    const told = tell(a + half, half);
    if (told !== 'split') add(a, b, told);
    else if (half < shortest) add(a, b, 'untold');
    else {
      part(a, a + half);
      part(a + half, b);
    }
  };
  const STARTS = 16;
  for (let k = 0; k < STARTS; k++) {
    part(from + ((to - from) * k) / STARTS, from + ((to - from) * (k + 1)) / STARTS);
  }
  return spans;
}

/** Length of all spans of a state. */
export function lengthOf(spans: readonly Span[], state: Span['state']): number {
  return spans.reduce((sum, span) => sum + (span.state === state ? span.to - span.from : 0), 0);
}
