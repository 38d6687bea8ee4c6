/*
 * Room: the fields of a job.
 * In: the job's JSON and the schema.
 * Out: changes of the job.
 */

import { begin, leave } from '../document/begun.js';
import { panelJob } from '../state/panels.js';
import { schema } from '../state/store.js';
import { put } from '../state/written.js';
import { Faults } from './entry-field.js';
import { faultsAt, idOf } from './faults.js';
import { firstIn, focusSoon } from './focus.js';
import { kept } from './kept.js';
import { leftBy } from './left-by.js';
import { GroupBody, PartField, type PartProps } from './part-field.js';
import { type Part, partsOf } from './parts.js';
import { afterPress } from './press.js';
import { begunOf, shapeOf } from './shape.js';
import { Strangers } from './strangers.js';
import { headed, oneOf, withArticle } from './words.js';

/** Headings of the cards, where the key alone says too little. */
const HEADINGS: Readonly<Record<string, string>> = {
  part: 'The part',
  cuts: 'The cuts, in turn',
  limits: 'What to warn of',
  keepOut: 'Places to keep clear of',
  tools: 'Tools, with their cuts',
  drawer: 'The drawer, for cuts that name their tool',
};

/** Cards in the order in which a job is thought out; others come after them, as the schema has them. */
const ORDER = ['cuts', 'part'];

/** The whole job as forms: what is simple on one card, everything else on a card of its own. */
export function JobForm() {
  const root = schema.value;
  const value = panelJob.value;
  if (root === null || value === null) return null;
  const parts = partsOf(root, value);
  if (parts.length === 0) return null;
  const large = (part: PartProps) => ['object', 'list', 'variants'].includes(shapeOf(part.schema, root).kind);
  const rank = ({ key }: Part) => (ORDER.includes(key) ? ORDER.indexOf(key) : ORDER.length);
  const cards = parts.filter(large).sort((a, b) => rank(a) - rank(b));
  const faults = faultsAt(
    '',
    parts.map(({ key }) => key),
  );
  return (
    <>
      {cards
        .filter((part) => !isMissing(part))
        .map(({ key, ...part }) => (
          <Card key={key} name={key} {...part} />
        ))}
      <Missing cards={cards.filter(isMissing)} />
      <section class="card" aria-labelledby="card-job">
        <h2 id="card-job">The job</h2>
        <div class="fields">
          {parts
            .filter((part) => !large(part))
            .map(({ key, ...part }) => (
              <PartField key={key} {...part} />
            ))}
        </div>
        {faults.length > 0 && <Faults id="at-fault" faults={faults} />}
        <Strangers pointer="" path={() => []} value={value} keys={parts.map(({ key }) => key)} />
      </section>
    </>
  );
}

/** Whether a part of a job is not there, and is added whole. */
function isMissing({ value, optional, schema: of, root }: PartProps): boolean {
  if (value !== undefined || !optional) return false;
  const shape = shapeOf(of, root);
  return !(shape.kind === 'object' && shape.fields.every((field) => field.optional));
}

/** What a job may have besides, on one card: each with a button that adds it. */
function Missing({ cards }: { cards: readonly Part[] }) {
  if (cards.length === 0) return null;
  return (
    <section class="card missing" aria-labelledby="card-missing">
      <h2 id="card-missing">More for this job</h2>
      <div class="buttons">
        {cards.map(({ key, schema: of, root, pointer, label }) => (
          <button
            key={key}
            type="button"
            class="add"
            onClick={() => {
              put([key], begunOf(of, root));
              begin(pointer);
              focusSoon(() => firstIn(pointer));
            }}
          >
            Add {shapeOf(of, root).kind === 'list' ? withArticle(oneOf(label)) : label}
          </button>
        ))}
      </div>
    </section>
  );
}

const Card = kept(({ name, ...part }: PartProps & { name: string }) => {
  const shape = shapeOf(part.schema, part.root);
  if (shape.kind !== 'object' && shape.kind !== 'list' && shape.kind !== 'variants') return null;
  const heading = HEADINGS[name] ?? headed(part.label);
  return (
    <section
      class={`card ${name}`}
      id={idOf(part.pointer)}
      tabIndex={-1}
      aria-labelledby={`card-${name}`}
      onFocusOut={(event) => leftBy(event) && afterPress(() => leave(part.pointer))}
    >
      <h2 id={`card-${name}`}>{heading}</h2>
      <GroupBody {...part} shape={shape} />
    </section>
  );
});
