import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useMasked } from '../../../../page/use-masked.js';
import { ButtonLink } from '../../../../ui/forms/Button.js';
import { PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { SentLine } from '../../device/SentLine.js';
import { stopPath } from '../../urls.js';
import type { StepProps } from '../step-props.js';
import { ZoneWalk } from './ZoneWalk.js';

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

/** The zone walk: one zone at a time, in the order of the controllers' stations. */
export function ZonesStep({ stop: masked, thing, frame, visit }: StepProps) {
  const stop = useMasked(zonesStop, masked);
  const { property } = stop;
  const order = new Map(property.controllers.map(({ id }, at) => [id, at]));
  const place = (zone: { controllerId?: string | null; station?: number | null }): number =>
    (order.get(zone.controllerId ?? '') ?? order.size) * 1000 + (zone.station ?? 999);
  const zones = property.zones.filter(({ retiredAt }) => !retiredAt).sort((a, b) => place(a) - place(b) || a.name.localeCompare(b.name));
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
