import { numberText } from '@edgebite/svg';
import { useSignal } from '@preact/signals';
import { nudge } from '../board/handles.js';
import { movableCuts } from '../state/place.js';
import { chosenCut, job, readoutStep, shown, unit } from '../state/store.js';
import type { Place } from '../worker/sketch.js';

/** How many steps of the readout one press of a button takes. */
const STEPS = [1, 10, 100, 1000] as const;

const WAYS: readonly { readonly name: string; readonly sign: string; readonly way: Place }[] = [
  { name: 'left', sign: '←', way: [-1, 0] },
  { name: 'down', sign: '↓', way: [0, -1] },
  { name: 'up', sign: '↑', way: [0, 1] },
  { name: 'right', sign: '→', way: [1, 0] },
];

/** Where the chosen centre stands, in large numbers, with buttons to move it in fine steps. */
export function CenterPanel() {
  const steps = useSignal<number>(10);
  const summary = shown.value?.summary;
  const cut = movableCuts(job.value).find(({ id }) => id === chosenCut.value);
  if (summary === undefined) return null;
  if (cut === undefined) {
    return (
      <p class="center-panel idle">Take hold of a cross to move a cut, or of a number to see its finding.</p>
    );
  }
  const { index, id, center } = cut;
  const step = (count: number): string => String(Number((readoutStep() * count).toPrecision(9)));
  return (
    <section class="center-panel" aria-label={`Centre of ${id}`}>
      <p class="whose">
        Centre of <b>{id}</b>
      </p>
      <dl class="large">
        {(['x', 'y'] as const).map((axis, k) => (
          <div key={axis}>
            <dt>{axis}</dt>
            <dd>
              <b>{numberText(center[k] ?? 0, summary.units)}</b> <span class="unit">{unit.value}</span>
            </dd>
          </div>
        ))}
      </dl>
      <div class="steps">
        {WAYS.map(({ name, sign, way }) => (
          <button
            key={name}
            type="button"
            aria-label={`Move ${name} by ${step(steps.value)}`}
            onClick={() => nudge(index, center, way, steps.value)}
          >
            {sign}
          </button>
        ))}
        <label for="step-size">by</label>
        <select
          id="step-size"
          value={String(steps.value)}
          onChange={({ currentTarget }) => {
            steps.value = Number(currentTarget.value);
          }}
        >
          {STEPS.map((count) => (
            <option key={count} value={String(count)}>
              {step(count)}
            </option>
          ))}
        </select>
      </div>
    </section>
  );
}
