import { FormattedMessage } from 'react-intl';
import { Button } from '../../../ui/forms/Button.js';
import { daysAfter } from '../urls.js';

interface Props {
  readonly day: string;
  readonly today: string;
  readonly onChange: (day: string) => void;
}

/** The day before, today, the day after. */
export function DaySwitch({ day, today, onChange }: Props) {
  return (
    <div className="day-switch">
      <Button kind="plain" onClick={() => onChange(daysAfter(day, -1))}>
        <FormattedMessage id="field.day.before" />
      </Button>
      {day === today ? (
        <span className="day-here">
          <FormattedMessage id="frame.today" />
        </span>
      ) : (
        <Button kind="plain" onClick={() => onChange(today)}>
          <FormattedMessage id="frame.today" />
        </Button>
      )}
      <Button kind="plain" onClick={() => onChange(daysAfter(day, 1))}>
        <FormattedMessage id="field.day.after" />
      </Button>
    </div>
  );
}
