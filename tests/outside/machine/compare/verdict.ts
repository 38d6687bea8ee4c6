/** What came of comparing a report with the simulation. */
export class Verdict {
  readonly faults: string[] = [];
  readonly checked = new Map<string, number>();
  readonly skipped = new Map<string, number>();

  constructor(private where = '') {}

  /** Says where what follows is. */
  at(where: string): void {
    this.where = where;
  }

  check(what: string, isRight: boolean, detail: () => string): void {
    this.checked.set(what, (this.checked.get(what) ?? 0) + 1);
    if (!isRight) this.faults.push(`${this.where}: ${what}: ${detail()}`);
  }

  /** Counts what the sampling cannot decide. */
  skip(what: string): void {
    this.skipped.set(what, (this.skipped.get(what) ?? 0) + 1);
  }

  near(what: string, told: number, found: number, slack: number): void {
    this.check(
      what,
      Math.abs(told - found) <= slack,
      () => `told ${told}, found ${found} to within ${slack}`,
    );
  }

  add(other: Verdict): void {
    this.faults.push(...other.faults);
    for (const [into, from] of [
      [this.checked, other.checked],
      [this.skipped, other.skipped],
    ] as const) {
      for (const [what, count] of from) into.set(what, (into.get(what) ?? 0) + count);
    }
  }

  /** Share of what was looked at that was skipped. */
  shareSkipped(): number {
    const sum = (counts: ReadonlyMap<string, number>) => [...counts.values()].reduce((a, b) => a + b, 0);
    return sum(this.skipped) / Math.max(1, sum(this.skipped) + sum(this.checked));
  }

  counts(): string {
    const keys = [...new Set([...this.checked.keys(), ...this.skipped.keys()])].sort();
    return keys
      .map((key) => `${key}: ${this.checked.get(key) ?? 0} checked, ${this.skipped.get(key) ?? 0} left open`)
      .join('\n');
  }
}
