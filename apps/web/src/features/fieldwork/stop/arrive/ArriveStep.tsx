import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../../page/use-masked.js';
import { Button, ButtonLink } from '../../../../ui/forms/Button.js';
import { Caution, PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { PhotoButton } from '../../device/PhotoButton.js';
import { SentLine } from '../../device/SentLine.js';
import { OvertakenOrder } from '../../settings-beside/OvertakenOrder.js';
import { stopPath } from '../../urls.js';
import { useOrderWords } from '../../use-order-words.js';
import { isDecidable } from '../done/order-end.js';
import { CautionWords } from './CautionWords.js';
import type { StepProps } from '../step-props.js';

export const arriveStop = graphql(`
  fragment ArriveStop on Stop {
    id
    cautions
    property {
      id
      name
      address
      city
      notes
    }
    workOrders {
      id
      kind
      what
      waterAgainOn
      state
      leftNote
      overtakenBy {
        orderId
        plannedAt
        state
      }
    }
  }
`);

/** Work that looks otherwise when it is done. */
const SHOWS: ReadonlySet<string> = new Set(['repair', 'upgrade', 'plant care', 'inspect']);

/** Before the first step: what is to be done here, and what to be careful of. */
export function ArriveStep({ stop: masked, frame, visit }: StepProps) {
  const { id, property, cautions, workOrders } = useMasked(arriveStop, masked);
  const orderWords = useOrderWords();
  const where = [property.address, property.city].filter(Boolean).join(', ');
  return (
    <PhoneFrame
      {...frame}
      status={<SentLine />}
      actions={
        <ButtonLink kind="main" to={stopPath(id, 'meter')} onClick={visit.arrive}>
          <FormattedMessage id="field.arrive.next" />
        </ButtonLink>
      }
    >
      <h1>{property.name}</h1>
      {where && <p className="where">{where}</p>}
      {cautions.length > 0 && (
        <div className="cautions">
          {cautions.map((code) => (
            <Caution key={code}>
              <CautionWords code={code} notes={property.notes ?? null} />
            </Caution>
          ))}
        </div>
      )}
      {visit.takeBack && visit.visit && <Begun at={visit.visit.arrivedAt} onTakeBack={visit.takeBack} />}
      <h2 className="crew-name">
        <FormattedMessage id="field.arrive.orders" values={{ count: workOrders.length }} />
      </h2>
      <ul className="todo">
        {workOrders.map(({ id: order, kind, what, waterAgainOn, state, leftNote, overtakenBy }) => (
          <li key={order}>
            {orderWords({ kind, what, waterAgainOn })}
            {state === 'waiting for approval' && (
              <>
                {' '}
                <FormattedMessage id="field.order.waits" />
              </>
            )}
            {leftNote && (
              <>
                {' '}
                <FormattedMessage id="field.order.leftBefore" values={{ note: leftNote }} />
              </>
            )}
            <OvertakenOrder by={overtakenBy} />
            {isDecidable(state) && SHOWS.has(kind) && <PhotoButton begin={visit.begin} kind="before" of={order} workOrderId={order} />}
          </li>
        ))}
      </ul>
    </PhoneFrame>
  );
}

/** A tap at the wrong stop is taken back as long as nothing was done there. */
function Begun({ at, onTakeBack }: { readonly at: string; readonly onTakeBack: () => void }) {
  const { time } = useFormats();
  return (
    <div className="stack">
      <p className="where">
        <FormattedMessage id="field.today.arrived" values={{ time: time(at) }} />
      </p>
      <Button kind="plain" onClick={onTakeBack}>
        <FormattedMessage id="field.arrive.takeBack" />
      </Button>
    </div>
  );
}
