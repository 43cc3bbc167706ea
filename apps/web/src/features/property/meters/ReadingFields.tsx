import { useIntl } from 'react-intl';
import { typedNumber } from '../../../i18n/numbers.js';
import { type DayAndTime, localTimeOf } from '../../../page/values/desk-time.js';
import { TextField } from '../../../ui/forms/Field.js';

/** What is typed of a reading; day and time on the property's clocks. */
export interface ReadingDraft extends DayAndTime {
  readonly register: string;
  readonly note: string;
}

/** The register as a number; null where it is none that a register can show. */
export function registerOf({ register }: ReadingDraft): number | null {
  const value = typedNumber(register);
  return value === null || value < 0 ? null : value;
}

/** What is wrong with the day or the time. */
export function dateProblem(draft: ReadingDraft, now: string): 'property.reading.dateMissing' | 'property.reading.future' | null {
  if (!draft.day || !draft.time) return 'property.reading.dateMissing';
  return localTimeOf(draft) > now ? 'property.reading.future' : null;
}

interface Props {
  readonly draft: ReadingDraft;
  readonly unit: string;
  readonly now: string;
  /** Problems are told after the first try to save. */
  readonly isSent: boolean;
  readonly onChange: (change: Partial<ReadingDraft>) => void;
}

/** Register, day, time and note. */
export function ReadingFields({ draft, unit, now, isSent, onChange }: Props) {
  const intl = useIntl();
  const wrongDay = isSent ? dateProblem(draft, now) : null;
  return (
    <>
      <div className="form-row">
        <TextField
          label={intl.formatMessage({ id: 'property.reading.register' })}
          inputMode="decimal"
          autoComplete="off"
          unit={unit}
          value={draft.register}
          onChange={(register) => onChange({ register })}
          problem={isSent && registerOf(draft) === null ? intl.formatMessage({ id: 'property.reading.missing' }) : null}
        />
        <TextField
          label={intl.formatMessage({ id: 'property.reading.date' })}
          type="date"
          max={now.slice(0, 10)}
          value={draft.day}
          onChange={(day) => onChange({ day })}
          problem={wrongDay && intl.formatMessage({ id: wrongDay })}
        />
        <TextField
          label={intl.formatMessage({ id: 'property.reading.time' })}
          type="time"
          value={draft.time}
          onChange={(time) => onChange({ time })}
        />
      </div>
      <TextField
        label={intl.formatMessage({ id: 'property.reading.note' })}
        isOptional
        value={draft.note}
        onChange={(note) => onChange({ note })}
      />
    </>
  );
}
