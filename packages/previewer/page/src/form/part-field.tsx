import { begin, leave } from '../document/begun.js';
import type { Json, JsonObject, Path } from '../document/json.js';
import { isList, isObject } from '../document/json.js';
import { isNamed } from '../document/references.js';
import { put, seal } from '../state/written.js';
import { EntryField, Faults } from './entry-field.js';
import { faultsAt, idOf } from './faults.js';
import { Fields } from './fields.js';
import { addId, firstIn, focusSoon } from './focus.js';
import { kept } from './kept.js';
import { leftBy } from './left-by.js';
import { ListField } from './list-field.js';
import { usePutName } from './name.js';
import { afterPress } from './press.js';
import { begunOf, blankOf, resolved, type Shape, shapeOf, variantOf } from './shape.js';
import { UnitsQuestion, useUnits } from './units-field.js';
import { called, headed, oneOf, withArticle } from './words.js';

export interface PartProps {
  readonly schema: JsonObject;
  readonly root: JsonObject;
  /** The place of the value as a JSON Pointer, and as keys. Only the pointer is looked at for changes. */
  readonly pointer: string;
  readonly path: () => Path;
  readonly label: string;
  readonly value: Json | undefined;
  readonly optional: boolean;
}

/** Draws the field, or the group of fields, for any part of a job, as its schema has it. */
export const PartField = kept((props: PartProps) => {
  const shape = shapeOf(props.schema, props.root);
  switch (shape.kind) {
    case 'fixed':
      return <FixedField {...props} only={shape.value} />;
    case 'entry':
      return <EntryOf {...props} shape={shape} />;
    case 'choice':
      return <ChoiceField {...props} options={shape.options} />;
    case 'yes-no':
      return <YesNoField {...props} />;
    case 'row':
      return <RowField {...props} members={shape.members} />;
    default:
      return <Group {...props} shape={shape} />;
  }
});

// The only value that can stand there shows where another one does.
function FixedField(props: PartProps & { only: Json }) {
  const { pointer, value, only, optional } = props;
  if (value === only || (optional && value === undefined)) return null;
  const id = idOf(pointer);
  const faults = faultsAt(pointer, null);
  return (
    <div class="field faulty fixed">
      <p>
        {headed(props.label)}: {value === undefined ? 'nothing' : JSON.stringify(value)}
      </p>
      <button
        type="button"
        id={id}
        aria-describedby={faults.length > 0 ? `${id}-fault` : undefined}
        onClick={() => put(props.path(), only)}
      >
        Make it {called(String(only))}
      </button>
      {faults.length > 0 && <Faults id={`${id}-fault`} faults={faults} />}
    </div>
  );
}

/** Words about a part, if it has some of its own; those of a kind that is used all over are not repeated. */
function hintOf({ schema, root }: PartProps): string | null {
  const hint = '$ref' in schema ? schema.description : resolved(schema, root).description;
  return typeof hint === 'string' && !hint.startsWith('[') ? headed(hint) : null;
}

function Hint({ id, hint }: { id: string; hint: string | null }) {
  if (hint === null) return null;
  return (
    <p class="hint" id={`${id}-hint`}>
      {hint}
    </p>
  );
}

/** Texts that may be longer than this get a field of several lines. */
const LONG = 1000;

function EntryOf(props: PartProps & { shape: Extract<Shape, { kind: 'entry' }> }) {
  const { schema, root, shape } = props;
  const { type, maxLength } = resolved(schema, root);
  const putName = usePutName();
  return (
    <EntryField
      {...shape}
      pointer={props.pointer}
      label={headed(props.label)}
      hint={hintOf(props)}
      value={props.value}
      text={type === 'string'}
      optional={props.optional}
      long={typeof maxLength === 'number' && maxLength > LONG}
      onEntry={(value) => (isName(props.path()) ? putName : put)(props.path(), value)}
    />
  );
}

const isName = (path: Path): boolean => path.at(-1) === 'id' && isNamed(path.slice(0, -2));

