import { lengthText, numberText, sourceText } from '@edgebite/svg';
import { computed, useComputed, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { snapped, tidied } from '../board/snap.js';
import { numberOf } from '../form/entry.js';
import { cutsIn, freeName, stepFor } from '../form/new-cut.js';
import { biteCenter, biteShown, biting, bitten, type Face, faces, hasFaces } from '../state/biting.js';
import { isList, type Json, type JsonObject, valueAt, withValue } from '../state/json.js';
import { rested } from '../state/rested.js';
import { change, chosenCut, job, readoutStep, seal } from '../state/store.js';
import { LengthInput, units } from './length-input.js';

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
  const typed = {
    along: useSignal(''),
    radius: useSignal(''),
    deep: useSignal(''),
    rough: useSignal(''),
    wall: useSignal(''),
  };
  const isOpening = useSignal(false);
  const picked = pickedFace.value;
  // A place that was picked is a number like one that was typed.
  useEffect(() => {
    if (bitten.value !== null) typed.along.value = String(snapped(bitten.value.along, stepOn(picked)));
  }, [bitten.value]);
  const bite = useComputed(() => readBite(pickedFace.value, typed, isOpening.value));
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
  const names = rested.value?.names ?? [];
  return (
    <>
      <p class="hint">Click a straight face on the drawing, or choose one.</p>
      <p class="query">
        <label for="bite-face">Face</label>
        <select
          id="bite-face"
          value={picked?.source ?? ''}
          onChange={({ currentTarget }) => {
            const face = faces.value.find(({ source }) => source === currentTarget.value);
            bitten.value = face === undefined ? null : { source: face.source, along: face.length / 2 };
          }}
        >
          <option value="">choose</option>
          {faces.value.map(({ source, length }) => (
            <option key={source} value={source}>
              {sourceText(source, names)}, {numberText(length, units())} long
            </option>
          ))}
        </select>
      </p>
      <Length id="bite-along" label="along it" text={typed.along} />
      <Length id="bite-radius" label="radius" text={typed.radius} />
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
      <Length id="bite-deep" label={isOpening.value ? 'opening' : 'depth'} text={typed.deep} />
      <p class="hint">Roughed out first by a hollow cutter about the same centre, if its sizes are given:</p>
      <Length id="bite-rough" label="cutter diameter" text={typed.rough} />
      <Length id="bite-wall" label="its wall" text={typed.wall} />
      <p class="hint" role="status" id="bite-state">
        {'fault' in bite.value ? bite.value.fault : wordsOf(bite.value)}
      </p>
      <button
        type="button"
        id="bite-put"
        aria-disabled={'fault' in bite.value}
        onClick={() => {
          if ('fault' in bite.value) return;
          putBite(bite.value, isOpening.value ? Number(numberOf(typed.deep.value, units())) : null);
        }}
      >
        Put the bite
      </button>
    </>
  );
}

/** A place is picked by hand to about a fiftieth of the face. */
function stepOn(face: Face | undefined): number {
  return Math.max(readoutStep(), face === undefined ? 0 : stepFor(face.length));
}

interface Typed {
  readonly value: string;
}

interface Bitten {
  readonly face: Face;
  readonly along: number;
  readonly radius: number;
  readonly depth: number;
  readonly rough: { readonly diameter: number; readonly wall: number } | null;
}

type Texts = Readonly<Record<'along' | 'radius' | 'deep' | 'rough' | 'wall', Typed>>;

function readBite(
  face: Face | undefined,
  texts: Texts,
  isOpening: boolean,
): Bitten | { readonly fault: string } {
  const fault = (words: string) => ({ fault: words });
  if (face === undefined) return fault('No face is chosen yet.');
  const read = (key: keyof Texts) => numberOf(texts[key].value, units());
  const [along, radius, deep] = [read('along'), read('radius'), read('deep')];
  if (along === null || along < 0 || along > face.length)
    return fault(`Along the face takes a number from 0 to ${numberText(face.length, units())}.`);
  if (radius === null || radius <= 0) return fault('The radius takes a number over 0.');
  if (deep === null || deep <= 0 || deep > 2 * radius)
    return fault(`The ${isOpening ? 'opening' : 'depth'} takes a number over 0, at most twice the radius.`);
  // The centre of an opening lies outside of the metal, or on the face.
  const depth = isOpening ? radius - Math.sqrt(radius ** 2 - (deep / 2) ** 2) : deep;
  const isRough = texts.rough.value.trim() !== '' || texts.wall.value.trim() !== '';
  if (!isRough) return { face, along, radius, depth, rough: null };
  const [diameter, wall] = [read('rough'), read('wall')];
  if (diameter === null || diameter <= 2 * (radius - depth) || diameter > 2 * radius)
    return fault(
      `The cutter takes a diameter over ${numberText(Math.max(0, 2 * (radius - depth)), units())}, so that it reaches the metal, and at most that of the bite.`,
    );
  if (wall === null || wall <= 0 || 2 * wall >= diameter)
    return fault('The wall takes a number over 0 and under half of the cutter.');
  return { face, along, radius, depth, rough: { diameter, wall } };
}

function wordsOf({ radius, depth, rough }: Bitten): string {
  const opening = 2 * Math.sqrt(Math.max(0, radius ** 2 - (radius - depth) ** 2));
  const length = (value: number) => lengthText(value, units());
  const left = rough === null ? '' : ` The cutter leaves ${length(radius - rough.diameter / 2)} all round.`;
  return `Radius ${length(radius)}, ${length(depth)} deep, opens ${length(opening)} of the face.${left}`;
}

/** Puts the bore into the job, and before it the hollow cutter, about the same centre. */
function putBite({ face, along, radius, depth, rough }: Bitten, opening: number | null): void {
  const id = freeName(job.value, 'bite', 1);
  const on = { on: face.source, along };
  const bore: JsonObject = {
    id,
    kind: 'bore',
    diameter: tidied(2 * radius),
    center: { ...on, ...acrossOf(opening, depth, radius) },
  };
  const ring: JsonObject[] =
    rough === null
      ? []
      : [
          {
            id: `${id}-rough`,
            kind: 'annular',
            diameter: rough.diameter,
            wall: rough.wall,
            center: { ...on, depth: tidied(depth - radius + rough.diameter / 2) },
          },
        ];
  const made = [...ring, bore];
  seal();
  change(inOnlySetup(withValue(job.value ?? {}, ['cuts'], [...cutsIn(job.value), ...made]), made));
  seal();
  chosenCut.value = id;
}

/** Of an opening less than the diameter the centre that lies outside of the metal. */
function acrossOf(opening: number | null, depth: number, radius: number): JsonObject {
  if (opening === null) return { depth };
  return opening < 2 * radius ? { opening, pick: 'outside' } : { opening };
}

/** In a job of one setup a bite is cut in that. */
function inOnlySetup(present: Json, made: readonly JsonObject[]): Json {
  const setups = valueAt(present, ['setups']);
  const own = valueAt(present, ['setups', 0, 'cuts']);
  if (!isList(setups) || setups.length !== 1 || !isList(own)) return present;
  return withValue(present, ['setups', 0, 'cuts'], [...own, ...made.map(({ id }) => id as string)]);
}

function Length({ id, label, text }: { id: string; label: string; text: { value: string } }) {
  return (
    <p class="query">
      <label for={id}>{label}</label>
      <LengthInput
        id={id}
        text={text.value}
        optional
        onTyped={(typed) => {
          text.value = typed;
        }}
      />
    </p>
  );
}
