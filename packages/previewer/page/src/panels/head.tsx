/*
 * Room: the panels round the drawing.
 * In: the report.
 * Out: findings, figures, steps, ways to measure, ranges.
 */

import { useRef } from 'preact/hooks';
import { EXAMPLES } from '../files/examples.js';
import { openFile } from '../files/open.js';
import { aim } from '../state/aim.js';
import { forget } from '../state/keep.js';
import { isOpen, openJob, startAfresh } from '../state/store.js';
import { canRedo, canUndo, redo, undo } from '../state/written.js';

/** The name of the page, and what one starts with or takes back. */
export function Head() {
  return (
    <header class="head">
      <h1>edgebite</h1>
      <p class="motto">See what the cut leaves before you cut it</p>
      {(isOpen.value || aim.value !== null) && (
        <nav aria-label="Job">
          <OpenButton id="file" words="Open a file…" label="Job or outline file" accept={JOBS + OUTLINES} />
          {aim.value === null && <Examples />}
          <button
            type="button"
            id="undo"
            // Not disabled: a button that goes dead under the keys loses them.
            aria-disabled={!canUndo.value}
            onClick={undo}
            aria-keyshortcuts="Control+Z"
          >
            Undo
          </button>
          <button
            type="button"
            id="redo"
            aria-disabled={!canRedo.value}
            onClick={redo}
            aria-keyshortcuts="Control+Y"
          >
            Redo
          </button>
          {aim.value === null && (
            <button type="button" id="afresh" onClick={() => void putAwayAll()}>
              Start afresh
            </button>
          )}
        </nav>
      )}
    </header>
  );
}

function Examples() {
  return (
    <>
      <label for="example" class="sr-only">
        Start from an example
      </label>
      <select
        id="example"
        value=""
        onChange={({ currentTarget }) => {
          const example = EXAMPLES.find(({ file }) => file === currentTarget.value);
          currentTarget.value = '';
          if (example !== undefined) openJob(example.job);
        }}
      >
        <option value="">Start from…</option>
        {EXAMPLES.map(({ file, name }) => (
          <option key={file} value={file}>
            {name}
          </option>
        ))}
      </select>
    </>
  );
}

// What is not open any more is not to be found in this browser either.
async function putAwayAll(): Promise<void> {
  startAfresh();
  await forget();
  document.querySelector<HTMLElement>('.start button')?.focus();
}

/** The endings of files with a job or an aim, and with an outline. */
export const JOBS = '.json,application/json,';
export const OUTLINES = '.svg,image/svg+xml,.wkt,.txt,text/plain';

interface OpenProps {
  readonly id: string;
  readonly words: string;
  readonly label: string;
  readonly accept: string;
}

/** A button that opens a file. */
export function OpenButton({ id, words, label, accept }: OpenProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" onClick={() => input.current?.click()}>
        {words}
      </button>
      <input
        ref={input}
        id={id}
        class="sr-only"
        type="file"
        accept={accept}
        tabIndex={-1}
        aria-label={label}
        onChange={({ currentTarget }) => {
          const [file] = currentTarget.files ?? [];
          // The same file may be opened again after it was changed.
          currentTarget.value = '';
          if (file !== undefined) void openFile(file);
        }}
      />
    </>
  );
}
