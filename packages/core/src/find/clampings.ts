import { isThereIn, type KeepOut } from '../datum/keep-out.js';
import type { Laid } from '../datum/setup.js';
import type { Region } from '../region/region.js';
import { layAsDrawn } from '../step/order.js';
import type { Result } from '../step/result.js';
import type { Step } from '../step/step.js';

/** Steps of one setup, in order, and their numbers. */
export interface Clamping {
  readonly lay: Laid;
  readonly steps: readonly { readonly step: Step; readonly number: number }[];
  readonly keepOuts: readonly KeepOut[];
  /** In words, to go after a comma or a verb: ` in setup a`; empty where there is none. */
  readonly where: string;
}

/** A section of metal between two heights over the bottom of the drawn part. */
export interface HeightSection {
  readonly from: number;
  readonly to: number;
  readonly region: Region;
}

/** What each setup of a job holds, with its steps; what is in none lies as drawn. */
export function clampingsOf({ job, set, steps }: Result): Clamping[] {
  const lays = new Map(
    (set.lays.length > 0 ? set.lays : [layAsDrawn(job, 'top')]).map((lay) => [lay.setup.id, lay]),
  );
  const byId = new Map<string, { step: Step; number: number }[]>([...lays.keys()].map((id) => [id, []]));
  steps.forEach((step, number) => {
    const { id } = step.approach.lay.setup;
    lays.set(id, step.approach.lay);
    byId.set(id, [...(byId.get(id) ?? []), { step, number }]);
  });
  const known = new Set(job.setups.map(({ id }) => id));
  return [...byId].map(([id, own]) => ({
    lay: lays.get(id) as Laid,
    steps: own,
    keepOuts: job.keepOuts.filter((one) => isThereIn(one, id)),
    where: known.has(id) ? ` in setup ${id}` : '',
  }));
}
