/** One figure of a run; printed as a line of its own. */
export type Figure =
  | {
      readonly kind: 'time';
      readonly case: string;
      readonly who: string;
      /** Milliseconds, conversions in and out included: wall clock, and processor time of the process. */
      readonly wall: number;
      readonly cpu: number;
      /** Milliseconds of the work alone, by the wall clock. */
      readonly bare: number;
      readonly right: boolean;
    }
  | {
      /** Their time over ours: with conversions, without, and by processor time; null if their answer is wrong. */
      readonly kind: 'ratio' | 'bare' | 'cpu';
      readonly case: string;
      readonly who: string;
      readonly ratio: number | null;
    }
  | {
      /** Time of the certificate over that of the rest of an overlay. */
      readonly kind: 'proof';
      readonly case: string;
      readonly share: number;
    }
  | {
      readonly kind: 'growth';
      readonly case: string;
      readonly sizes: readonly number[];
      readonly times: readonly number[];
      /** Time over the time of half the size. */
      readonly factors: readonly number[];
      readonly median: number;
    }
  | {
      readonly kind: 'memory';
      readonly case: string;
      readonly who: string;
      /** Most resident memory of the process, and that over what it had before the call, in MB. */
      readonly peakRss: number;
      readonly rssGrown: number;
      /** Heap that the result keeps, in MB. */
      readonly heapKept: number;
    };

/** A figure as a line: a word for its kind, the case, who, numbers. */
export function lineOf(figure: Figure): string {
  switch (figure.kind) {
    case 'time': {
      const { wall, cpu, bare, right } = figure;
      const numbers = `wall ${ms(wall)} cpu ${ms(cpu)} bare ${ms(bare)} ms`;
      return `TIME ${figure.case} ${figure.who} ${numbers}${right ? '' : ' WRONG'}`;
    }
    case 'ratio':
    case 'bare':
    case 'cpu': {
      const value = figure.ratio === null ? 'WRONG' : figure.ratio.toPrecision(3);
      return `${figure.kind.toUpperCase()} ${figure.case} ${figure.who} ${value}`;
    }
    case 'proof':
      return `PROOF ${figure.case} ${(100 * figure.share).toFixed(0)} % of the rest of the overlay`;
    case 'growth': {
      const factors = figure.factors.map((f) => f.toFixed(2)).join(' ');
      return `GROWTH ${figure.case} ${figure.sizes.join(' ')} factors ${factors} median ${figure.median.toFixed(2)}`;
    }
    case 'memory': {
      const [peak, grown, heap] = [figure.peakRss, figure.rssGrown, figure.heapKept].map((mb) =>
        mb.toFixed(1),
      );
      return `MEMORY ${figure.case} ${figure.who} peak-rss ${peak} MB (+${grown}) heap-kept +${heap} MB`;
    }
  }
}

function ms(value: number): string {
  return value.toPrecision(3);
}
