import { drawStep, drawZero, lengthText } from '@edgebite/svg';
import { useSignal } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { shownText } from '../../../src/step/readout.js';
import { COLOURS } from '../board/drawn.js';
import { rested } from '../state/rested.js';
import { stepAt, stepCount, type Walked, walk, walked, walkedReport } from '../state/walk.js';
import { drawnOrSaid } from './element.js';

/** The work step by step: the numbers to go to, what happens there, and a picture of it as the part lies. */
export function StepWalk() {
  const one = walked.value;
  if (one === null) return null;
  const isOld = rested.value === null;
  return (
    <section
      class={`card step-walk${isOld ? ' outdated' : ''}`}
      aria-labelledby="card-steps"
      onTouchStart={swipeBegun}
      onTouchEnd={swipeEnded}
    >
      <h2 id="card-steps">At the machine, step by step{isOld && ' (from before the change)'}</h2>
      <div class="walk">
        <Turn by={-1} name="Step before" sign="‹" off={stepAt.value === 0} />
        <p aria-live="polite">
          <b>
            Step {one.step.number} of {stepCount.value}
          </b>{' '}
          <span>{nameOf(one)}</span>
        </p>
        <Turn by={1} name="Next step" sign="›" off={stepAt.value === stepCount.value - 1} />
      </div>
      <p class="hint">
        {one.block.title}. {one.block.lies}
      </p>
      <Lines lines={one.step.before} name="First" grave />
      <Places one={one} />
      <Lines lines={one.step.tells} name="What happens" />
      <Picture index={one.step.number - 1} />
      <Zero key={one.block.setup} setup={one.block.setup} />
    </section>
  );
}

/** Where a finger came down; null with several. */
let from: { readonly x: number; readonly y: number } | null = null;

/** A finger that goes so far sideways, pixels, and less than half as far up or down, turns to another step. */
const SWIPE = 60;

function swipeBegun({ touches }: TouchEvent): void {
  const [one] = touches;
  from = one === undefined || touches.length > 1 ? null : { x: one.clientX, y: one.clientY };
}

function swipeEnded({ changedTouches: [one] }: TouchEvent): void {
  if (from === null || one === undefined) return;
  const [dx, dy] = [one.clientX - from.x, one.clientY - from.y];
  from = null;
  if (Math.abs(dx) >= SWIPE && Math.abs(dy) < Math.abs(dx) / 2) walk(dx < 0 ? 1 : -1);
}

/** How the zero of the step's setup is found, in pictures. */
function Zero({ setup }: { setup: string }) {
  const open = useSignal(false);
  const holder = useRef<HTMLDivElement>(null);
  const report = walkedReport.value;
  const isThere = report?.setups.some(({ id }) => id === setup) === true;
  useLayoutEffect(() => {
    if (report === null || !isThere || !open.value) return;
    const options = { setup, width: 120, theme: COLOURS, idPrefix: 'walk-zero-' };
    holder.current?.replaceChildren(drawnOrSaid(() => drawZero(report, options)));
  }, [report, setup, isThere, open.value]);
  if (!isThere) return null;
  return (
    <details
      class="zero-pictures"
      onToggle={({ currentTarget }) => {
        open.value = currentTarget.open;
      }}
    >
      <summary>How the zero is found</summary>
      {open.value && <div ref={holder} />}
    </details>
  );
}

function nameOf({ step: { cut, pass, diameter }, sheet }: Walked): string {
  const which = pass === null ? '' : `, pass ${pass.number} of ${pass.count}`;
  return `${cut}${which}: ${lengthText(diameter, sheet.units)} across`;
}

function Turn({ by, name, sign, off }: { by: number; name: string; sign: string; off: boolean }) {
  // Not disabled at the ends: a button that goes dead under a finger loses the focus.
  return (
    <button type="button" class="turn" aria-label={name} aria-disabled={off} onClick={() => walk(by)}>
      {sign}
    </button>
  );
}

/** Most places set large; a path of more has the others on the sheet. */
const MOST = 12;

function Places({ one: { rows, block } }: { one: Walked }) {
  return (
    <>
      <table class="places">
        <thead>
          <tr>
            <th scope="col">to</th>
            <th scope="col">X</th>
            <th scope="col">Y</th>
            <th scope="col">deep</th>
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, MOST).map(({ number, words, stand, depth }) => (
            <tr key={number}>
              <th scope="row">{words === '' ? 'centre' : words}</th>
              <td>{shownText(stand.target[0], block)}</td>
              <td>{shownText(stand.target[1], block)}</td>
              <td>{depth}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length > MOST && <p class="hint">And {rows.length - MOST} more on the readout sheet.</p>}
    </>
  );
}

function Lines({ lines, name, grave = false }: { lines: readonly string[]; name: string; grave?: boolean }) {
  if (lines.length === 0) return null;
  return (
    <ul class={grave ? 'lines grave' : 'lines'} aria-label={name}>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

function Picture({ index }: { index: number }) {
  const holder = useRef<HTMLDivElement>(null);
  const report = walkedReport.value;
  const isDrawn = report?.steps[index]?.after != null;
  useLayoutEffect(() => {
    if (report === null || !isDrawn) return;
    holder.current?.replaceChildren(
      drawnOrSaid(() => drawStep(report, index, { idPrefix: 'walk-', theme: COLOURS })),
    );
  }, [report, index, isDrawn]);
  return isDrawn ? <div class="picture" ref={holder} /> : null;
}
