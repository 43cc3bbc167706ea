import { useEffect, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import type { MessageId } from '../../../i18n/catalogue.js';
import { MonthSelect } from '../../../page/MonthSelect.js';
import { SearchField } from '../../../ui/forms/SearchField.js';
import { Select } from '../../../ui/forms/Select.js';
import { isNarrowed, type PortfolioPlace, WHYS, type Why } from './urls.js';

interface Props {
  readonly place: PortfolioPlace;
  readonly onChange: (change: Partial<PortfolioPlace>) => void;
  readonly months: readonly string[];
  readonly shownMonth: string;
  readonly through: string | null | undefined;
  readonly crews: readonly { readonly id: string; readonly name: string }[];
}

const WHY_WORDS: Readonly<Record<Why, MessageId>> = {
  every: 'overview.why.every',
  settings: 'overview.why.settings',
  unexplained: 'overview.why.unexplained',
  'too little': 'overview.why.tooLittle',
  'not counted': 'overview.why.notCounted',
};
const ANYONE = '';
/** So long nobody types any more. */
const PAUSE_MS = 250;

/** What the list is narrowed to; all of it stands in the address. */
export function PortfolioFilters({ place, onChange, months, shownMonth, through, crews }: Props) {
  const intl = useIntl();
  const [text, setText] = useState(place.text);
  useEffect(() => {
    if (text === place.text) return;
    const timer = setTimeout(() => onChange({ text }), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [text, place.text, onChange]);
  const clear = (): void => {
    setText('');
    onChange({ text: '', why: 'every', kind: null, who: null });
  };
  const who = [
    { value: ANYONE, words: intl.formatMessage({ id: 'overview.who.anyone' }) },
    { value: 'nobody', words: intl.formatMessage({ id: 'overview.who.nobody' }) },
    ...crews.map(({ id, name }) => ({ value: id, words: name })),
  ];
  return (
    <form className="tools filters" role="search" onSubmit={(event) => event.preventDefault()}>
      <SearchField label={intl.formatMessage({ id: 'overview.find' })} value={text} onChange={setText} />
      <Select
        label={intl.formatMessage({ id: 'overview.why' })}
        value={place.why}
        choices={WHYS.map((why) => ({ value: why, words: intl.formatMessage({ id: WHY_WORDS[why] }) }))}
        onChange={(why) => onChange({ why })}
      />
      <Select
        label={intl.formatMessage({ id: 'overview.who' })}
        value={place.who ?? ANYONE}
        choices={who}
        onChange={(chosen) => onChange({ who: chosen || null })}
      />
      <MonthSelect months={months} shown={shownMonth} through={through} onChange={(month) => onChange({ month })} />
      {isNarrowed(place) && (
        <button type="button" className="link" onClick={clear}>
          <FormattedMessage id="overview.clear" />
        </button>
      )}
    </form>
  );
}
