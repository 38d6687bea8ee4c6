import { useSignal } from '@preact/signals';
import { isObject, pointerOf } from '../document/json.js';
import { Faults } from './entry-field.js';
import { faultsAt, idOf } from './faults.js';
import { PartField, type PartProps } from './part-field.js';
import { type Field, shapeOf } from './shape.js';
import { Strangers } from './strangers.js';
import { called } from './words.js';

/** Objects with at least so many fields show those that matter first, and the rest behind one step. */
const LARGE = 5;

/** Fields that few need, where they need not be given. */
const RARE = [
  'angleTolerance',
  'at',
  'bar',
  'breakThrough',
  'clearance',
  'diameterTolerance',
  'drawing',
  'name',
  'passes',
  'quill',
  'reach',
  'runOut',
  'settingTolerance',
  'sizeTolerance',
  'stays',
  'thicknessTolerance',
  'tolerance',
  'tool',
  'units',
];

/** The order in which a cut is thought out; all else comes after it as the schema has it. */
const FIRST = ['diameter', 'wall', 'center', 'path', 'depth'];

/** The fields of an object: those that matter first. */
export function Fields(props: PartProps & { fields: readonly Field[] }) {
  const { root, pointer, path, value, fields } = props;
  const keys = fields.map(({ key }) => key);
  const faults = faultsAt(pointer, keys);
  const held = isObject(value) ? value : {};
  const rare = fields.length < LARGE ? [] : fields.filter((field) => isRare(field, props));
  const main = fields.filter((field) => !rare.includes(field));
  const isSet = rare.some(({ key }) => held[key] !== undefined);
  // It stays open where what was set in it is taken out again.
  const isOpen = useSignal(isSet);
  const fieldOf = ({ key, schema, optional }: Field) => (
    <PartField
      key={key}
      schema={schema}
      root={root}
      pointer={`${pointer}${pointerOf([key])}`}
      path={() => [...path(), key]}
      label={called(key)}
      value={held[key]}
      optional={optional}
    />
  );
  return (
    <div class="fields">
      {[...main].sort((a, b) => rankOf(a) - rankOf(b)).map(fieldOf)}
      {rare.length > 0 && (
        <details
          class="more"
          open={isOpen.value || isSet}
          onToggle={({ currentTarget }) => {
            isOpen.value = currentTarget.open;
          }}
        >
          <summary>More: {rare.map(({ key }) => called(key)).join(', ')}</summary>
          <div class="fields">{rare.map(fieldOf)}</div>
        </details>
      )}
      {faults.length > 0 && <Faults id={`${idOf(pointer)}-fault`} faults={faults} />}
      <Strangers pointer={pointer} path={path} value={value} keys={keys} />
    </div>
  );
}

// Which side a cut starts from is a choice; where a link starts is a place, and matters.
function isRare({ key, schema, optional }: Field, { root }: PartProps): boolean {
  return optional && (RARE.includes(key) || (key === 'from' && shapeOf(schema, root).kind === 'choice'));
}

function rankOf({ key }: Field): number {
  const rank = FIRST.indexOf(key);
  return rank < 0 ? FIRST.length : rank;
}
