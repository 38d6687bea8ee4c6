import { USUAL_READING } from '@edgebite/core';
import { drawCheck, numberText } from '@edgebite/svg';
import { useComputed, useSignal } from '@preact/signals';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { arcLines, contradictionLines, correctionLines, STOP } from '../../../src/step/measured.js';
import { LengthInput, units } from '../asked/length-input.js';
import { COLOURS } from '../board/drawn.js';
import { numberOf } from '../form/entry.js';
import { askMeasure, isTold, type Told, told } from '../state/measuring.js';
import { rested } from '../state/rested.js';
import { chosenCut, fresh, issues, job, worked } from '../state/store.js';
import { drawnOrSaid } from './element.js';

/** How to measure what the chosen cut leaves; readings typed in, and what to correct. */
export function MeasurePanel() {
  const open = useSignal(false);
  const id = chosenCut.value;
  const isKnown = useComputed(() => worked.value.get(chosenCut.value ?? '') !== undefined);
  if (id === null || !isKnown.value) return null;
  return (
    <details
      class="card measure-panel"
      id="measure-panel"
      onToggle={({ currentTarget }) => {
        open.value = currentTarget.open;
      }}
    >
      <summary>
        Measure <b>{id}</b> and correct
      </summary>
      {open.value && <Readings key={id} id={id} />}
    </details>
  );
}

function Readings({ id }: { id: string }) {
  const arc = useSignal(0);
  /** What was typed, by the number of the way. */
  const typed = useSignal<Readonly<Record<number, string>>>({});
  /** The way whose field was used last: that is shown. */
  const shown = useSignal(0);
  const good = useSignal(String(USUAL_READING[units()]));
  const tolerance = numberOf(good.value, units()) ?? Number.NaN;
  const readings = Object.entries(typed.value).flatMap(([way, text]) => {
    const value = numberOf(text, units());
    return value === null ? [] : [{ way: Number(way), value, tolerance }];
  });
  const present = job.value;
  const ready = fresh.value && issues.value.length === 0;
  const asked = JSON.stringify([arc.value, readings]);
  useEffect(() => {
    if (ready && present !== null) askMeasure(present, { cut: id, arc: arc.value, readings });
  }, [present, ready, id, asked]);
  const own = told.value?.asked.cut === id ? told.value : null;
  const check = own?.answer.checks[arc.value];
  return (
    <>
      <p class="hint">{STOP}</p>
      {check === undefined ? (
        <p class="hint" role="status">
          {own === null ? 'Being worked out.' : `${own.answer.fault ?? 'There is nothing to measure'}.`}
        </p>
      ) : (
        <>
          <Arcs
            count={own?.answer.checks.length ?? 0}
            at={arc.value}
            onChosen={(next) => {
              arc.value = next;
              shown.value = 0;
              typed.value = {};
            }}
          />
          <ol class="ways">
            {check.ways.map(({ words, reading, allowed, horn }, way) => (
              <li key={way} class="query">
                <label for={`way-${way}`}>
                  {words}: <b>{numberText(reading, units())}</b>
                  {allowed !== null && ` (${allowed.map((one) => numberText(one, units())).join(' to ')})`}
                  {horn !== null && '. At the horns: burrs falsify it'}
                </label>
                <LengthInput
                  onUsed={() => {
                    shown.value = way;
                  }}
                  id={`way-${way}`}
                  text={typed.value[way] ?? ''}
                  optional
                  onTyped={(text) => {
                    typed.value = { ...typed.value, [way]: text };
                  }}
                />
              </li>
            ))}
          </ol>
          <p class="query">
            <label for="way-good">Each reading is good to ±</label>
            <LengthInput
              id="way-good"
              text={good.value}
              optional={false}
              onTyped={(text) => {
                good.value = text;
              }}
            />
          </p>
          <Corrected own={own} />
          <Picture cut={id} arc={arc.value} way={shown.value} />
        </>
      )}
    </>
  );
}

/** How the way is taken that is being read: last, so that no field moves under the hand as it changes. */
function Picture({ cut, arc, way }: { cut: string; arc: number; way: number }) {
  const holder = useRef<HTMLDivElement>(null);
  const report = rested.value;
  const index = report?.checks.flatMap((check, k) => (check.cut === cut ? [k] : []))[arc];
  const isThere = index !== undefined && report?.checks[index]?.ways[way] !== undefined;
  useLayoutEffect(() => {
    if (report === null || !isThere || index === undefined) return;
    const options = { ways: [way], width: 100, theme: COLOURS, idPrefix: 'way-picture-' };
    holder.current?.replaceChildren(drawnOrSaid(() => drawCheck(report, index, options)));
  }, [report, index, way, isThere]);
  return isThere ? <div class="picture" ref={holder} /> : null;
}

interface ArcsProps {
  readonly count: number;
  readonly at: number;
  readonly onChosen: (arc: number) => void;
}

function Arcs({ count, at, onChosen }: ArcsProps) {
  if (count < 2) return null;
  return (
    <p class="query">
      <label for="way-arc">Arc</label>
      <select
        id="way-arc"
        value={String(at)}
        onChange={({ currentTarget }) => onChosen(Number(currentTarget.value))}
      >
        {Array.from({ length: count }, (_, k) => (
          <option key={k} value={String(k)}>
            {k + 1} of {count}
          </option>
        ))}
      </select>
    </p>
  );
}

function Corrected({ own }: { own: Told | null }) {
  const { measured = null, fault = null } = own?.answer ?? {};
  const facts = { units: units() } as const;
  return (
    <div role="status" id="measure-state" data-fresh={isTold.value && fresh.value}>
      {fault !== null && <p class="hint fault">This cannot be told: {fault}.</p>}
      {fault === null && measured === null && (
        <p class="hint">Type what was read, two ways at least. The radius and where the centre is follow.</p>
      )}
      {measured !== null && own !== null && (
        <div class="answer">
          {contradictionLines(measured.fit, own.asked.readings).map((line) => (
            <p key={line} class="fault">
              {line}
            </p>
          ))}
          <b>Correction</b>
          <ul>
            {correctionLines(measured, facts).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <p class="hint">The arc, in the coordinates of the drawing:</p>
          <ul>
            {arcLines(measured, facts).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}
