import { EXACT_SIZE, type Size, sizeOf } from '../datum/growth.js';
import type { ToolDocument } from '../document/schema.js';
import type { Job } from '../job/job.js';

/** Tells how far the size of a cut may be off in a setup. */
export type SizeFinder = (cut: string, setup: string) => Size;

/**
 * How far cuts may be off in size for their tools. A cutter is one and the same in all setups, and is put in the spindle anew
 * for each of them; a head is set anew for each of its cuts that has another diameter than the one before in its setup.
 */
export function cutSizes(job: Job): SizeFinder {
  const toolOf = new Map<string, ToolDocument>(
    job.tools.flatMap((tool) => tool.cuts.map((cut) => [cut, tool] as const)),
  );
  const settings = settingsOf(job, toolOf);
  return (cut, setup) => {
    const tool = toolOf.get(cut);
    if (tool === undefined) return EXACT_SIZE;
    const { id, diameterTolerance = 0, runOut = 0, settingTolerance = 0 } = tool;
    const isHead = tool.kind === 'boring head';
    return sizeOf({
      diameter: isHead ? settingTolerance : diameterTolerance,
      diameterKey: isHead ? `setting ${settings.get(`${setup} ${cut}`)} of ${id}` : `size of ${id}`,
      runOut,
      runOutKey: `run-out of ${id} in ${setup}`,
    });
  };
}

/** By setup and cut: which setting of its head a cut is made with. */
function settingsOf(job: Job, toolOf: ReadonlyMap<string, ToolDocument>): ReadonlyMap<string, string> {
  const settings = new Map<string, string>();
  for (const setup of job.setups) {
    const own = new Set(setup.cuts);
    const last = new Map<string, { readonly diameter: number; readonly name: string }>();
    for (const cut of job.cuts) {
      const tool = toolOf.get(cut.id);
      if (!own.has(cut.id) || tool === undefined) continue;
      const before = last.get(tool.id);
      const isOpened = cut.plan?.passes?.kind === 'open out';
      const isSame = before?.diameter === cut.diameter && !isOpened;
      const name = isSame ? before.name : `${setup.id} ${cut.id}`;
      last.set(tool.id, { diameter: cut.diameter, name });
      settings.set(`${setup.id} ${cut.id}`, name);
    }
  }
  return settings;
}
