import { useIntl } from 'react-intl';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { Select } from '../../ui/forms/Select.js';

interface Props {
  readonly months: readonly string[];
  readonly shown: string;
  readonly onChange: (month: string) => void;
}

/** Which month is shown, the newest first. */
export function WaterMonth({ months, shown, onChange }: Props) {
  const intl = useIntl();
  const { month } = useFormats();
  const all = [...new Set([...months, shown])].sort().reverse();
  return (
    <Select
      label={intl.formatMessage({ id: 'yourWater.month' })}
      value={shown}
      choices={all.map((one) => ({ value: one, words: month(one) }))}
      onChange={onChange}
    />
  );
}
