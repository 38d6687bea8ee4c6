import { targetAt } from '../datum/target.js';
import { namesIn } from '../find/names.js';
import { pointToJson } from '../format/json.js';
import type { Job } from '../job/job.js';
import { listed } from '../load/load-words.js';
import type { ClearStand } from '../passes/clear-stand.js';
import type { ReportStep } from '../report/report-schema.js';
import type { Step } from '../step/step.js';

/** Where a tool that cuts in passes stands clear before the first one; null for all other steps. */
export function clearRow(job: Job, { clear, approach }: Step): ReportStep['clear'] {
  if (clear === null) return null;
  const { kind, stand } = clear;
  if (stand.kind === 'none') {
    const why = kind === 'step in' ? stepInWords(stand, job) : openOutWords(stand, job);
    return { at: null, readout: null, diameter: null, gap: null, why };
  }
  const { center, radius, gap } = stand;
  return {
    at: pointToJson(center),
    readout: [...targetAt(approach.lay, center).readout],
    diameter: 2 * radius,
    gap,
    why: null,
  };
}

type None = ClearStand & { readonly kind: 'none' };

function stepInWords(none: None, job: Job): string {
  if (none.why === 'keep-out')
    return `${blocked(none.ids, job)} Move what is in the way, or come from another side.`;
  return 'Behind where it first touches, the tool has no place clear of all metal: it cuts as soon as it is down. Come from another side if it is to be tried clear first.';
}

function openOutWords(none: None, job: Job): string {
  if (none.why === 'keep-out') return `${blocked(none.ids, job)} Move what is in the way.`;
  return 'The tool cannot be set so small that it goes down clear of all metal: it cuts as soon as it is down. Rough the hole wider if it is to be tried clear first.';
}

function blocked(ids: readonly string[], job: Job): string {
  const { thing } = namesIn(job);
  return `The tool cannot stand clear before its first pass: it would meet ${listed(ids.map(thing))}.`;
}
