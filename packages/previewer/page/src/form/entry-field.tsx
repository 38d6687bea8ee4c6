import { computed, useComputed, useSignal } from '@preact/signals';
import { snapped, tidied } from '../board/snap.js';
import { touch } from '../document/begun.js';
import { isList, isObject, type Json } from '../document/json.js';
import { unitIn } from '../document/place.js';
import { aim } from '../state/aim.js';
import { panelJob } from '../state/panels.js';
import { lengthStep, seal, written } from '../state/written.js';
import { entryOf, isPlain, type Unit } from './entry.js';
import { faultsAt, idOf } from './faults.js';
import { afterPress } from './press.js';
import type { Measure } from './shape.js';

export interface EntryProps {
  readonly pointer: string;
  readonly label: string;
  readonly hint: string | null;
  readonly value: Json | undefined;
  readonly measure: Measure;
  /** Whether a number is meant; text is kept as it is typed otherwise, if it reads as none. */
  readonly numeric: boolean;
  readonly text: boolean;
  readonly optional: boolean;
  readonly long?: boolean;
  readonly onEntry: (value: Json | undefined) => void;
}

/** What the fields show: a job follows a hand at the pace of the panels. */
const listed = computed(() => aim.value ?? panelJob.value);

/** A field to type a number or a word in, with its unit beside it and its faults under it. */
export function EntryField(props: EntryProps) {
  const { pointer, label, hint, value, measure, text, optional, onEntry } = props;
  const draft = useSignal<string | null>(null);
  const place = useSignal(pointer);
  place.value = pointer;
  // The unit alone, so that a field does not follow every change of the job.
  const unit = useComputed(() => unitIn(listed.value, place.value));
  const unitOfField = measure === 'length' ? unit.value : null;
  const read = (typed: string): Json | undefined =>
    text ? (typed === '' && optional ? undefined : typed) : entryOf(typed, optional, unitOfField);
  // What was typed stays as it was typed, as long as it says what the job has: `12.` while on the way to `12.5`.
  const typed = draft.value !== null && read(draft.value) === value ? draft.value : writtenOf(value);
  const faults = faultsAt(pointer, null);
  const id = idOf(pointer);
  const notes = [...(hint === null ? [] : [`${id}-hint`]), ...(faults.length === 0 ? [] : [`${id}-fault`])];
  const field = {
    id,
    value: typed,
    spellcheck: false,
    autocomplete: 'off',
    'aria-invalid': faults.length > 0,
    'aria-describedby': notes.length === 0 ? undefined : notes.join(' '),
    onInput: (event: { currentTarget: { value: string } }) => {
      draft.value = event.currentTarget.value;
      onEntry(read(event.currentTarget.value));
    },
    onBlur: () => {
      draft.value = null;
      afterPress(() => touch(pointer));
      seal();
    },
  } as const;
  return (
    <div class={`field${faults.length > 0 ? ' faulty' : ''}${text ? ' wordy' : ''}`}>
      <label for={id}>
        {label}
        {optional && <span class="optional"> (optional)</span>}
      </label>
      <span class="entry">
        {props.long === true ? (
          <textarea {...field} rows={3} />
        ) : (
          <input
            {...field}
            type="text"
            inputMode={text ? 'text' : 'decimal'}
            onKeyDown={(event) => stepped(event, value, measure, onEntry)}
          />
        )}
        {!text && typeof value === 'number' && !isPlain(typed) && (
          <span class="reads">= {tidied(value)}</span>
        )}
        {measure !== null && <span class="unit">{unitText(measure, unit.value)}</span>}
      </span>
      {hint !== null && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {faults.length > 0 && <Faults id={`${id}-fault`} faults={faults} />}
    </div>
  );
}

/** The unit of a measure at a place of the job, as it stands beside its numbers. */
export function unitOf(measure: string, pointer: string): string {
  return unitText(measure, unitIn(written.value, pointer));
}

function unitText(measure: string, unit: Unit): string {
  if (measure === 'length') return unit === 'inch' ? 'in' : 'mm';
  return measure === 'degree' ? '°' : measure;
}

/** The faults of a field or a group, as sentences about it. */
export function Faults({ id, faults }: { id: string; faults: readonly string[] }) {
  return (
    <p class="fault" id={id}>
      {faults.map((fault) => (
        <span key={fault}>
          <b>Fault:</b> {fault}.{' '}
        </span>
      ))}
    </p>
  );
}

/** Degrees for one press of an arrow key. */
const ANGLE_STEP = 1;

/** How many steps a press takes with the shift key held. */
const LONG_STEP = 10;

function stepped(
  event: KeyboardEvent,
  value: Json | undefined,
  measure: Measure,
  onEntry: (value: number) => void,
): void {
  const up = event.key === 'ArrowUp';
  if (
    (measure !== 'length' && measure !== 'degree') ||
    typeof value !== 'number' ||
    (!up && event.key !== 'ArrowDown')
  )
    return;
  event.preventDefault();
  const step = measure === 'degree' ? ANGLE_STEP : lengthStep();
  onEntry(snapped(value + (up ? 1 : -1) * step * (event.shiftKey ? LONG_STEP : 1), step));
}

function writtenOf(value: Json | undefined): string {
  if (value === undefined || value === null) return '';
  return isObject(value) || isList(value) ? JSON.stringify(value) : String(value);
}
