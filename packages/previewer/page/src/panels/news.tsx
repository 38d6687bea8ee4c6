import { countText } from '@edgebite/svg';
import { effect, useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { newsOf } from '../state/news.js';
import { isCaughtUp, panelJob, panelResult } from '../state/panels.js';
import { issues } from '../state/store.js';

/** How long a job must stand still before its findings are told, milliseconds: a hand may still be moving. */
const REST = 600;

/** Tells those who do not see the list what a change has brought, once the hand rests. */
export function News() {
  const words = useSignal('');
  const before = useRef<readonly string[] | null>(null);
  useEffect(
    () =>
      effect(() => {
        panelJob.value;
        const findings = panelResult.value?.summary.findings;
        const faults = issues.value.length;
        if (!isCaughtUp.value && faults === 0) return;
        const timer = setTimeout(() => {
          if (faults > 0) {
            words.value = `${countText(faults, 'fault')} in the job.`;
            return;
          }
          const now = findings?.map(({ level, message }) => `${level}: ${message}`) ?? [];
          words.value = newsOf(before.current, now);
          before.current = now;
        }, REST);
        return () => clearTimeout(timer);
      }),
    [],
  );
  return (
    <p class="sr-only" role="status" id="news">
      {words.value}
    </p>
  );
}
