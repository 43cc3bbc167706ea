import { useIntl } from 'react-intl';
import { Select } from '../../../ui/forms/Select.js';

interface Props {
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  readonly chosen: string | null;
  readonly onChange: (crew: string | null) => void;
}

const EVERY = '';

/** Whose day is shown, for those who see several crews. */
export function CrewSwitch({ crews, chosen, onChange }: Props) {
  const intl = useIntl();
  return (
    <Select
      label={intl.formatMessage({ id: 'field.crew' })}
      value={chosen ?? EVERY}
      choices={[
        { value: EVERY, words: intl.formatMessage({ id: 'field.crew.every' }) },
        ...crews.map(({ id, name }) => ({ value: id, words: name })),
      ]}
      onChange={(crew) => onChange(crew || null)}
    />
  );
}
