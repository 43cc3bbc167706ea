import { useIntl } from 'react-intl';
import { useFormats } from '../i18n/LanguageProvider.js';
import { Select } from '../ui/forms/Select.js';
import { sentenceCase } from './values/sentence-case.js';
import { isWholeMonth } from './values/whole-month.js';
import './page.css';

interface Props {
  readonly months: readonly string[];
  readonly shown: string;
  /** The last day that is covered; a month that it lies in, and does not end, is shown to date. */
  readonly through: string | null | undefined;
  readonly onChange: (month: string) => void;
}

/** Which month is shown, the newest first. */
export function MonthSelect({ months, shown, through, onChange }: Props) {
  const intl = useIntl();
  const { month: inWords } = useFormats();
  const all = [...new Set([shown, ...months])].sort().reverse();
  const words = (month: string): string =>
    month === shown && through?.startsWith(month) && !isWholeMonth(through)
      ? intl.formatMessage({ id: 'overview.month.toDate' }, { month: inWords(month) })
      : inWords(month);
  return (
    <div className="month-select">
      <Select
        label={intl.formatMessage({ id: 'overview.month' })}
        value={shown}
        choices={all.map((month) => ({ value: month, words: sentenceCase(words(month)) }))}
        onChange={onChange}
      />
    </div>
  );
}
