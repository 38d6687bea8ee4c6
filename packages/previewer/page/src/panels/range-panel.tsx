import type { RangeQuery, RangeReport } from '@edgebite/core';
import { drawRange } from '@edgebite/svg';
import { computed, useSignal } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { isList, isObject, type JsonObject, valueAt } from '../document/json.js';
import { numberOf } from '../form/entry.js';
import { askRange, ranging } from '../state/ranging.js';
import { chosenCut, fresh, isMadeOnce, issues, job, readoutStep, unit, worked } from '../state/store.js';
import type { Worked } from '../worker/worked.js';
import { drawnOrSaid } from './element.js';
import { type Along, alongsOf, spanOf } from './spans.js';
import { verdictOf } from './verdict.js';

const CALLED: Readonly<Record<Along, string>> = {
  x: 'place along x',
  y: 'place along y',
  diameter: 'diameter',
};

/** Between which values the chosen cut could be moved or made larger, asked for by a button; not of one with copies, which go with it. */
export function RangePanel() {
  const open = useSignal(false);
  const id = asked.value;
  if (id === null) return null;
  return (
    <details
      class="card range-panel"
      id="range-panel"
      onToggle={({ currentTarget }) => {
        open.value = currentTarget.open;
      }}
    >
      <summary>
        How far could <b>{id}</b> go?
      </summary>
      {open.value && <Asking key={id} id={id} />}
    </details>
  );
}

/** The cut that can be asked for. */
const asked = computed(() => {
  const id = chosenCut.value;
  if (id === null || !isMadeOnce(id) || cutNamed(id) === null) return null;
  return worked.value.get(id) === undefined ? null : id;
});

function cutNamed(id: string): JsonObject | null {
  const cuts = valueAt(job.value ?? undefined, ['cuts']);
  return isList(cuts) ? (cuts.filter(isObject).find((one) => one.id === id) ?? null) : null;
}

function Asking({ id }: { id: string }) {
  const [cut, known] = [cutNamed(id), worked.value.get(id)];
  if (cut === null || known === undefined) return null;
  return (
    <>
      <Query id={id} cut={cut} known={known} />
      <Found id={id} />
    </>
  );
}

function Query({ id, cut, known }: { id: string; cut: JsonObject; known: Worked }) {
  const along = useSignal<Along>('x');
  // What was typed; null while the range is the one that suggests itself.
  const typed = useSignal<{ readonly from: string; readonly to: string } | null>(null);
  const span = spanOf(along.value, cut, known, readoutStep());
  const from = typed.value?.from ?? String(span[0]);
  const to = typed.value?.to ?? String(span[1]);
  const query = queryOf(id, along.value, from, to);
  const ready = fresh.value && issues.value.length === 0;
  return (
    <form
      class="query"
      onSubmit={(event) => {
        event.preventDefault();
        if (query !== null && ready) askRange(query);
      }}
    >
      <label for="range-along">Its</label>
      <select
        id="range-along"
        value={along.value}
        onChange={({ currentTarget }) => {
          along.value = currentTarget.value as Along;
          typed.value = null;
        }}
      >
        {alongsOf(cut).map((one) => (
          <option key={one} value={one}>
            {CALLED[one]}
          </option>
        ))}
      </select>
      <Bound
        name="from"
        value={from}
        onTyped={(text) => {
          typed.value = { from: text, to };
        }}
      />
      <Bound
        name="to"
        value={to}
        onTyped={(text) => {
          typed.value = { from, to: text };
        }}
      />
      <button type="submit" disabled={query === null || !ready}>
        Find safe values
      </button>
    </form>
  );
}

function queryOf(cut: string, along: Along, from: string, to: string): RangeQuery | null {
  const [low, high] = [boundOf(from), boundOf(to)];
  return low === null || high === null ? null : { cut, along, from: low, to: high };
}

const boundOf = (text: string): number | null => numberOf(text, unit.value === 'in' ? 'inch' : 'mm');

interface BoundProps {
  readonly name: 'from' | 'to';
  readonly value: string;
  readonly onTyped: (text: string) => void;
}

function Bound({ name, value, onTyped }: BoundProps) {
  return (
    <span class="bound">
      <label for={`range-${name}`}>{name}</label>
      <input
        id={`range-${name}`}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        value={value}
        aria-invalid={boundOf(value) === null}
        onInput={({ currentTarget }) => onTyped(currentTarget.value)}
      />
      <span class="unit">{unit.value}</span>
    </span>
  );
}

function Found({ id }: { id: string }) {
  const state = ranging.value;
  const own = state.kind === 'none' || state.kind === 'left behind' || state.query.cut === id ? state : null;
  return (
    <>
      <div role="status" id="range-state">
        {own?.kind === 'found' ? (
          <Answer report={own.report} />
        ) : (
          <p class={`hint${own?.kind === 'refused' ? ' fault' : ''}`}>{own === null ? '' : wordsOf(own)}</p>
        )}
      </div>
      {own?.kind === 'found' && <Strip report={own.report} />}
    </>
  );
}

function wordsOf(state: Exclude<typeof ranging.value, { readonly kind: 'found' }>): string {
  switch (state.kind) {
    case 'none':
      return 'Works out where something changes as this one number does, and what is safe in between.';
    case 'working':
      return 'Being worked out.';
    case 'left behind':
      return 'The job has changed since it was asked. Find them anew.';
    case 'refused':
      return `This cannot be told: ${state.fault}.`;
  }
}

/** Stretches that are listed at most; the strip has them all. */
const MOST = 6;

function Answer({ report }: { report: RangeReport }) {
  const { safe, head, next, stretches } = verdictOf(report);
  return (
    <>
      <p class="answer">
        <b class={safe === null ? '' : safe ? 'is-safe' : 'is-not-safe'}>{head}</b>
        {next !== '' && ` ${next}`}
      </p>
      {stretches.length > 0 && (
        <>
          <p class="hint">Safe in this range:</p>
          <ul class="stretches">
            {stretches.slice(0, MOST).map((stretch) => (
              <li key={stretch}>{stretch}</li>
            ))}
          </ul>
          {stretches.length > MOST && <p class="hint">And {stretches.length - MOST} more, in the drawing.</p>}
        </>
      )}
    </>
  );
}

/** Pixels for a millimetre of the strip, as on the sheet at its usual size; and its narrowest and widest, millimetres. */
const SCALE = 3.6;
const WIDTH = { least: 120, most: 180 };

function Strip({ report }: { report: RangeReport }) {
  const holder = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const element = holder.current;
    if (element === null) return;
    const width = Math.min(Math.max(Math.floor(element.clientWidth / SCALE), WIDTH.least), WIDTH.most);
    element.replaceChildren(drawnOrSaid(() => drawRange(report, { idPrefix: 'range-', width })));
  }, [report]);
  return (
    <section
      class="paper range"
      ref={holder}
      aria-label="Safe intervals"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it may scroll sideways, with keys too
      tabIndex={0}
    />
  );
}
