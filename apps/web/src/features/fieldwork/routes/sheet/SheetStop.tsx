import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { SheetStopFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../../page/use-masked.js';
import { sentenceCase } from '../../../../page/values/sentence-case.js';
import { CautionWords } from '../../stop/arrive/CautionWords.js';
import { zonesInOrder } from '../../stop/zones/zones-in-order.js';
import { useOrderWords } from '../../use-order-words.js';
import { BlankLine } from './BlankLine.js';
import { SheetController } from './SheetController.js';
import { SheetMeters } from './SheetMeters.js';
import { SheetZones } from './SheetZones.js';
import { StopWhen, type TimeOnSheet } from './StopWhen.js';

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
      ...HoursOnSheet
      meters {
        id
        ...MeterOnSheet
      }
      controllers {
        id
        name
        retiredAt
        ...ControllerOnSheet
      }
      zones {
        id
        name
        station
        controllerId
        retiredAt
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
  /** YYYY-MM-DD */
  readonly day: string;
  readonly time: TimeOnSheet | null;
}

/**
 * One stop as a card: where, with what care, what to do; then, in the order of the work, meters, controllers and zones with what is known of
 * them and room to write. A card stays on one page where it fits on one; what does not fit is cut between its parts and table rows alone.
 */
export function SheetStop({ stop: masked, number, day, time }: Props) {
  const { property, cautions, workOrders } = useMasked(sheetStop, masked);
  const intl = useIntl();
  const { minutes } = useFormats();
  const orderWords = useOrderWords();
  const controllers = property.controllers.filter(({ retiredAt }) => !retiredAt);
  const zones = zonesInOrder(property.zones, controllers);
  return (
    <li className="sheet-stop">
      <h3>
        {number}. {property.name}
      </h3>
      <p>{[property.address, property.city].filter(Boolean).join(', ')}</p>
      <p className="sheet-when">
        <StopWhen day={day} time={time} property={property} />
      </p>
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
        <BlankLine label={<FormattedMessage id="sheet.times" />} />
        <SheetMeters meters={property.meters} />
      </dl>
      {controllers.map((controller) => (
        <SheetController
          key={controller.id}
          controller={controller}
          stations={zones.flatMap(({ controllerId, station, name }) =>
            controllerId === controller.id && typeof station === 'number' ? [{ station, name }] : [],
          )}
        />
      ))}
      <SheetZones zones={zones} controllers={controllers} />
      <dl className="sheet-lines sheet-end">
        {(['done', 'left', 'worked', 'materials'] as const).map((line) => (
          <BlankLine key={line} label={<FormattedMessage id={`sheet.end.${line}`} />} />
        ))}
      </dl>
    </li>
  );
}