function ChoiceField(props: PartProps & { options: readonly Json[] }) {
  const { pointer, options, value, optional } = props;
  const id = idOf(pointer);
  const faults = faultsAt(pointer, null);
  const hint = hintOf(props);
  const notes = [...(hint === null ? [] : [`${id}-hint`]), ...(faults.length === 0 ? [] : [`${id}-fault`])];
  const known = options.includes(value as Json);
  const units = useUnits(props.path);
  const isUnits = pointer.endsWith('/units');
  return (
    <div class={`field${faults.length > 0 ? ' faulty' : ''}`}>
      <label for={id}>{headed(props.label)}</label>
      <span class="entry">
        <select
          id={id}
          value={known ? String(value) : ''}
          aria-invalid={faults.length > 0}
          aria-describedby={notes.length === 0 ? undefined : notes.join(' ')}
          onChange={({ currentTarget }) => {
            const chosen = options.find((option) => String(option) === currentTarget.value);
            seal();
            if (!isUnits) return put(props.path(), chosen);
            currentTarget.value = known ? String(value) : '';
            units.choose(chosen);
          }}
        >
          {(optional || !known) && <option value="">{optional ? usualOf(props) : 'choose'}</option>}
          {options.map((option) => (
            <option key={String(option)} value={String(option)}>
              {called(String(option))}
            </option>
          ))}
        </select>
      </span>
      <Hint id={id} hint={hint} />
      {units.asked !== null && <UnitsQuestion pointer={pointer} asked={units.asked} done={units.done} />}
      {faults.length > 0 && <Faults id={`${id}-fault`} faults={faults} />}
    </div>
  );
}

// The schema's words say what holds where nothing is chosen: `"top" without it`.
function usualOf({ schema }: PartProps): string {
  const usual = /"(\w+)" without it/.exec(String(schema.description))?.[1];
  return usual === undefined ? 'not given' : `${called(usual)}, as usual`;
}

function YesNoField(props: PartProps) {
  const id = idOf(props.pointer);
  const faults = faultsAt(props.pointer, null);
  return (
    <div class="field">
      <label for={id} class="tick">
        <input
          id={id}
          type="checkbox"
          checked={props.value === true}
          aria-describedby={faults.length > 0 ? `${id}-fault` : undefined}
          onChange={({ currentTarget }) => put(props.path(), currentTarget.checked)}
        />
        {headed(props.label)}
      </label>
      {faults.length > 0 && <Faults id={`${id}-fault`} faults={faults} />}
    </div>
  );
}

// A few numbers that belong together: a place, or two sizes.
function RowField(props: PartProps & { members: readonly JsonObject[] }) {
  const { pointer, root, members, value, optional } = props;
  const faults = faultsAt(
    pointer,
    members.map((_, k) => String(k)),
  );
  const names = rowNames(props, members.length);
  const held = isList(value) ? value : [];
  return (
    <fieldset class="row" id={idOf(pointer)} tabIndex={-1}>
      <legend>
        {headed(props.label)}
        {optional && <span class="optional"> (optional)</span>}
      </legend>
      <div class="members">
        {members.map((member, k) => {
          const shape = shapeOf(member, root);
          const label = names[k] ?? String(k + 1);
          if (shape.kind !== 'entry') {
            return (
              <PartField
                key={label}
                schema={member}
                root={root}
                pointer={`${pointer}/${k}`}
                path={() => [...props.path(), k]}
                label={label}
                value={held[k]}
                optional={false}
              />
            );
          }
          return (
            <EntryField
              key={label}
              {...shape}
              pointer={`${pointer}/${k}`}
              label={label}
              hint={null}
              value={held[k]}
              text={resolved(member, root).type === 'string'}
              optional={false}
              onEntry={(entry) => put(props.path(), rowWith(held, members.length, k, entry ?? '', optional))}
            />
          );
        })}
      </div>
      <Hint id={idOf(pointer)} hint={hintOf(props)} />
      {faults.length > 0 && <Faults id={`${idOf(pointer)}-fault`} faults={faults} />}
    </fieldset>
  );
}

