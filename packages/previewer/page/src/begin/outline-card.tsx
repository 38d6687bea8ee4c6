import { dimensionText } from '@edgebite/svg';
import { useComputed, useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { numberOf, type Unit } from '../form/entry.js';
import { focusSoon } from '../form/focus.js';
import { leaveAim, openAim } from '../state/aim.js';
import { biting } from '../state/biting.js';
import { type ReadOutline, readOutline } from '../state/outline.js';
import { openJob } from '../state/store.js';
import { blankAim, finishedAim, partJob } from './outline-uses.js';
import { Thumb } from './thumb.js';

/** An outline that was read from a file, and what it can be: a part to cut, a blank, or what is to be left. */
export function OutlineCard() {
  const read = readOutline.value;
  return read === null ? null : <Card key={read.file} read={read} />;
}

/** A thickness to begin with. */
const USUAL: Readonly<Record<Unit, string>> = { mm: '10', inch: '3/8' };

function Card({ read }: { read: ReadOutline }) {
  const chosen = useSignal<Unit>(read.units ?? 'mm');
  const typed = useSignal<string | null>(null);
  const first = useRef<HTMLInputElement>(null);
  const thickness = useComputed(() => {
    const value = numberOf(typed.value ?? USUAL[chosen.value], chosen.value);
    return value !== null && value > 0 ? value : null;
  });
  useEffect(() => first.current?.focus(), [read]);
  const sized = { ...read, units: chosen.value };
  const use = (open: () => void): void => {
    if (thickness.value === null) first.current?.focus();
    else open();
  };
  const button = (words: string, open: (thickness: number) => void) => (
    <button
      type="button"
      aria-disabled={thickness.value === null}
      onClick={() => use(() => open(thickness.value ?? 0))}
    >
      {words}
    </button>
  );
  return (
    <section class="card outline-read" aria-labelledby="card-outline">
      <h2 id="card-outline">An outline from {read.file}</h2>
      <Thumb job={partJob(sized, 1)} />
      <div class="of-outline">
        <p>{sizeWords(sized)}</p>
        {read.units === null && (
          <p class="query">
            <label for="outline-units">Its numbers are</label>
            <select
              id="outline-units"
              value={chosen.value}
              onChange={({ currentTarget }) => {
                chosen.value = currentTarget.value === 'inch' ? 'inch' : 'mm';
              }}
            >
              <option value="mm">millimetres</option>
              <option value="inch">inches</option>
            </select>
          </p>
        )}
        <p class="query">
          <label for="outline-thickness">Thickness</label>
          <span class="bound">
            <input
              id="outline-thickness"
              ref={first}
              type="text"
              inputMode="decimal"
              autocomplete="off"
              value={typed.value ?? USUAL[chosen.value]}
              aria-invalid={thickness.value === null}
              onInput={({ currentTarget }) => {
                typed.value = currentTarget.value;
              }}
            />
            <span class="unit">{chosen.value === 'inch' ? 'in' : 'mm'}</span>
          </span>
        </p>
        <div class="acts">
          {button('Cut into it', (thick) => {
            leaveAim();
            biting.value = true;
            openJob(partJob(sized, thick));
          })}
          {button('Take it as a blank', (thick) => openAim(blankAim(sized, thick)))}
          {button('Make it from a plate', (thick) => openAim(finishedAim(sized, thick)))}
          <button type="button" onClick={putAway}>
            Leave it
          </button>
        </div>
      </div>
    </section>
  );
}

function putAway(): void {
  readOutline.value = null;
  focusSoon(() => document.querySelector<HTMLElement>('main'));
}

function sizeWords({ box, holes, units }: ReadOutline): string {
  const [minX, minY, maxX, maxY] = box;
  const length = (value: number): string => dimensionText(value, units ?? 'mm');
  const count = holes === 0 ? 'no hole' : holes === 1 ? 'one hole' : `${holes} holes`;
  const at = minX === 0 && minY === 0 ? 'at zero' : `at X ${length(minX)}, Y ${length(minY)}`;
  const size = `${length(maxX - minX)} by ${length(maxY - minY)} ${units === 'inch' ? 'in' : 'mm'}`;
  return `${size}, ${count}; its lower left corner is ${at}.`;
}
