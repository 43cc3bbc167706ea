import { useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { messageOf } from '../../../../says/saying.js';
import { TextField } from '../../../../ui/forms/Field.js';
import { Select } from '../../../../ui/forms/Select.js';
import type { RecognizedFile } from './imports.js';
import type { Draft } from './whose-file.js';

interface PropertyMeters {
  readonly name: string;
  readonly meters: readonly string[];
}

interface Props {
  readonly name: string;
  readonly file: RecognizedFile;
  readonly stations: readonly string[];
  readonly properties: readonly PropertyMeters[];
  readonly draft: Draft;
  readonly onChange: (draft: Draft) => void;
}

/** One file: what it was recognized as, and whose it is. */
export function WhoseFile({ name, file, stations, properties, draft, onChange }: Props) {
  const intl = useIntl();
  const { unitOf } = useFormats();
  const choose = { value: '', words: intl.formatMessage({ id: 'setup.whose.choose' }) };
  // A name of the same upload may be chosen that is not kept yet.
  const choices = (names: readonly string[], chosen: string) => [
    choose,
    ...[...new Set([...names, ...(chosen ? [chosen] : [])])].map((value) => ({ value, words: value })),
  ];
  const label = (of: 'station' | 'windHeight' | 'property' | 'meter'): string => intl.formatMessage({ id: `setup.whose.${of}` });
  return (
    <fieldset className="whose-file">
      <legend>
        {name} <span className="soft">{messageOf({ intl }, `setup.layout.${file.layout}`) ?? file.layout}</span>
      </legend>
      {file.belongsTo === 'station' && (
        <Select
          label={label('station')}
          choices={choices(stations, draft.station)}
          value={draft.station}
          onChange={(station) => onChange({ ...draft, station })}
        />
      )}
      {file.asksWindHeight && (
        <TextField
          label={label('windHeight')}
          inputMode="decimal"
          unit={unitOf('length')}
          value={draft.windHeight}
          onChange={(windHeight) => onChange({ ...draft, windHeight })}
        />
      )}
      {file.belongsTo === 'meter' && (
        <>
          <Select
            label={label('property')}
            choices={choices(
              properties.filter(({ meters }) => meters.length > 0).map((property) => property.name),
              draft.property,
            )}
            value={draft.property}
            onChange={(property) => onChange({ ...draft, property, meter: '' })}
          />
          <Select
            label={label('meter')}
            choices={choices(properties.find((property) => property.name === draft.property)?.meters ?? [], draft.meter)}
            value={draft.meter}
            onChange={(meter) => onChange({ ...draft, meter })}
          />
        </>
      )}
    </fieldset>
  );
}
