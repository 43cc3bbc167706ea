import { type IntlShape, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import type { QuantityKind } from '../../../../i18n/quantities.js';
import { messageOf, wordOf } from '../../../../says/saying.js';
import { TextAreaField, TextField } from '../../../../ui/forms/Field.js';
import { Checkbox, type Choice, Select } from '../../../../ui/forms/Select.js';
import { ManyField } from './ManyField.js';
import { weekdayChoices } from './weekdays.js';
import type { FieldKind, FieldSpec } from './field-spec.js';
import { TwelveField } from './TwelveField.js';

interface Props {
  readonly spec: FieldSpec;
  readonly id: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly problem: string | null;
  readonly choices: readonly Choice<string>[];
}

const NOTHING = '';

/** What may be chosen: words of the records, other things, or yes and no. */
function choicesOf(intl: IntlShape, { kind, isNeeded = false }: FieldSpec, things: readonly Choice<string>[]): readonly Choice<string>[] {
  const nothing = { value: NOTHING, words: intl.formatMessage({ id: isNeeded ? 'setup.pick' : 'setup.notSaid' }) };
  switch (kind.is) {
    case 'word':
      return [nothing, ...kind.words.map((value) => ({ value, words: wordOf(intl, kind.family, value) }))];
    case 'words':
      return kind.words.map((value) => ({ value, words: wordOf(intl, kind.family, value) }));
    case 'yesNo':
      return [nothing, ...(['yes', 'no'] as const).map((value) => ({ value, words: intl.formatMessage({ id: `setup.${value}` }) }))];
    case 'thing':
      return [nothing, ...things];
    case 'weekdays':
      return weekdayChoices(intl);
    default:
      return things;
  }
}

function hintOf(intl: IntlShape, key: string): { readonly hint?: string } {
  const hint = messageOf({ intl }, `setup.hint.${key}`);
  return hint ? { hint } : {};
}

/** One field of a kept thing, as its kind is typed. */
export function ThingField({ spec, id, value, onChange, problem, choices }: Props) {
  const intl = useIntl();
  const { unitOf } = useFormats();
  const { kind, key, isNeeded = false } = spec;
  const unitOfMonths = (of: QuantityKind | 'number'): string => (of === 'number' ? '%' : unitOf(of));
  const label = labelOf(intl, key);
  const field = { id, label, value, onChange, problem, ...hintOf(intl, key) };
  switch (kind.is) {
    case 'tick':
      return <Checkbox label={label} isChecked={value === 'yes'} onChange={(isOn) => onChange(isOn ? 'yes' : 'no')} />;
    case 'word':
    case 'thing':
    case 'yesNo':
      return <Select {...field} choices={choicesOf(intl, spec, choices)} />;
    case 'words':
    case 'weekdays':
    case 'things':
      return (
        <ManyField
          label={label}
          value={value}
          onChange={onChange}
          choices={choicesOf(intl, spec, choices)}
          isAcross={kind.is === 'weekdays'}
        />
      );
    case 'twelve':
      return <TwelveField {...field} unit={unitOfMonths(kind.of)} />;
    default:
      return <TypedField {...field} isOptional={!isNeeded} kind={kind} />;
  }
}

interface TypedProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly problem: string | null;
  readonly hint?: string;
  readonly isOptional: boolean;
  readonly kind: FieldKind;
}

/** A field that is typed: text, a number, a day or a time. */
function TypedField({ kind, ...field }: TypedProps) {
  const { unitOf } = useFormats();
  switch (kind.is) {
    case 'lines':
    case 'emails':
      return <TextAreaField {...field} />;
    case 'number':
    case 'whole':
      return <TextField {...field} inputMode="decimal" />;
    case 'quantity':
      return <TextField {...field} inputMode="decimal" unit={unitOf(kind.of)} />;
    case 'date':
    case 'time':
      return <TextField {...field} type={kind.is} />;
    case 'clock':
      return <TextField {...field} type="time" />;
    default:
      return <TextField {...field} />;
  }
}

/** A field's name as a person reads it. */
export const labelOf = (intl: IntlShape, key: string): string => messageOf({ intl }, `setup.field.${key}`) ?? key;
