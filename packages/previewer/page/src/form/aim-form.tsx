import { aim } from '../state/aim.js';
import { isObject } from '../state/json.js';
import { aimSchema } from '../state/store.js';
import { Faults } from './entry-field.js';
import { faultsAt } from './faults.js';
import { PartField, type PartProps } from './part-field.js';
import { shapeOf } from './shape.js';
import { Strangers } from './strangers.js';
import { called } from './words.js';

/** What everyone says, in the order in which it is thought out; all else stands behind one step. */
const MAIN = ['units', 'thickness', 'material', 'blank', 'finished', 'pockets', 'drawer'];

/** What is to come out, and the tools, as a form. */
export function AimForm() {
  const root = aimSchema.value;
  const value = aim.value;
  if (root === null || value === null) return null;
  const shape = shapeOf(root, root);
  if (shape.kind !== 'object') return null;
  const held = isObject(value) ? value : {};
  const parts = shape.fields.map(({ key, schema, optional }): PartProps & { key: string } => ({
    key,
    schema,
    root,
    pointer: `/${key}`,
    path: () => [key],
    label: called(key),
    value: held[key],
    optional,
  }));
  const rank = ({ key }: { key: string }) => MAIN.indexOf(key);
  const main = parts.filter((part) => rank(part) >= 0).sort((a, b) => rank(a) - rank(b));
  const more = parts.filter((part) => rank(part) < 0);
  const faults = faultsAt(
    '',
    parts.map(({ key }) => key),
  );
  const fieldOf = ({ key, ...part }: PartProps & { key: string }) => <PartField key={key} {...part} />;
  return (
    <>
      <div class="fields">
        {main.map(fieldOf)}
        <details class="more">
          <summary>More: stops, times, limits</summary>
          <div class="fields">{more.map(fieldOf)}</div>
        </details>
      </div>
      {faults.length > 0 && <Faults id="at-fault" faults={faults} />}
      <Strangers pointer="" path={() => []} value={value} keys={parts.map(({ key }) => key)} />
    </>
  );
}
