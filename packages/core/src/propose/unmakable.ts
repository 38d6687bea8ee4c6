import type { PlannedCut } from '../feature/cut-plan.js';

/**
 * Cuts that cannot be made after certain others. That depends on what is gone, not on the order in which it went: what is
 * known of one order need not be examined in the next, nor in another choice that has the same cuts.
 */
export class Unmakable {
  readonly #numbers = new Map<PlannedCut, number>();
  readonly #known = new Set<string>();

  /** Whether a cut of an order is known not to be makable after those before it. */
  has(order: readonly PlannedCut[]): boolean {
    return this.#known.size > 0 && order.some((_, k) => this.#known.has(this.#keyOf(order, k)));
  }

  /** Takes down the cuts of an order that a report says cannot be made; it names them as `cut:ID`. */
  add(order: readonly PlannedCut[], names: readonly string[]): void {
    order.forEach(({ id }, k) => {
      if (names.includes(`cut:${id}`)) this.#known.add(this.#keyOf(order, k));
    });
  }

  /** A cut and those before it, in whichever order. */
  #keyOf(order: readonly PlannedCut[], k: number): string {
    const before = order.slice(0, k).map((cut) => this.#numberOf(cut));
    return `${this.#numberOf(order[k] as PlannedCut)} after ${before.sort((a, b) => a - b).join()}`;
  }

  #numberOf(cut: PlannedCut): number {
    const known = this.#numbers.get(cut);
    if (known !== undefined) return known;
    this.#numbers.set(cut, this.#numbers.size);
    return this.#numbers.size - 1;
  }
}
