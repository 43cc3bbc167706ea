import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { describedBy } from '../../../../ui/forms/Field.js';
import { joined, partsOf } from './parts.js';

interface Props {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly unit: string;
  readonly problem: string | null;
}

const MONTHS = Array.from({ length: 12 }, (_, at) => at);

/** A number for each month, January to December. */
export function TwelveField({ id, label, value, onChange, unit, problem }: Props) {
  const { monthShort } = useFormats();
  const parts = partsOf(value);
  const set = (at: number, text: string): void => onChange(joined(MONTHS.map((month) => (month === at ? text : (parts[month] ?? '')))));
  return (
    <fieldset
      id={id}
      tabIndex={-1}
      className={problem ? 'choices has-problem' : 'choices'}
      aria-describedby={describedBy(id, false, Boolean(problem))}
    >
      <legend>
        {label}, {unit}
      </legend>
      {problem && (
        <p className="problem" id={`${id}-problem`}>
          {problem}
        </p>
      )}
      <div className="twelve-fields">
        {MONTHS.map((month) => (
          <div className="field" key={month}>
            <label htmlFor={`${id}-${month}`}>{monthShort(`2026-${String(month + 1).padStart(2, '0')}`)}</label>
            <input
              id={`${id}-${month}`}
              inputMode="decimal"
              value={parts[month] ?? ''}
              onChange={(event) => set(month, event.target.value)}
            />
          </div>
        ))}
      </div>
    </fieldset>
  );
}
