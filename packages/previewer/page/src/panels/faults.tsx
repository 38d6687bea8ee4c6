import { isPending } from '../document/begun.js';
import { isObject, type Json, valueAt } from '../document/json.js';
import { goTo } from '../form/faults.js';
import { focusSoon } from '../form/focus.js';
import { called } from '../form/words.js';
import { fresh, issues, job, refusal, shown, stuck } from '../state/store.js';

/** Faults listed at most; the rest shows at its fields. */
const MOST = 12;

/** What is wrong with the job, each with a way to its field. */
export function FaultList() {
  const faults = issues.value.filter(({ path }) => !isPending(path));
  const pending = issues.value.length - faults.length;
  if (faults.length === 0 && pending > 0) return <Pending count={pending} />;
  if (faults.length === 0) return null;
  return (
    <section class="card faults" aria-labelledby="card-faults">
      <h2 id="card-faults">
        {faults.length === 1
          ? 'One thing is wrong with the job'
          : `${faults.length} things are wrong with the job`}
      </h2>
      {shown.value !== null && (
        <p>
          The drawing and the findings are those from before{fresh.value ? '' : ', and being worked out'}.
        </p>
      )}
      <ul>
        {faults.slice(0, MOST).map((fault) => (
          <li key={`${fault.path} ${fault.message}`}>
            {fault.path === '' ? (
              <>The job {fault.message}</>
            ) : (
              <button type="button" class="link" onClick={() => goTo(fault)}>
                {placeOf(fault.path, job.value ?? undefined)} {fault.message}
              </button>
            )}
          </li>
        ))}
      </ul>
      {faults.length > MOST && <p>And {faults.length - MOST} more.</p>}
    </section>
  );
}

// What was added waits for its numbers, and is not wrong yet.
function Pending({ count }: { count: number }) {
  return (
    <section class="card pending" role="status">
      <p>
        {count === 1 ? 'One thing is' : `${count} things are`} still to be filled in. Until then the drawing
        and the findings are those from before.
      </p>
    </section>
  );
}

/** That nothing can be worked out here, and what to do. */
export function StuckNote() {
  if (stuck.value === null) return null;
  return (
    <section class="card faults" role="alert" aria-labelledby="card-stuck">
      <h2 id="card-stuck">Nothing can be worked out in this browser</h2>
      <p>
        It needs a worker of its own: {stuck.value}. Load the page anew; if that does not help, use another or
        a newer browser, or the command <code>edgebite check</code>. A job that is open can still be saved.
      </p>
    </section>
  );
}

/** A file that could not be opened, and why. */
export function RefusalNote() {
  const note = refusal.value;
  if (note === null) return null;
  return (
    <section class="card faults" role="alert" aria-labelledby="card-refusal">
      <h2 id="card-refusal">{note.file} could not be opened</h2>
      <ul>
        {note.issues.slice(0, MOST).map(({ path, message }) => (
          <li key={`${path} ${message}`}>
            {path === '' ? 'It' : placeOf(path)} {message}
          </li>
        ))}
      </ul>
      <button
        type="button"
        onClick={() => {
          refusal.value = null;
          focusSoon(() => document.querySelector<HTMLElement>('main'));
        }}
      >
        Put this note away
      </button>
    </section>
  );
}

// `/cuts/2/diameter` in the words of the forms: a member by its own name if it has one, else counted from one.
export function placeOf(path: string, held: Json | undefined = undefined): string {
  const steps = path.slice(1).split('/').map(stepOf);
  return steps
    .map((step, k) => {
      if (typeof step === 'string') return called(step);
      const member = valueAt(held, steps.slice(0, k + 1));
      const name = isObject(member) ? member.id : undefined;
      return typeof name === 'string' && name !== '' ? name : String(step + 1);
    })
    .join(' › ');
}

function stepOf(step: string): string | number {
  return /^\d+$/.test(step) ? Number(step) : step.replaceAll('~1', '/').replaceAll('~0', '~');
}
