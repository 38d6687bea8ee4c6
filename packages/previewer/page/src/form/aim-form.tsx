import { aim } from '../state/aim.js';
import { aimSchema } from '../state/store.js';
import { Faults } from './entry-field.js';
import { faultsAt } from './faults.js';
import { PartField } from './part-field.js';
import { type Part, partsOf } from './parts.js';
import { Strangers } from './strangers.js';

/** What everyone says, in the order in which it is thought out; all else stands behind one step. */
const MAIN = ['units', 'thickness', 'material', 'blank', 'finished', 'pockets', 'drawer'];

/** What is to come out, and the tools, as a form. */
export function AimForm() {
  const root = aimSchema.value;
  const value = aim.value;
  if (root === null || value === null) return null;
  const parts = partsOf(root, value);
  if (parts.length === 0) return null;
  const rank = ({ key }: Part) => MAIN.indexOf(key);
  const main = parts.filter((part) => rank(part) >= 0).sort((a, b) => rank(a) - rank(b));
  const more = parts.filter((part) => rank(part) < 0);
  const faults = faultsAt(
    '',
    parts.map(({ key }) => key),
  );
  const fieldOf = ({ key, ...part }: Part) => <PartField key={key} {...part} />;
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
