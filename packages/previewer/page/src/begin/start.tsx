/*
 * Room: where a person begins: with a plate, a bar, a round, an outline file, an example.
 * In: what is picked or opened.
 * Out: a job.
 */

import { isObject, type JsonObject } from '../document/json.js';
import { BARE, BARE_AIM, EXAMPLES, ROCKER_LINK } from '../files/examples.js';
import { JOBS, OpenButton, OUTLINES } from '../panels/head.js';
import { openAim } from '../state/aim.js';
import { biting } from '../state/biting.js';
import { openJob, putAway, resume } from '../state/store.js';
import { Thumb } from './thumb.js';

/** What one sees first: the ways to begin. */
export function Start() {
  return (
    <main class="start" tabIndex={-1}>
      <PutAway />
      <section class="card" aria-labelledby="start-empty">
        <h2 id="start-empty">Start from a bare part</h2>
        <p>Without a cut, to put your own numbers in.</p>
        <div class="buttons">
          {BARE.map(({ name, job }) => (
            <button key={name} type="button" onClick={() => beginPart(job)}>
              {name}
            </button>
          ))}
        </div>
      </section>
      <section class="card" aria-labelledby="start-open">
        <h2 id="start-open">Open a job</h2>
        <p>Drop a job file anywhere on this page, or look for one. It stays on this machine.</p>
        <OpenButton id="file" words="Open a job…" label="Job file" accept={JOBS} />
      </section>
      <section class="card" aria-labelledby="start-outline">
        <h2 id="start-outline">Bring an outline</h2>
        <p>
          The lines and arcs of a drawing: an SVG picture, bare path data or well-known text. Drop the file,
          paste its text anywhere here, or look for one.
        </p>
        <OpenButton id="outline-file" words="Open an outline…" label="Outline file" accept={OUTLINES} />
      </section>
      <section class="card" aria-labelledby="start-finished">
        <h2 id="start-finished">From a finished outline</h2>
        <p>
          Say what is to be left of which blank, and which tools there are, and have ways to make it put side
          by side. Open a file that says so above, or begin with one:
        </p>
        <div class="buttons">
          <button type="button" onClick={() => openAim(ROCKER_LINK)}>
            Rocker link
          </button>
          <button type="button" onClick={() => openAim(BARE_AIM)}>
            A plate with a hole
          </button>
        </div>
      </section>
      <section class="card by-example" aria-labelledby="start-example">
        <h2 id="start-example">Start from an example</h2>
        <ul class="examples">
          {EXAMPLES.map(({ file, name, job }) => (
            <li key={file}>
              <button type="button" onClick={() => openJob(job)}>
                <Thumb job={job} />
                <span>{name}</span>
              </button>
            </li>
          ))}
        </ul>
      </section>
    </main>
  );
}

// What comes next is the first bite: where to put it can be clicked at once.
function beginPart(job: JsonObject): void {
  biting.value = true;
  openJob(job);
}

function PutAway() {
  const held = putAway.value;
  if (held === null) return null;
  const name = isObject(held.present) && typeof held.present.name === 'string' ? held.present.name : '';
  return (
    <section class="card put-away" aria-labelledby="start-put-away">
      <h2 id="start-put-away">{name === '' ? 'The job' : `“${name}”`} was put away</h2>
      <p>It is no longer kept in this browser. Until you begin another one it can be had back.</p>
      <button type="button" onClick={() => resume(held)}>
        Take it back
      </button>
    </section>
  );
}
