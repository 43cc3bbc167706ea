import { useSyncExternalStore } from 'react';
import { FormattedMessage } from 'react-intl';
import { Link } from 'react-router';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { usePhone } from '../../../offline/PhoneProvider.js';
import { dayPath } from '../urls.js';

interface Props {
  /** What the names of days on the shelf begin with. */
  readonly prefix: string;
  /** The day that is looked for. */
  readonly day: string;
}

interface Asked {
  readonly day: string;
  readonly crewId: string | null;
}

/** A day that is not on this phone, while nobody answers: which days are. */
export function DaysHere({ prefix, day }: Props) {
  const phone = usePhone();
  const { dayInWords } = useFormats();
  const names = useSyncExternalStore(phone.subscribe, () => phone.shelvedNames(prefix).join('\n'));
  const days = names
    .split('\n')
    .filter(Boolean)
    .map((name) => JSON.parse(name.slice(prefix.length)) as Asked)
    .filter((one) => one.day !== day)
    .sort((a, b) => a.day.localeCompare(b.day));
  return (
    <>
      <p>
        <FormattedMessage id="field.today.notHere" values={{ day: dayInWords(day), count: days.length }} />
      </p>
      <ul className="todo">
        {days.map(({ day: other, crewId }) => (
          <li key={`${other} ${crewId ?? ''}`}>
            <Link to={dayPath(other, crewId)}>{dayInWords(other)}</Link>
          </li>
        ))}
      </ul>
    </>
  );
}
