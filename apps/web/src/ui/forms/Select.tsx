import { useId } from 'react';
import { describedBy, Field } from './Field.js';

export interface Choice<Value extends string> {
  readonly value: Value;
  readonly words: string;
  readonly hint?: string;
}

interface Props<Value extends string> {
  readonly label: string;
  readonly choices: readonly Choice<Value>[];
  readonly value: Value;
  readonly onChange: (value: Value) => void;
  readonly hint?: string;
  readonly problem?: string | null;
  readonly id?: string;
}

const found = <Value extends string>(choices: readonly Choice<Value>[], value: string): Value | undefined =>
  choices.find((choice) => choice.value === value)?.value;

/** One of seven or more; for fewer, `RadioList` shows them all. */
export function Select<Value extends string>({ choices, value, onChange, ...field }: Props<Value>) {
  return (
    <Field {...field}>
      {(control) => (
        <select
          {...control}
          value={value}
          onChange={(event) => {
            const chosen = found(choices, event.target.value);
            if (chosen !== undefined) onChange(chosen);
          }}
        >
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.words}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

/** One of a few, all in sight. */
export function RadioList<Value extends string>({ label, choices, value, onChange, hint, problem, id }: Props<Value>) {
  const name = useId();
  return (
    <fieldset
      className={problem ? 'choices has-problem' : 'choices'}
      aria-describedby={describedBy(name, Boolean(hint), Boolean(problem))}
      {...(id ? { id } : {})}
    >
      <legend>{label}</legend>
      {hint && (
        <p className="hint" id={`${name}-hint`}>
          {hint}
        </p>
      )}
      {problem && (
        <p className="problem" id={`${name}-problem`}>
          {problem}
        </p>
      )}
      {choices.map((choice) => (
        <label key={choice.value} className="choice">
          <input type="radio" name={name} value={choice.value} checked={choice.value === value} onChange={() => onChange(choice.value)} />
          <span>
            {choice.words}
            {choice.hint && <span className="hint"> {choice.hint}</span>}
          </span>
        </label>
      ))}
    </fieldset>
  );
}

interface CheckboxProps {
  readonly label: string;
  readonly isChecked: boolean;
  readonly onChange: (isChecked: boolean) => void;
  readonly hint?: string;
}

/** Yes or no. */
export function Checkbox({ label, isChecked, onChange, hint }: CheckboxProps) {
  return (
    <label className="choice">
      <input type="checkbox" checked={isChecked} onChange={(event) => onChange(event.target.checked)} />
      <span>
        {label}
        {hint && <span className="hint"> {hint}</span>}
      </span>
    </label>
  );
}
