import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { begin, leave } from '../document/begun.js';
import { isList, isObject, type Json, type JsonObject, withMoved } from '../document/json.js';
import { withoutNamed } from '../document/references.js';
import { openRows, setRow } from '../document/rows.js';
import { chosenCut } from '../state/store.js';
import { change, put, written } from '../state/written.js';
import { CROWD } from '../worker/crowd.js';
import { Faults, unitOf } from './entry-field.js';
import { faultsAt, faultyWithin, idOf } from './faults.js';
import { focusSoon } from './focus.js';
import { kept } from './kept.js';
import { leftBy } from './left-by.js';
import { firstCut } from './new-cut.js';
import { GroupBody, PartField, type PartProps } from './part-field.js';
import { afterPress } from './press.js';
import { blankOf, shapeOf, variantOf } from './shape.js';
import { called, headed, oneOf, withArticle } from './words.js';

/** Members shown before one asks for more: a plate may have thousands of holes. */
const SHOWN = 30;

/** Of a crowd the first few, then so many more in a task of their own: all of them at once hold the page up. */
const AT_ONCE = 5;

/** A list whose members open one by one, and can be added, moved and taken out. */
export function ListField(props: PartProps & { member: JsonObject }) {
  const { root, pointer, path, value, member } = props;
  const members = isList(value) ? value : [];
  const limit = useSignal(members.length > CROWD ? AT_ONCE : SHOWN);
  useEffect(() => {
    if (limit.value >= SHOWN) return;
    const timer = setTimeout(() => {
      limit.value += AT_ONCE;
    });
    return () => clearTimeout(timer);
  }, [limit.value]);
  const cuts = pointer === '/cuts';
  const faults = faultsAt(
    pointer,
    members.map((_, k) => String(k)),
  );
  const add = () => {
    const blank = cuts ? firstCut(written.value) : blankOf(member, root);
    put(path(), [...members, blank]);
    begin(`${pointer}/${members.length}`);
    setRow(`${pointer}/${members.length}`, true);
    if (cuts && isObject(blank)) chosenCut.value = String(blank.id);
    focusSoon(() => firstField(`${pointer}/${members.length}`));
  };
  const listed = listedOf(members, limit.value, pointer, cuts);
  const hidden = members.length - listed.length;
  return (
    <div class="list" id={`${idOf(pointer)}-list`}>
      <ol>
        {listed.map((k) => (
          <Member
            key={k}
            schema={member}
            root={root}
            pointer={`${pointer}/${k}`}
            path={() => [...path(), k]}
            list={path}
            label={called(props.label)}
            value={members[k]}
            optional={false}
            index={k}
            last={members.length - 1}
            cuts={cuts}
          />
        ))}
      </ol>
      {hidden > 0 && (
        <button
          type="button"
          class="quiet"
          onClick={() => {
            limit.value += SHOWN;
          }}
        >
          Show more of the {hidden} others
        </button>
      )}
      {faults.length > 0 && <Faults id={`${idOf(pointer)}-fault`} faults={faults} />}
      <button type="button" class="add" onClick={add}>
        Add {withArticle(oneOf(props.label))}
      </button>
    </div>
  );
}

// The first ones, and those that are open or chosen wherever they are.
function listedOf(
  members: readonly Json[],
  limit: number,
  pointer: string,
  cuts: boolean,
): readonly number[] {
  const listed = Array.from({ length: Math.min(limit, members.length) }, (_, k) => k);
  if (members.length <= limit) return listed;
  const chosen = cuts ? chosenCut.value : null;
  return members.flatMap((held, k) => {
    const shown = k < limit || openRows.value.has(`${pointer}/${k}`);
    return shown || (chosen !== null && isObject(held) && held.id === chosen) ? [k] : [];
  });
}

function firstField(pointer: string): HTMLElement | null {
  return (
    rowButton(pointer)?.closest('li')?.querySelector<HTMLElement>('.inside :is(input, select, textarea)') ??
    null
  );
}

// A member that is no object has a field of its own, which goes by its place.
function rowId(pointer: string, value: Json | undefined): string {
  return isObject(value) ? idOf(pointer) : `${idOf(pointer)}-row`;
}

/** The button that opens a row. */
function rowButton(pointer: string): HTMLElement | null {
  return document.getElementById(`${idOf(pointer)}-row`) ?? document.getElementById(idOf(pointer));
}

interface MemberProps extends PartProps {
  readonly list: () => ReturnType<PartProps['path']>;
  readonly index: number;
  readonly last: number;
  readonly cuts: boolean;
}

const Member = kept((props: MemberProps) => <MemberRow {...props} />);