// The schema's words name the numbers of a row: `[width, height]`.
function rowNames({ schema, root }: PartProps, count: number): readonly string[] {
  const words = [schema.description, resolved(schema, root).description];
  for (const text of words) {
    const names = typeof text === 'string' ? (/\[([^\]\d]+)\]/.exec(text)?.[1]?.split(',') ?? []) : [];
    if (names.length === count) return names.map((name) => name.trim());
  }
  const { description } = resolved(schema.$ref === undefined ? {} : { $ref: schema.$ref }, root);
  return String(description).includes('[x, y]') ? ['x', 'y'] : [];
}

function rowWith(
  held: readonly Json[],
  count: number,
  index: number,
  entry: Json,
  optional: boolean,
): Json | undefined {
  const row = Array.from({ length: count }, (_, k) => (k === index ? entry : (held[k] ?? '')));
  return optional && row.every((member) => member === '') ? undefined : row;
}

type GroupShape = Extract<Shape, { kind: 'object' | 'list' | 'variants' }>;

function Group(props: PartProps & { shape: GroupShape }) {
  const { schema, root, pointer, value, optional, shape } = props;
  const small = shape.kind === 'object' && shape.fields.every((field) => field.optional);
  if (value === undefined && optional && !small) {
    return (
      <div class="field">
        <button
          type="button"
          class="add"
          id={addId(pointer)}
          onClick={() => {
            put(props.path(), begunOf(schema, root));
            begin(pointer);
            focusSoon(() => firstIn(pointer));
          }}
        >
          Add {shape.kind === 'list' ? withArticle(oneOf(props.label)) : called(props.label)}
        </button>
      </div>
    );
  }
  // A value that is no object brings a field of its own, which goes by the same name.
  const inside = shape.kind === 'variants' && !isObject(value);
  return (
    <fieldset
      class="group"
      onFocusOut={(event) => leftBy(event) && afterPress(() => leave(pointer))}
      id={inside ? undefined : idOf(pointer)}
      tabIndex={-1}
    >
      <legend>{headed(props.label)}</legend>
      <Hint id={`${idOf(pointer)}-group`} hint={hintOf(props)} />
      <GroupBody {...props} />
      {optional && value !== undefined && !small && (
        <button
          type="button"
          class="quiet"
          onClick={() => {
            put(props.path(), undefined);
            focusSoon(() => document.getElementById(addId(pointer)));
          }}
        >
          Take out {called(props.label)}
        </button>
      )}
    </fieldset>
  );
}

/** What is in an object, a list or one of several ways to give a value, without a frame round it. */
export function GroupBody(props: PartProps & { shape: GroupShape }) {
  const { root, pointer, path, value, shape } = props;
  if (shape.kind === 'list') return <ListField {...props} member={shape.member} />;
  if (shape.kind === 'object') return <Fields {...props} fields={shape.fields} value={value} />;
  const chosen = variantOf(value, shape.variants, root);
  const variant = shape.variants[chosen];
  const inner = shapeOf(variant?.schema ?? {}, root);
  const id = `${idOf(pointer)}-kind`;
  return (
    <>
      <div class="field">
        <label for={id}>{isObject(value) && 'kind' in value ? 'Kind' : 'Given as'}</label>
        <span class="entry">
          <select
            id={id}
            value={String(chosen)}
            onChange={({ currentTarget }) => {
              const next = shape.variants[Number(currentTarget.value)];
              seal();
              if (next !== undefined) put(path(), blankOf(next.schema, root, value));
            }}
          >
            {shape.variants.map(({ name }, k) => (
              <option key={name} value={String(k)}>
                {called(name)}
              </option>
            ))}
          </select>
        </span>
      </div>
      {inner.kind === 'object' ? (
        <Fields {...props} fields={inner.fields} value={value} />
      ) : (
        <PartField {...props} schema={variant?.schema ?? {}} label={variant?.name ?? ''} optional={false} />
      )}
    </>
  );
}
