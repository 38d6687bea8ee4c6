import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Json, Path } from '../document/json.js';
import { withValue } from '../document/json.js';
import { change, schema, seal, written } from '../state/written.js';
import { idOf } from './faults.js';
import { concerned, converted, type Length } from './lengths.js';

/** A change of units that waits for an answer. */
export interface Asked {
  readonly job: Json;
  readonly next: Json;
  readonly lengths: readonly Length[];
  readonly to: string;
}

/** Puts a unit in place; where lengths of the job would then mean something else, it asks first. */
export function useUnits(path: () => Path) {
  const asked = useSignal<Asked | null>(null);
  const choose = (value: Json | undefined): void => {
    const [present, root] = [written.value, schema.value];
    if (present === null || root === null) return;
    const next = withValue(present, path(), value);
    const lengths = concerned(present, next, root);
    if (lengths.length === 0) change(next);
    else asked.value = { job: present, next, lengths, to: String(value ?? '') };
  };
  // A question about a job that is no longer there is no question.
  const open = asked.value !== null && asked.value.job === written.value ? asked.value : null;
  return {
    choose,
    asked: open,
    done: () => {
      asked.value = null;
    },
  };
}

const CALLED: Readonly<Record<string, string>> = { mm: 'millimetres', inch: 'inches' };

/** The question what is to become of the figures. */
export function UnitsQuestion({ pointer, asked, done }: { pointer: string; asked: Asked; done: () => void }) {
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  const { next, lengths, to } = asked;
  const answer = (value: Json | null): void => {
    seal();
    done();
    if (value !== null) change(value);
    document.getElementById(idOf(pointer))?.focus();
  };
  const unit = CALLED[to] ?? 'another unit';
  const count = lengths.length === 1 ? 'One length is' : `${lengths.length} lengths are`;
  return (
    <fieldset class="question">
      <legend>{count} concerned. What is to become of them?</legend>
      <div class="buttons">
        <button ref={first} type="button" onClick={() => answer(converted(next, lengths))}>
          Turn them into {unit}: same part
        </button>
        <button type="button" onClick={() => answer(next)}>
          Keep the figures: they are {unit}
        </button>
        <button type="button" onClick={() => answer(null)}>
          Change nothing
        </button>
      </div>
    </fieldset>
  );
}
