/*
 * Room: what asks for a bite, a setup or a web in one entry each.
 * In: a picked face, a length as written in shops.
 * Out: a changed job.
 */

import { sourceText } from '@edgebite/core';
import { numberText } from '@edgebite/svg';
import { computed, useComputed, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { snapped } from '../board/snap.js';
import { stepFor } from '../form/new-cut.js';
import { biteCenter, biteShown, biting, bitten, type Face, faces, hasFaces } from '../state/biting.js';
import { rested } from '../state/rested.js';
import { readoutStep } from '../state/store.js';
import { type BiteKey, type BiteTexts, biteWords, readBite, usualTexts } from './bite-entry.js';
import { LengthQuery, units } from './length-input.js';
import { putBite } from './put-bite.js';

/** A partial hole in a straight face as one entry: bore and hollow cutter about one centre. */
export function BitePanel() {
  if (rested.value !== null && !hasFaces.value) return null;
  return (
    <details
      class="card bite-panel"
      id="bite-panel"
      open={biting.value}
      onToggle={({ currentTarget }) => {
        biting.value = currentTarget.open;
      }}
    >
      <summary>Bite into a face</summary>
      {biting.value && <Bite />}
    </details>
  );
}

/** The face that was picked, as it is in the part now. */
const pickedFace = computed(() => faces.value.find(({ source }) => source === bitten.value?.source));

function Bite() {
  const typed = useSignal<Partial<BiteTexts>>({});
  const isOpening = useSignal(false);
  const put = useSignal<string | null>(null);
  // What was typed for the place on one face says nothing of another.
  useEffect(() => {
    const { along: _, ...others } = typed.value;
    typed.value = others;
    if (bitten.value !== null) put.value = null;
  }, [bitten.value]);
  const texts = useComputed<BiteTexts>(() => {
    const face = pickedFace.value;
    const along = snapped(bitten.value?.along ?? 0, stepOn(face));
    const usual = usualTexts({ face, along, isOpening: isOpening.value }, typed.value, units());
    return { ...usual, ...typed.value };
  });
  const bite = useComputed(() => readBite(pickedFace.value, texts.value, isOpening.value, units()));
  useEffect(() => {
    const one = bite.value;
    biteShown.value =
      'fault' in one
        ? null
        : { center: biteCenter(one.face, one.along, one.radius, one.depth), radius: one.radius };
    return () => {
      biteShown.value = null;
    };
  }, [bite.value]);
  const lengthOf = (key: BiteKey, label: string) => (
    <LengthQuery
      id={`bite-${key}`}
      label={label}
      text={texts.value[key]}
      optional
      onTyped={(text) => {
        typed.value = { ...typed.value, [key]: text };
      }}
    />
  );
  return (
    <form
      class="bite"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if ('fault' in bite.value) return;
        put.value = putBite(bite.value);
        bitten.value = null;
      }}
    >
      <FaceChoice />
      <div class="queries">
        {lengthOf('along', 'along it')}
        {lengthOf('radius', 'radius')}
        {lengthOf('deep', isOpening.value ? 'opening' : 'depth')}
        <p class="query">
          <label for="bite-how">given by</label>
          <select
            id="bite-how"
            value={isOpening.value ? 'opening' : 'depth'}
            onChange={({ currentTarget }) => {
              isOpening.value = currentTarget.value === 'opening';
            }}
          >
            <option value="depth">depth under the face</option>
            <option value="opening">opening in the face</option>
          </select>
        </p>
      </div>
      <p class="hint">
        Roughed out first by a hollow cutter about the same centre, and the bore stepped in, if given:
      </p>
      <div class="queries">
        {lengthOf('rough', 'cutter diameter')}
        {lengthOf('wall', 'its wall')}
        {lengthOf('step', 'largest bite of a pass')}
      </div>
      <p class="hint" role="status" id="bite-state">
        {put.value !== null && bitten.value === null
          ? `Put in as ${put.value}. Click a face for another one.`
          : 'fault' in bite.value
            ? bite.value.fault
            : biteWords(bite.value, units())}
      </p>
      <button type="submit" id="bite-put" aria-disabled={'fault' in bite.value}>
        Put the bite
      </button>
    </form>
  );
}

function FaceChoice() {
  const names = rested.value?.names ?? [];
  return (
    <>
      <p class="hint">Click a straight face on the drawing, or choose one.</p>
      <p class="query">
        <label for="bite-face">Face</label>
        <select
          id="bite-face"
          value={pickedFace.value?.source ?? ''}
          onChange={({ currentTarget }) => {
            const face = faces.value.find(({ source }) => source === currentTarget.value);
            bitten.value = face === undefined ? null : { source: face.source, along: face.length / 2 };
          }}
        >
          <option value="">choose</option>
          {faces.value.map((face) => (
            <option key={face.source} value={face.source}>
              {`${sourceText(face.source, names)}, ${numberText(face.length, units())} long`}
            </option>
          ))}
        </select>
      </p>
    </>
  );
}

/** A place is picked by hand to about a fiftieth of the face. */
function stepOn(face: Face | undefined): number {
  return Math.max(readoutStep(), face === undefined ? 0 : stepFor(face.length));
}