function MemberRow(props: MemberProps) {
  const { root, pointer, value, index, last, cuts } = props;
  const faulty = faultyWithin(pointer);
  const id = isObject(value) && typeof value.id === 'string' ? value.id : null;
  const chosen = cuts && id !== null && chosenCut.value === id;
  // What is chosen in the drawing shows its fields as long as it is chosen; once they are used, the row is open.
  const open = chosen || openRows.value.has(pointer);
  const toggle = () => {
    if (cuts && id !== null) chosenCut.value = open ? null : id;
    setRow(pointer, !open);
  };
  const move = (to: number, sign: string) => {
    if (written.value === null) return;
    change(withMoved(written.value, props.list(), index, to));
    focusSoon(() => buttonIn(pointer, index, to, sign));
  };
  const remove = () => {
    if (written.value === null) return;
    change(withoutNamed(written.value, props.list(), index));
    focusSoon(() => nearestTo(pointer, index));
  };
  const name = nameOf(value, props);
  const shape = shapeOf(props.schema, root);
  return (
    <li
      onFocusOut={(event) => leftBy(event) && afterPress(() => leave(pointer))}
      class={`member${open ? ' open' : ''}${faulty ? ' faulty' : ''}`}
    >
      <div class="strip">
        <button type="button" class="name" id={rowId(pointer, value)} aria-expanded={open} onClick={toggle}>
          <span class="count">{index + 1}</span>
          <span class="words">
            <b>{name}</b> <span class="about">{figuresOf(value, name)}</span>
          </span>
        </button>
        <button
          type="button"
          class="small"
          data-way="up"
          aria-label={`Move ${name} up`}
          disabled={index === 0}
          onClick={() => move(index - 1, 'up')}
        >
          ↑
        </button>
        <button
          type="button"
          class="small"
          data-way="down"
          aria-label={`Move ${name} down`}
          disabled={index === last}
          onClick={() => move(index + 1, 'down')}
        >
          ↓
        </button>
        <button type="button" class="small" aria-label={`Take out ${name}`} onClick={remove}>
          ✕
        </button>
      </div>
      {open && (
        <div class="inside" onFocusIn={() => setRow(pointer, true)}>
          {shape.kind === 'object' || shape.kind === 'variants' ? (
            <GroupBody {...props} shape={shape} />
          ) : (
            <PartField {...props} label={`${oneOf(props.label)} ${index + 1}`} />
          )}
        </div>
      )}
    </li>
  );
}

// The keys stay with the row that was moved; at the end of its way, where its button is off, with its name.
function buttonIn(pointer: string, index: number, to: number, way: string): HTMLElement | null {
  const name = rowButton(sibling(pointer, index, to));
  const button = name?.closest('li')?.querySelector<HTMLButtonElement>(`[data-way="${way}"]`);
  return button == null || button.disabled ? name : button;
}

// Where a row was taken out: the one that took its place, else the one before it, else the button to add one.
function nearestTo(pointer: string, index: number): HTMLElement | null {
  const list = idOf(pointer.slice(0, pointer.lastIndexOf('/')));
  return (
    rowButton(pointer) ??
    rowButton(sibling(pointer, index, index - 1)) ??
    document.getElementById(`${list}-list`)?.querySelector<HTMLElement>(':scope > .add') ??
    null
  );
}

const sibling = (pointer: string, from: number, to: number): string =>
  `${pointer.slice(0, pointer.length - String(from).length)}${to}`;

function nameOf(value: Json | undefined, { schema, root, pointer, label }: MemberProps): string {
  if (isObject(value)) {
    if (typeof value.id === 'string' && value.id !== '') return value.id;
    if (typeof value.name === 'string' && value.name !== '') return value.name;
    const shape = shapeOf(schema, root);
    if (shape.kind === 'variants') {
      return headed(called(shape.variants[variantOf(value, shape.variants, root)]?.name ?? label));
    }
  }
  if ((typeof value === 'number' || typeof value === 'string') && value !== '') {
    const shape = shapeOf(schema, root);
    const unit = shape.kind === 'entry' && shape.measure !== null ? ` ${unitOf(shape.measure, pointer)}` : '';
    return `${value}${unit}`;
  }
  return headed(oneOf(label));
}

// The few figures by which one knows a cut or a hole again.
function figuresOf(value: Json | undefined, name: string): string {
  if (!isObject(value)) return '';
  const place = value.center ?? value.at;
  const size = value.diameter ?? value.circle;
  return [
    typeof value.kind === 'string' && headed(called(value.kind)) !== name ? called(value.kind) : '',
    typeof size === 'number' ? `⌀${size}` : '',
    typeof value.smallest === 'number' && typeof value.largest === 'number'
      ? `⌀${value.smallest} to ${value.largest}`
      : '',
    isList(place) && place.every((number) => typeof number === 'number') ? `at ${place.join(', ')}` : '',
    typeof value.depth === 'number' ? `${value.depth} deep` : '',
    ...['touch', 'dial in', 'bears', 'measured', 'move', 'set'].flatMap((key) => {
      const what = value[key];
      return typeof what === 'string' || typeof what === 'number' ? [`${what}`] : [];
    }),
    typeof value.on === 'string' && typeof value.bears === 'string' ? `on ${value.on}` : '',
    typeof value.face === 'string' ? value.face : '',
    typeof value.from === 'string' && value.from !== 'top' ? `from ${value.from}` : '',
    typeof value.to === 'string' ? `to ${value.to}` : '',
    typeof value.from === 'number' && typeof value.to === 'number' ? `${value.from} to ${value.to} high` : '',
    typeof value.turn === 'number' ? `turned ${value.turn}°` : '',
    typeof value.flip === 'string' ? `flipped about ${value.flip}` : '',
    isList(value.cuts) ? value.cuts.join(', ') : '',
  ]
    .filter((words) => words !== '')
    .join(' ');
}
