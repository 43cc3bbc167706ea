import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { TestsStopFragment } from '../../../../graphql/__generated__/graphql.js';
import { useMasked } from '../../../../page/use-masked.js';
import { ButtonLink } from '../../../../ui/forms/Button.js';
import { Caution, PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { SentLine } from '../../device/SentLine.js';
import { stopPath } from '../../urls.js';
import { useOrderWords } from '../../use-order-words.js';
import { labelOf, zonesInOrder } from '../zones/zones-in-order.js';
import type { StepProps } from '../step-props.js';
import { ZoneTests } from './ZoneTests.js';
import { ZonesToTest } from './ZonesToTest.js';

export const testsStop = graphql(`
  fragment TestsStop on Stop {
    id
    property {
      id
      controllers {
        id
      }
      meters {
        id
        name
        unit
        multiplier
        digits
        resolution
        retiredAt
        removedOn
      }
      zones {
        id
        name
        station
        controllerId
        meterId
        retiredAt
        flowLPerMin
        flowSource
        duLq
      }
    }
    workOrders {
      id
      kind
      what
      finding {
        id
        kind
      }
    }
    visit {
      id
      zoneTests {
        id
        zoneId
        kind
        testedAt
        flowLPerMin
        flowSdLPerMin
        duLq
        rateMmPerH
        catchesMl
        onRecord
      }
    }
  }
`);

/** Tests, where they are asked for or wanted: the flow of a zone by its meter, its evenness by cans. */
export function TestsStep({ stop: masked, thing, frame, now, visit }: StepProps) {
  const stop = useMasked(testsStop, masked);
  const { property } = stop;
  const zones = zonesInOrder(property.zones, property.controllers);
  const zone = zones.find(({ id }) => id === thing);
  const given = stop.visit?.zoneTests ?? [];
  if (!zone) return <AllZones stop={stop} zones={zones} frame={frame} />;
  return (
    <ZoneTests
      key={zone.id}
      zone={{ ...zone, label: labelOf(zone) }}
      meters={property.meters.filter(({ retiredAt, removedOn }) => !retiredAt && !removedOn)}
      given={given.filter(({ zoneId }) => zoneId === zone.id)}
      stopId={stop.id}
      frame={frame}
      now={now}
      visit={visit}
    />
  );
}

interface AllProps extends Pick<StepProps, 'frame'> {
  readonly stop: TestsStopFragment;
  readonly zones: TestsStopFragment['property']['zones'];
}

function AllZones({ stop, zones, frame }: AllProps) {
  const intl = useIntl();
  const orderWords = useOrderWords();
  return (
    <PhoneFrame
      {...frame}
      status={<SentLine />}
      actions={
        <ButtonLink kind="main" to={stopPath(stop.id, 'done')}>
          <FormattedMessage id="field.zones.toDone" />
        </ButtonLink>
      }
    >
      <h1>{intl.formatMessage({ id: zones.length > 0 ? 'field.tests.title' : 'field.zones.none' })}</h1>
      {stop.workOrders
        .filter(({ finding }) => finding?.kind === 'flow to be tested' || finding?.kind === 'zone flow changed')
        .map((order) => (
          <Caution key={order.id}>{orderWords(order)}</Caution>
        ))}
      <ZonesToTest zones={zones} tests={stop.visit?.zoneTests ?? []} stopId={stop.id} />
    </PhoneFrame>
  );
}
