import { numberOf } from '../form/entry.js';
import { unit } from '../state/store.js';

/** The unit of the job as lengths are read. */
export const units = () => (unit.value === 'in' ? 'inch' : 'mm');

interface LengthInputProps {
  readonly id: string;
  readonly text: string;
  readonly optional: boolean;
  readonly onUsed?: () => void;
  readonly onTyped: (text: string) => void;
}

/** A field for a length as a shop writes it, with the unit of the job behind it. */
export function LengthInput({ id, text, optional, onUsed, onTyped }: LengthInputProps) {
  const isWrong = numberOf(text, units()) === null && !(optional && text.trim() === '');
  return (
    <span class="bound">
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        value={text}
        aria-invalid={isWrong}
        onFocus={onUsed}
        onInput={({ currentTarget }) => onTyped(currentTarget.value)}
      />
      <span class="unit">{unit.value}</span>
    </span>
  );
}

/** A field for a length with its label before it. */
export function LengthQuery({ id, label, ...field }: Omit<LengthInputProps, 'optional'> & LabelProps) {
  return (
    <p class="query">
      <label for={id}>{label}</label>
      <LengthInput id={id} optional={false} {...field} />
    </p>
  );
}

interface LabelProps {
  readonly label: string;
  readonly optional?: boolean;
}
