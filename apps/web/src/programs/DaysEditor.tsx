import { FormattedMessage, useIntl } from 'react-intl';
import { TextField } from '../ui/forms/Field.js';
import { RadioList } from '../ui/forms/Select.js';
import { useViewer } from '../session/viewer.js';
import { daysOf, WEEKDAYS } from './settings-fact.js';

interface Props {
  readonly days: string;
  readonly onChange: (days: string) => void;
}

const KINDS = ['daily', 'weekdays', 'odd', 'even', 'every'] as const;

/** The days of a program: every day, some weekdays, odd or even days, or every so many days. */
export function DaysEditor({ days, onChange }: Props) {
  const intl = useIntl();
  const { organization } = useViewer();
  const found = daysOf(days);
  const choose = (kind: (typeof KINDS)[number]): void => {
    if (kind === 'weekdays') onChange(WEEKDAYS.join(' '));
    else if (kind === 'every') onChange(`every 2 from ${organization.today}`);
    else onChange(kind);
  };
  const toggle = (day: string): void => {
    const now = found.kind === 'weekdays' ? found.weekdays : WEEKDAYS;
    onChange(WEEKDAYS.filter((one) => (one === day ? !now.includes(one) : now.includes(one))).join(' '));
  };
  return (
    <>
      <RadioList
        label={intl.formatMessage({ id: 'field.settings.days' })}
        value={found.kind}
        choices={KINDS.map((kind) => ({ value: kind, words: intl.formatMessage({ id: `field.daysKind.${kind}` }) }))}
        onChange={choose}
      />
      {found.kind === 'weekdays' && (
        <div className="weekdays" role="group" aria-label={intl.formatMessage({ id: 'field.daysKind.weekdays' })}>
          {WEEKDAYS.map((day) => (
            <button
              key={day}
              type="button"
              className="tap"
              aria-pressed={found.weekdays.includes(day)}
              aria-label={intl.formatMessage({ id: `field.weekdayLong.${day}` })}
              onClick={() => toggle(day)}
            >
              <FormattedMessage id={`field.weekday.${day}`} />
            </button>
          ))}
        </div>
      )}
      {found.kind === 'every' && (
        <div className="stack">
          <TextField
            label={intl.formatMessage({ id: 'field.days.everyDays' })}
            inputMode="numeric"
            value={String(found.everyDays || '')}
            onChange={(count) => onChange(`every ${count.replace(/\D/g, '') || '0'} from ${found.from}`)}
          />
          <TextField
            type="date"
            label={intl.formatMessage({ id: 'field.days.first' })}
            value={found.from}
            onChange={(from) => from && onChange(`every ${found.everyDays} from ${from}`)}
          />
        </div>
      )}
    </>
  );
}
