import { lengthText, numberText } from '@edgebite/svg';
import { useSignal } from '@preact/signals';
import { WebOf } from '../asked/web-of.js';
import { isList, type JsonObject, valueAt } from '../document/json.js';
import { idOf } from '../form/faults.js';
import type { Moves } from '../move/free.js';
import { cutAt, idAt, indexOfCut } from '../move/grips.js';
import { nudge } from '../move/move.js';
import { movesOf } from '../move/moves.js';
import { biteOf } from '../move/steps.js';
import { panelJob, panelResult, panelWorked } from '../state/panels.js';
import { chosenCut, readoutStep, unit } from '../state/store.js';
import type { Place } from '../worker/sketch.js';
import type { Steps } from '../worker/worked.js';

/** How many steps of the readout one press of a button takes. */
const STEPS = [1, 10, 100, 1000] as const;

const WAYS: readonly { readonly name: string; readonly sign: string; readonly way: Place }[] = [
  { name: 'left', sign: '←', way: [-1, 0] },
  { name: 'down', sign: '↓', way: [0, -1] },
  { name: 'up', sign: '↑', way: [0, 1] },
  { name: 'right', sign: '→', way: [1, 0] },
];

/** What places the chosen cut, in large numbers, with buttons to change them in fine steps. */
export function CenterPanel() {
  const steps = useSignal<number>(10);
  const summary = panelResult.value?.summary;
  const cuts = valueAt(panelJob.value ?? undefined, ['cuts']);
  const index = indexOfCut(panelJob.value, chosenCut.value);
  const cut = cutAt(panelJob.value, index);
  if (summary === undefined) return null;
  const known = panelWorked.value.get(chosenCut.value ?? '') ?? null;
  const moves = cut === null ? null : movesOf(cut, known);
  if (cut === null || moves === null) {
    return (
      <p class="center-panel idle">
        {isList(cuts) && cuts.length > 0
          ? 'Take hold of a cross to move a cut and to ask how far it could go, or of a number to see its finding.'
          : 'Click a straight face of the part to bite into it, or add a cut below.'}
      </p>
    );
  }
  const id = idAt(cut, index);
  const whose = cut.path === undefined ? 'Centre of' : 'Start of the path of';
  const by = `${stepText(steps.value)} ${unit.value}`;
  const bite = biteOf(cut);
  return (
    <section class="center-panel" aria-label={`${whose} ${id}`}>
      <p class="whose">
        {whose} <b>{id}</b>
        <Beside cut={cut} moves={moves} />
      </p>
      <button type="button" class="put-down" aria-label={`Let go of ${id}`} onClick={() => letGo(index)}>
        ✕
      </button>
      <Numbers moves={moves} />
      <WebOf fixed={moves.why !== null} />
      {moves.why === null && (
        <div class="steps">
          {WAYS.map(({ name, sign, way }) => (
            <button
              key={name}
              type="button"
              aria-label={`Move ${name} by ${by}`}
              onClick={() => nudge({ index, pass: null }, way, steps.value)}
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
                {stepText(count)} {unit.value}
              </option>
            ))}
          </select>
        </div>
      )}
      {bite !== null && known?.steps != null && (
        <Bite index={index} bite={bite} passes={known.steps} count={steps.value} />
      )}
    </section>
  );
}

// The keys go on with its row: its cross would take hold of it again.
function letGo(index: number): void {
  chosenCut.value = null;
  requestAnimationFrame(() =>
    document.getElementById(idOf(`/cuts/${index}`))?.focus({ preventScroll: true }),
  );
}

function stepText(count: number): string {
  return String(Number((readoutStep() * count).toPrecision(9)));
}

// Where a placement comes to; a centre that is given as a place says so itself.
function Beside({ cut, moves }: { cut: JsonObject; moves: Moves }) {
  const { units } = panelResult.value?.summary ?? { units: 'mm' as const };
  if (moves.why === null && (isList(cut.center) || cut.path !== undefined)) return null;
  const [x, y] = moves.at;
  return (
    <span class="beside">
      {' '}
      at x {numberText(x, units)}, y {numberText(y, units)}
    </span>
  );
}

function Numbers({ moves }: { moves: Moves }) {
  const { units } = panelResult.value?.summary ?? { units: 'mm' as const };
  if (moves.why !== null) return <p class="why">{moves.why}</p>;
  return (
    <dl class="large">
      {moves.frees.map(({ name, value, shows }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <b>{numberText(shows ?? value, units)}</b> <span class="unit">{unit.value}</span>
          </dd>
        </div>
      ))}
    </dl>
  );
}

interface BiteProps {
  readonly index: number;
  readonly bite: number;
  readonly passes: Steps;
  readonly count: number;
}

function Bite({ index, bite, passes: { approach, made }, count }: BiteProps) {
  const { units } = panelResult.value?.summary ?? { units: 'mm' as const };
  const [x, y] = approach;
  return (
    <div class="steps bite">
      <p>
        Largest bite <b>{lengthText(bite, units)}</b>, {made === 1 ? 'one pass' : `${made} passes`}
      </p>
      <button
        type="button"
        aria-label={`Smaller bite by ${stepText(count)} ${unit.value}`}
        onClick={() => nudge({ index, pass: 1 }, [-x, -y], count)}
      >
        −
      </button>
      <button
        type="button"
        aria-label={`Larger bite by ${stepText(count)} ${unit.value}`}
        onClick={() => nudge({ index, pass: 1 }, [x, y], count)}
      >
        +
      </button>
    </div>
  );
}
