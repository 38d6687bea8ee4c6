import { useEffect, useRef } from 'preact/hooks';
import { orderWords, wayLines } from '../../../src/text/way-figures.js';
import { Picture } from '../begin/thumb.js';
import { isList, valueAt } from '../document/json.js';
import { AIM_FILE, takeAway } from '../files/save.js';
import { AimForm } from '../form/aim-form.js';
import { headed } from '../form/words.js';
import { aim, found, isFound, leaveAim, seek, takeWay } from '../state/aim.js';
import type { WayAnswer, WaysAnswer } from '../worker/messages.js';
import { placeOf } from './faults.js';

/** Size of the picture of a way in pixels. */
const SIZE = { width: 236, height: 132 };

/** From a finished outline to a job: what is to come out, and the ways to make it. */
export function Ways() {
  const heading = useRef<HTMLHeadingElement>(null);
  // Who comes by keys goes on from here.
  useEffect(() => heading.current?.focus(), []);
  return (
    <main class="ways-screen" tabIndex={-1}>
      <section class="card aim" aria-labelledby="card-aim">
        <h2 id="card-aim" ref={heading} tabIndex={-1}>
          From a finished outline
        </h2>
        <p>
          What there is, what is to be left of it, and the tools in the drawer. Change a number and look
          again.
        </p>
        <AimForm />
        <div class="acts">
          <button type="button" id="seek" onClick={seek}>
            Look for ways
          </button>
          <button type="button" onClick={() => void takeAway(AIM_FILE)}>
            Save as a file
          </button>
          <button type="button" onClick={leaveAim}>
            Back
          </button>
        </div>
      </section>
      <section class="found" aria-labelledby="card-ways">
        <h2 id="card-ways" class="sr-only">
          Ways to make it
        </h2>
        <p id="ways-state" data-fresh={isFound.value && found.value !== null} role="status">
          {stateWords(found.value)}
        </p>
        {found.value !== null && <Answer answer={found.value} />}
      </section>
    </main>
  );
}

function stateWords(answer: WaysAnswer | null): string {
  if (answer === null) return 'Looking for ways…';
  if (!isFound.value) return 'These are the ways to what stood there before.';
  const { ways, refusals, issues } = answer;
  if (issues.length > 0) return 'This cannot be read yet.';
  if (refusals.length > 0) return 'Not to be made with these tools.';
  return `${ways.length === 1 ? 'One way' : `${ways.length} ways`}, ${orderWords(ways.map(({ row }) => row))}.`;
}

function Answer({ answer: { units, ways, refusals, issues } }: { answer: WaysAnswer }) {
  const faults = [
    ...issues.map(
      ({ path, message }) =>
        `${path === '' ? 'It' : headed(placeOf(path, aim.value ?? undefined))} ${message}`,
    ),
    ...refusals,
  ];
  if (faults.length > 0) {
    return (
      <div class="card faults">
        <ul>
          {faults.map((fault) => (
            <li key={fault}>{fault}</li>
          ))}
        </ul>
      </div>
    );
  }
  const lines = wayLines(
    units,
    ways.some(({ row }) => row.pushes !== null),
  );
  return (
    <ol class="ways-found">
      {ways.map((way, k) => (
        <Way key={k} way={way} number={k + 1} lines={lines} />
      ))}
    </ol>
  );
}

function Way({ way, number, lines }: { way: WayAnswer; number: number; lines: ReturnType<typeof wayLines> }) {
  const { job, sketch, row } = way;
  const name = `way-${number}`;
  return (
    <li class="card" aria-labelledby={name}>
      <h3 id={name}>Way {number}</h3>
      <Picture sketch={sketch} size={SIZE} />
      <dl>
        {lines.map(([what, figure]) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>{figure(row)}</dd>
          </div>
        ))}
      </dl>
      <ol class="steps-of">
        {stepsOf(job).map(({ cut, tool, lay }) => (
          <li key={cut}>
            {lay !== null && <strong>{lay}: </strong>}
            {cut}, <span>{tool}</span>
          </li>
        ))}
      </ol>
      {row.dangers.map(({ message }) => (
        <p class="danger-of" key={message}>
          {message}
        </p>
      ))}
      <button type="button" onClick={() => takeWay(job)} aria-describedby={name}>
        Take way {number}
      </button>
    </li>
  );
}

interface Step {
  readonly cut: string;
  readonly tool: string;
  /** How the part is laid anew for it; null where it lies as before. */
  readonly lay: string | null;
}

function stepsOf({ cuts, setups }: WayAnswer['job']): Step[] {
  const lays = new Map(
    (isList(setups) && setups.length > 1 ? setups : []).map((setup) => [
      valueAt(setup, ['cuts', 0]),
      String(valueAt(setup, ['name'])),
    ]),
  );
  return (isList(cuts) ? cuts : []).map((cut) => {
    const id = valueAt(cut, ['id']);
    return { cut: String(id), tool: String(valueAt(cut, ['tool'])), lay: lays.get(id) ?? null };
  });
}
