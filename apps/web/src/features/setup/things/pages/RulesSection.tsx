import { useIntl } from 'react-intl';
import type { SetupSuppliersQuery } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import type { ThingsPlace } from '../../urls.js';
import { thing } from '../fields/field-spec.js';
import { rule } from '../kinds/rule.js';
import { ThingsSection } from '../list/ThingsSection.js';
import { ruleInWords } from './rule-in-words.js';

type Supplier = SetupSuppliersQuery['waterSuppliers'][number];

interface Props {
  readonly rules: readonly Supplier['rules'][number][];
  readonly suppliers: readonly Pick<Supplier, 'id' | 'name'>[];
  readonly place: ThingsPlace;
  readonly onPlace: (place: Partial<ThingsPlace>) => void;
  readonly refetch: readonly string[];
}

const ruleOfSupplier = { ...rule, fields: [thing('supplierId', true), ...rule.fields] };

/** When and how water may run. */
export function RulesSection({ rules, suppliers, ...usual }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const found = new Map(rules.map((one) => [one.id, one]));
  const names = new Map(suppliers.map(({ id, name }) => [id, name]));
  return (
    <ThingsSection
      {...usual}
      kind={ruleOfSupplier}
      things={rules}
      choices={{ supplierId: suppliers.map(({ id, name }) => ({ value: id, words: name })) }}
      nameOf={({ id }) => found.get(id)?.name ?? ''}
      about={({ id }) => {
        const one = found.get(id);
        return one && [names.get(one.supplierId), ruleInWords(intl, formats, one)].filter(Boolean).join(': ');
      }}
    />
  );
}
