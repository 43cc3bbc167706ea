import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMaskedList } from '../../../../page/use-masked.js';
import { BlankLine } from './BlankLine.js';

const meterOnSheet = graphql(`
  fragment MeterOnSheet on Meter {
    id
    name
    unit
    retiredAt
    removedOn
    readings(first: 60) {
      id
      readAt
      register
      replacedById
    }
  }
`);

interface Props {
  readonly meters: readonly FragmentType<typeof meterOnSheet>[];
}

/** A line for each meter's register, and what it showed last: a register that runs backwards is seen on the spot. */
export function SheetMeters({ meters: masked }: Props) {
  const { number, moment } = useFormats();
  const meters = useMaskedList(meterOnSheet, masked).filter(({ retiredAt, removedOn }) => !retiredAt && !removedOn);
  return meters.map(({ id, name, unit, readings }) => {
    const last = readings
      .filter(({ replacedById }) => !replacedById)
      .reduce<(typeof readings)[number] | null>((late, one) => (late && late.readAt >= one.readAt ? late : one), null);
    return (
      <BlankLine
        key={id}
        label={<FormattedMessage id="sheet.register" values={{ name }} />}
        beside={
          last ? (
            <FormattedMessage
              id="sheet.lastRegister"
              values={{ register: `${number(last.register, 3)} ${unit}`, when: moment(last.readAt) }}
            />
          ) : (
            <FormattedMessage id="sheet.noRegister" />
          )
        }
      />
    );
  });
}
