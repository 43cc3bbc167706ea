import { FormattedMessage, useIntl } from 'react-intl';
import { TextField } from '../../../ui/forms/Field.js';
import { ManyField } from '../things/fields/ManyField.js';
import { joined, partsOf } from '../things/fields/parts.js';
import { weekdayChoices } from '../things/fields/weekdays.js';
import type { HoursDraft } from './terms-draft.js';

interface Props {
  readonly id: string;
  readonly hours: HoursDraft;
  readonly problemOf: (field: string) => string | null;
  readonly onChange: (hours: HoursDraft) => void;
  readonly onRemove: () => void;
}

/** One stretch of hours: when the gate is open, or when nobody may work. */
export function HoursFields({ id, hours, problemOf, onChange, onRemove }: Props) {
  const intl = useIntl();
  const { key, kind, weekdays, from, until } = hours;
  const dayProblem = problemOf(`hours-${key}-days`);
  return (
    <fieldset className="hours-of">
      <legend>
        <FormattedMessage id={`setup.visits.${kind}`} />
      </legend>
      <div id={`${id}-hours-${key}-days`} tabIndex={-1} className={dayProblem ? 'has-problem' : undefined}>
        {dayProblem && <p className="problem">{dayProblem}</p>}
        <ManyField
          isAcross
          label={intl.formatMessage({ id: 'setup.visits.weekdays' })}
          value={joined(weekdays.map(String))}
          choices={weekdayChoices(intl)}
          onChange={(value) => onChange({ ...hours, weekdays: partsOf(value).map(Number) })}
        />
      </div>
      <div className="form-row">
        {(['from', 'until'] as const).map((end) => (
          <TextField
            key={end}
            type="time"
            id={`${id}-hours-${key}-${end}`}
            label={intl.formatMessage({ id: `setup.visits.${end}` })}
            value={end === 'from' ? from : until}
            problem={problemOf(`hours-${key}-${end}`)}
            onChange={(value) => onChange({ ...hours, [end]: value })}
          />
        ))}
        <button type="button" className="link" onClick={onRemove}>
          <FormattedMessage id="setup.visits.remove" />
        </button>
      </div>
    </fieldset>
  );
}
