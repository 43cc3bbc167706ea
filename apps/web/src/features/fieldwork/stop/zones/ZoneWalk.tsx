import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { WalkedZoneFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../../page/use-masked.js';
import { useSays } from '../../../../says/use-says.js';
import { ButtonLink } from '../../../../ui/forms/Button.js';
import { Caution, PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { SentLine } from '../../device/SentLine.js';
import { stopPath } from '../../urls.js';
import { CautionWords } from '../CautionWords.js';
import type { StepProps } from '../step-props.js';
import { SeenInZone } from './SeenInZone.js';
import { type GivenNote, useZoneNotes } from './use-zone-notes.js';
import { ZoneStrip } from './ZoneStrip.js';

export const walkedZone = graphql(`
  fragment WalkedZone on Zone {
    id
    name
    station
    plants
    sun
    flowLPerMin
  }
`);

interface Props extends Pick<StepProps, 'frame' | 'sending' | 'visit'> {
  readonly zone: FragmentType<WalkedZoneFragment>;
  readonly place: {
    readonly at: number;
    readonly zones: readonly { readonly id: string; readonly name: string; readonly station?: number | null }[];
  };
  readonly stopId: string;
  readonly controllerName: string | null;
  readonly cautions: readonly string[];
  readonly orders: readonly { readonly id: string; readonly kind: string; readonly what: string }[];
  readonly notes: readonly GivenNote[];
}

/** One zone: what was seen, one tap each. */
export function ZoneWalk({
  zone: masked,
  place: { at, zones },
  stopId,
  controllerName,
  cautions,
  orders,
  notes,
  frame,
  sending,
  visit,
}: Props) {
  const intl = useIntl();
  const { quantity } = useFormats();
  const { word } = useSays();
  const zone = useMasked(walkedZone, masked);
  const label = (one: { readonly name: string; readonly station?: number | null }): string =>
    typeof one.station === 'number' ? String(one.station) : one.name;
  const seen = useZoneNotes({ zoneId: zone.id, name: label(zone), stopId, notes, visit, send: sending.send });
  const before = zones[at - 1];
  const after = zones[at + 1];
  const facts = [
    controllerName,
    zone.plants && word('plants', zone.plants),
    zone.sun && word('field.sun', zone.sun),
    typeof zone.flowLPerMin === 'number' && quantity('flow', zone.flowLPerMin),
  ].filter(Boolean);
  return (
    <PhoneFrame
      {...frame}
      status={<SentLine sending={sending} />}
      actions={
        <>
          <ButtonLink kind="plain" to={before ? stopPath(stopId, 'zones', before.id) : stopPath(stopId, 'settings')}>
            {before ? (
              <FormattedMessage id="field.zones.zone" values={{ zone: label(before) }} />
            ) : (
              <FormattedMessage id="field.step.settings" />
            )}
          </ButtonLink>
          <ButtonLink kind="main" to={after ? stopPath(stopId, 'zones', after.id) : stopPath(stopId, 'done')}>
            {after ? (
              <FormattedMessage id="field.zones.next" values={{ zone: label(after) }} />
            ) : (
              <FormattedMessage id="field.zones.toDone" />
            )}
          </ButtonLink>
        </>
      }
    >
      <ZoneStrip at={at} count={zones.length} label={label(zone)} />
      <h1>
        {typeof zone.station === 'number' ? (
          <FormattedMessage id="field.zones.title" values={{ station: zone.station, name: zone.name }} />
        ) : (
          zone.name
        )}
      </h1>
      {facts.length > 0 && <p className="where">{facts.join(', ')}</p>}
      {orders.map(({ id, kind, what }) => (
        <Caution key={id}>{what || word('work', kind)}</Caution>
      ))}
      {(orders.length > 0 ? cautions : []).map((code) => (
        <Caution key={code}>
          <CautionWords code={code} />
        </Caution>
      ))}
      {seen.problem ? <ErrorState problem={seen.problem} onRetry={seen.sendAgain} /> : null}
      <SeenInZone seen={seen} label={intl.formatMessage({ id: 'field.zones.seen' })} />
    </PhoneFrame>
  );
}
