import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useMasked } from '../../../../page/use-masked.js';
import { ButtonLink } from '../../../../ui/forms/Button.js';
import { PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { SentLine } from '../../device/SentLine.js';
import { stopPath } from '../../urls.js';
import type { StepProps } from '../step-props.js';
import { ZoneWalk } from './ZoneWalk.js';
import { zonesInOrder } from './zones-in-order.js';

export const zonesStop = graphql(`
  fragment ZonesStop on Stop {
    id
    cautions
    property {
      id
      controllers {
        id
        name
      }
      zones {
        id
        station
        controllerId
        name
        retiredAt
        ...WalkedZone
      }
    }
    workOrders {
      id
      zoneId
      kind
      what
      finding {
        id
        kind
      }
    }
    visit {
      id
      zoneNotes {
        id
        zoneId
        kind
        count
        word
        repaired
      }
    }
  }
`);

/** Findings that only a test settles. */
const ASK_TEST: ReadonlySet<string> = new Set(['flow to be tested', 'zone flow changed']);

/** The zone walk: one zone at a time, in the order of the controllers' stations. */
export function ZonesStep({ stop: masked, thing, frame, visit }: StepProps) {
  const stop = useMasked(zonesStop, masked);
  const { property } = stop;
  const zones = zonesInOrder(property.zones, property.controllers);
  const zone = zones.find(({ id }) => id === thing) ?? zones[0];
  if (!zone)
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
        <h1>
          <FormattedMessage id="field.zones.none" />
        </h1>
        <p className="where">
          <FormattedMessage id="field.zones.noneHow" />
        </p>
      </PhoneFrame>
    );
  const at = zones.indexOf(zone);
  return (
    <ZoneWalk
      key={zone.id}
      zone={zone}
      place={{ at, zones }}
      stopId={stop.id}
      asksTest={stop.workOrders.some(({ finding }) => finding !== null && ASK_TEST.has(finding?.kind ?? ''))}
      controllerName={
        property.controllers.length > 1 ? (property.controllers.find(({ id }) => id === zone.controllerId)?.name ?? null) : null
      }
      cautions={stop.cautions.filter((code) => code === 'digging' || code === 'pressure' || code === 'recycled-water')}
      orders={stop.workOrders.filter(({ zoneId }) => zoneId === zone.id)}
      notes={(stop.visit?.zoneNotes ?? []).filter(({ zoneId }) => zoneId === zone.id)}
      frame={frame}
      visit={visit}
    />
  );
}
