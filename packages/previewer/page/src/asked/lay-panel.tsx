import { computed, type Signal, useSignal } from '@preact/signals';
import { numberOf } from '../form/entry.js';
import { panelJob } from '../state/panels.js';
import { change, job, seal } from '../state/store.js';
import {
  cutsLeft,
  hasBlock,
  hasSetups,
  type Lay,
  LIES,
  type Lie,
  lastLength,
  withSetup,
  X_FROM,
  type XFrom,
  Y_FROM,
} from './laying.js';
import { LengthQuery, units } from './length-input.js';

/** Sizes that are found in most drawers; common practice, no source. */
const USUAL = { mm: { tip: 10, block: 25 }, inch: { tip: 0.2, block: 1 } } as const;

// A move of a cut leaves all of this as it is: what hangs on it is not to be gone through then.
const leftNames = computed(() => JSON.stringify(cutsLeft(panelJob.value)));
const left = computed(() => (leftNames.value === '[]' ? NONE : cutsLeft(panelJob.peek())));
const isLaid = computed(() => hasSetups(panelJob.value));
const lasts = {
  tip: computed(() => lastLength(panelJob.value, 'tip')),
  block: computed(() => lastLength(panelJob.value, 'block')),
};

const NONE: ReturnType<typeof cutsLeft> = [];

/** How the part is held and where its zero comes from, as one entry: a setup with what is cut in it. */
export function LayPanel() {
  const held = useSignal<boolean | null>(null);
  if (left.value.length === 0) return null;
  const open = held.value ?? true;
  return (
    <details
      class="card lay-panel"
      id="lay-panel"
      open={open}
      onToggle={({ currentTarget }) => {
        held.value = currentTarget.open;
      }}
    >
      <summary>{isLaid.value ? 'Lay it for what is left to cut' : 'Clamp it, and find the zero'}</summary>
      {open && <Laying />}
    </details>
  );
}

interface Asked {
  readonly lie?: Lie;
  readonly x?: XFrom;
  readonly y?: Lay['y'];
  readonly tip?: string;
  readonly block?: string;
}

function Laying() {
  const asked = useSignal<Asked>({});
  const off = useSignal<ReadonlySet<string>>(new Set());
  const lie = asked.value.lie ?? (isLaid.value ? 'turned round' : 'as drawn');
  const x = asked.value.x ?? 'stop and block at the left';
  const y = asked.value.y ?? 'front';
  const text = (key: 'tip' | 'block') => asked.value[key] ?? String(lasts[key].value ?? USUAL[units()][key]);
  const lay = readLay({ lie, x, y }, text('tip'), text('block'), chosen());
  function chosen(): readonly string[] {
    return left.value.filter(({ name }) => !off.value.has(name)).flatMap(({ ids }) => ids);
  }
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if ('fault' in lay) return;
        seal();
        change(withSetup(job.value ?? {}, lay));
        seal();
        asked.value = {};
        off.value = new Set();
        afterPut();
      }}
    >
      <div class="queries">
        <Choice
          id="lay-lie"
          label="The part lies"
          all={LIES}
          value={lie}
          onChosen={(to) => {
            asked.value = { ...asked.value, lie: to };
          }}
        />
        <Choice
          id="lay-x"
          label="Zero in X from"
          all={X_FROM}
          value={x}
          onChosen={(to) => {
            asked.value = { ...asked.value, x: to };
          }}
        />
        <Choice
          id="lay-y"
          label="Zero in Y from its"
          all={Y_FROM}
          value={y}
          onChosen={(to) => {
            asked.value = { ...asked.value, y: to };
          }}
        />
        <LengthQuery
          id="lay-tip"
          label="tip of the edge finder"
          text={text('tip')}
          onTyped={(typed) => {
            asked.value = { ...asked.value, tip: typed };
          }}
        />
        {hasBlock(x) && (
          <LengthQuery
            id="lay-block"
            label="block on the stop"
            text={text('block')}
            onTyped={(typed) => {
              asked.value = { ...asked.value, block: typed };
            }}
          />
        )}
      </div>
      <Cuts off={off} />
      <p class="hint" role="status">
        {'fault' in lay ? lay.fault : ''}
      </p>
      <button type="submit" id="lay-put" aria-disabled={'fault' in lay}>
        Lay it so
      </button>
    </form>
  );
}

/** So many cuts can be chosen one by one here; of more all are taken, and others are told in the fields of the setups. */
const MOST = 24;

function Cuts({ off }: { off: Signal<ReadonlySet<string>> }) {
  if (left.value.length > MOST)
    return <p class="hint">All {left.value.length} cuts that are in no setup are cut so.</p>;
  return (
    <fieldset class="cuts-of">
      <legend>Cut so</legend>
      {left.value.map(({ name, ids }) => (
        <label class="tick" key={name}>
          <input
            type="checkbox"
            checked={!off.value.has(name)}
            onChange={({ currentTarget }) => {
              const next = new Set(off.value);
              if (currentTarget.checked) next.delete(name);
              else next.add(name);
              off.value = next;
            }}
          />
          {name}
          {ids.length > 1 && ' with its ring'}
        </label>
      ))}
    </fieldset>
  );
}

// Where nothing is left to lay, the panel goes, and the keys go on with the steps that it made.
function afterPut(): void {
  requestAnimationFrame(() => {
    if (document.getElementById('lay-put') !== null) return;
    const steps = document.getElementById('card-steps');
    if (steps === null) return;
    steps.tabIndex = -1;
    steps.focus({ preventScroll: true });
  });
}

function readLay(
  how: Pick<Lay, 'lie' | 'x' | 'y'>,
  tip: string,
  block: string,
  cuts: readonly string[],
): Lay | { readonly fault: string } {
  const [across, between] = [numberOf(tip, units()), numberOf(block, units())];
  if (across === null || across <= 0) return { fault: 'The tip takes a diameter over 0.' };
  if (hasBlock(how.x) && (between === null || between <= 0))
    return { fault: 'The block takes a length over 0.' };
  if (cuts.length === 0) return { fault: 'Choose a cut that is made so.' };
  return { ...how, tip: across, block: between ?? 0, cuts };
}

interface ChoiceProps<Value extends string> {
  readonly id: string;
  readonly label: string;
  readonly all: readonly Value[];
  readonly value: Value;
  readonly onChosen: (value: Value) => void;
}

function Choice<Value extends string>({ id, label, all, value, onChosen }: ChoiceProps<Value>) {
  return (
    <p class="query">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        onChange={({ currentTarget }) => {
          const chosen = all.find((one) => one === currentTarget.value);
          if (chosen !== undefined) onChosen(chosen);
        }}
      >
        {all.map((one) => (
          <option key={one} value={one}>
            {one}
          </option>
        ))}
      </select>
    </p>
  );
}
