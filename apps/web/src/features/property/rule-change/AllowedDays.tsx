import { useIntl } from 'react-intl';
import { daysOf, WEEKDAYS } from '../../../programs/settings-fact.js';
import { Checkbox, RadioList } from '../../../ui/forms/Select.js';

interface Props {
  /** As rules keep them: weekdays in their order, `odd` or `even`; empty is any day. */
  readonly days: string;
  readonly onChange: (days: string) => void;
}

const KINDS = ['any', 'weekdays', 'odd', 'even'] as const;

/** The days that a rule allows, picked by their names. */
export function AllowedDays({ days, onChange }: Props) {
  const intl = useIntl();
  const kind = KINDS.find((one) => one === days) ?? (days ? 'weekdays' : 'any');
  const found = daysOf(days);
  const chosen = kind === 'weekdays' && found.kind === 'weekdays' ? found.weekdays : [];
  const choose = (next: (typeof KINDS)[number]): void =>
    onChange({ any: '', weekdays: WEEKDAYS.join(' '), odd: 'odd', even: 'even' }[next]);
  const toggle = (day: string): void =>
    onChange(WEEKDAYS.filter((one) => (one === day ? !chosen.includes(one) : chosen.includes(one))).join(' '));
  return (
    <>
      <RadioList
        label={intl.formatMessage({ id: 'ruleChange.allowedDays' })}
        value={kind}
        choices={KINDS.map((value) => ({ value, words: intl.formatMessage({ id: `ruleChange.allowedDays.${value}` }) }))}
        onChange={choose}
      />
      {kind === 'weekdays' && (
        <div role="group" aria-label={intl.formatMessage({ id: 'ruleChange.allowedDays.weekdays' })}>
          {WEEKDAYS.map((day) => (
            <Checkbox
              key={day}
              label={intl.formatMessage({ id: `field.weekdayLong.${day}` })}
              isChecked={chosen.includes(day)}
              onChange={() => toggle(day)}
            />
          ))}
        </div>
      )}
    </>
  );
}
