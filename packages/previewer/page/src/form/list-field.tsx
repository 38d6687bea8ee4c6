import { useSignal } from '@preact/signals';
import { isList, isObject, type Json, type JsonObject, withMoved, withoutMember } from '../state/json.js';
import { change, chosenCut, job, put } from '../state/store.js';
import { Faults, unitOf } from './entry-field.js';
import { faultsAt, faultyWithin, idOf } from './faults.js';
import { kept } from './kept.js';
import { firstCut } from './new-cut.js';
import { GroupBody, PartField, type PartProps } from './part-field.js';
import { blankOf, shapeOf, variantOf } from './shape.js';
import { called, headed, oneOf, withArticle } from './words.js';

/** Members shown before one asks for more: a plate may have thousands of holes. */
const SHOWN = 60;

/** A list whose members open one by one, and can be added, moved and taken out. */
export function ListField(props: PartProps & { member: JsonObject }) {
  const { root, pointer, path, value, member } = props;
  const limit = useSignal(SHOWN);
  const members = isList(value) ? value : [];
  const cuts = pointer === '/cuts';
  const faults = faultsAt(
    pointer,
    members.map((_, k) => String(k)),
  );
  const add = () => {
    const blank = cuts ? firstCut(job.value) : blankOf(member, root);
    put(path(), [...members, blank]);
    if (cuts && isObject(blank)) chosenCut.value = String(blank.id);
  };
  const hidden = members.length - limit.value;
  return (
    <div class="list" id={`${idOf(pointer)}-list`}>
      <ol>
        {members.slice(0, limit.value).map((held, k) => (
          <Member
            key={k}
            schema={member}
            root={root}
            pointer={`${pointer}/${k}`}
            path={() => [...path(), k]}
            list={path}
            label={called(props.label)}
            value={held}
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

interface MemberProps extends PartProps {
  readonly list: () => ReturnType<PartProps['path']>;
  readonly index: number;
  readonly last: number;
  readonly cuts: boolean;
}

const Member = kept((props: MemberProps) => <MemberRow {...props} />);

function MemberRow(props: MemberProps) {
  const { root, pointer, value, index, last, cuts } = props;
  const opened = useSignal(false);
  const faulty = faultyWithin(pointer);
  const id = isObject(value) && typeof value.id === 'string' ? value.id : null;
  const chosen = cuts && id !== null && chosenCut.value === id;
  const open = chosen || opened.value || faulty;
  const toggle = () => {
    if (cuts && id !== null) chosenCut.value = chosen ? null : id;
    opened.value = cuts && id !== null ? false : !open;
  };
  const move = (to: number) => job.value !== null && change(withMoved(job.value, props.list(), index, to));
  const remove = () => job.value !== null && change(withoutMember(job.value, props.list(), index));
  const name = nameOf(value, props);
  const shape = shapeOf(props.schema, root);
  return (
    <li class={`member${open ? ' open' : ''}${faulty ? ' faulty' : ''}`}>
      <div class="strip">
        <button type="button" class="name" id={idOf(pointer)} aria-expanded={open} onClick={toggle}>
          <span class="count">{index + 1}</span>
          <span class="words">
            <b>{name}</b> <span class="about">{figuresOf(value, name)}</span>
          </span>
        </button>
        <button
          type="button"
          class="small"
          aria-label={`Move ${name} up`}
          disabled={index === 0}
          onClick={() => move(index - 1)}
        >
          ↑
        </button>
        <button
          type="button"
          class="small"
          aria-label={`Move ${name} down`}
          disabled={index === last}
          onClick={() => move(index + 1)}
        >
          ↓
        </button>
        <button type="button" class="small" aria-label={`Take out ${name}`} onClick={remove}>
          ✕
        </button>
      </div>
      {open && (
        <div class="inside">
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
    isList(place) && place.every((number) => typeof number === 'number') ? `at ${place.join(', ')}` : '',
    typeof value.depth === 'number' ? `${value.depth} deep` : '',
  ]
    .filter((words) => words !== '')
    .join(' ');
}
