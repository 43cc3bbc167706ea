import type { FragmentType } from '@apollo/client';
import type { ReactNode } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { SheetStopFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../../page/use-masked.js';
import { sentenceCase } from '../../../../page/values/sentence-case.js';
import { CautionWords } from '../../stop/arrive/CautionWords.js';
import { useOrderWords } from '../../use-order-words.js';

export const sheetStop = graphql(`
  fragment SheetStop on Stop {
    id
    cautions
    property {
      id
      name
      address
      city
      notes
      meters {
        id
        name
      }
      controllers {
        id
        name
      }
    }
    workOrders {
      id
      kind
      what
      waterAgainOn
      estimateMinutes
    }
  }
`);

interface Props {
  readonly stop: FragmentType<SheetStopFragment>;
  readonly number: number;
}

/** One stop as a card: where, with what care, what to do, and lines to write what was found. A card is never cut in two. */
export function SheetStop({ stop: masked, number }: Props) {
  const { property, cautions, workOrders } = useMasked(sheetStop, masked);
  const intl = useIntl();
  const { minutes } = useFormats();
  const orderWords = useOrderWords();
  return (
    <li className="sheet-stop">
      <h3>
        {number}. {property.name}
      </h3>
      <p>{[property.address, property.city].filter(Boolean).join(', ')}</p>
      {cautions.length > 0 && (
        <ul className="sheet-cautions">
          {cautions.map((code) => (
            <li key={code}>
              <CautionWords code={code} notes={property.notes ?? null} />
            </li>
          ))}
        </ul>
      )}
      <ul className="sheet-orders">
        {workOrders.map((order) => (
          <li key={order.id}>
            <span className="box" aria-hidden="true" /> {orderWords(order)} <span className="soft">{minutes(order.estimateMinutes)}</span>
          </li>
        ))}
        {workOrders.length === 0 && (
          <li>
            <span className="box" aria-hidden="true" /> {sentenceCase(intl.formatMessage({ id: 'monthPlan.visit' }))}
          </li>
        )}
      </ul>
      <dl className="sheet-lines">
        <dt>
          <FormattedMessage id="sheet.times" />
        </dt>
        <dd />
        {property.meters.map(({ id, name }) => (
          <Line key={id}>
            <FormattedMessage id="sheet.register" values={{ name }} />
          </Line>
        ))}
        {property.controllers.map(({ id, name }) => (
          <Line key={id}>
            <FormattedMessage id="sheet.controller" values={{ name }} />
          </Line>
        ))}
        <Line>
          <FormattedMessage id="sheet.found" />
        </Line>
      </dl>
    </li>
  );
}

function Line({ children }: { readonly children: ReactNode }) {
  return (
    <>
      <dt>{children}</dt>
      <dd />
    </>
  );
}
