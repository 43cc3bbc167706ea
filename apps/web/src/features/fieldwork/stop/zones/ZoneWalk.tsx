import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { WalkedZoneFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../../page/use-masked.js';
import { useSays } from '../../../../says/use-says.js';
import { ButtonLink } from '../../../../ui/forms/Button.js';
import { Caution, PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { SentLine } from '../../device/SentLine.js';
import { stopPath } from '../../urls.js';
import { useOrderWords } from '../../use-order-words.js';
import { CautionWords } from '../arrive/CautionWords.js';
import type { StepProps } from '../step-props.js';
import { SeenInZone } from './SeenInZone.js';
import { type GivenNote, useZoneNotes } from './use-zone-notes.js';
import { ZoneStrip } from './ZoneStrip.js';
import { labelOf } from './zones-in-order.js';

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

interface Props extends Pick<StepProps, 'frame' | 'visit'> {
  readonly zone: FragmentType<WalkedZoneFragment>;
  readonly place: {
    readonly at: number;
    readonly zones: readonly { readonly id: string; readonly name: string; readonly station?: number | null }[];
  };
  readonly stopId: string;
  /** Whether a zone here is to be tested. */
  readonly asksTest: boolean;
  readonly controllerName: string | null;
  readonly cautions: readonly string[];
  readonly orders: readonly { readonly id: string; readonly kind: string; readonly what: string }[];
  readonly notes: readonly GivenNote[];
}

type Named = Props['place']['zones'][number];

/** One zone: what was seen, one tap each. */
export function ZoneWalk(props: Props) {
  const { zone: masked, place, stopId, asksTest, controllerName, cautions, orders, notes, frame, visit } = props;
  const { at, zones } = place;
  const intl = useIntl();
  const orderWords = useOrderWords();
  const zone = useMasked(walkedZone, masked);
  const seen = useZoneNotes({ zoneId: zone.id, name: labelOf(zone), notes, visit });
  const actions = <ZoneActions before={zones[at - 1] ?? null} after={zones[at + 1] ?? null} stopId={stopId} asksTest={asksTest} />;
  return (
    <PhoneFrame {...frame} status={<SentLine />} actions={actions}>
      <ZoneStrip at={at} count={zones.length} label={labelOf(zone)} />
      <h1>
        {typeof zone.station === 'number'
          ? intl.formatMessage({ id: 'field.zones.title' }, { station: zone.station, name: zone.name })
          : zone.name}
      </h1>
      <ZoneFacts zone={zone} controllerName={controllerName} />
      {orders.map((order) => (
        <Caution key={order.id}>{orderWords(order)}</Caution>
      ))}
      {(orders.length > 0 ? cautions : []).map((code) => (
        <Caution key={code}>
          <CautionWords code={code} />
        </Caution>
      ))}
      <SeenInZone seen={seen} label={intl.formatMessage({ id: 'field.zones.seen' })} zoneId={zone.id} begin={visit.begin} />
    </PhoneFrame>
  );
}

interface FactsProps {
  readonly zone: WalkedZoneFragment;
  readonly controllerName: string | null;
}

function ZoneFacts({ zone: { plants, sun, flowLPerMin }, controllerName }: FactsProps) {
  const { quantity } = useFormats();
  const { word } = useSays();
  const facts = [
    controllerName,
    plants && word('plants', plants),
    sun && word('field.sun', sun),
    typeof flowLPerMin === 'number' && quantity('flow', flowLPerMin),
  ].filter(Boolean);
  return facts.length > 0 ? <p className="where">{facts.join(', ')}</p> : null;
}

interface ActionsProps {
  readonly before: Named | null;
  readonly after: Named | null;
  readonly stopId: string;
  readonly asksTest: boolean;
}

/** The zone before and the next; at the ends the steps around. */
function ZoneActions({ before, after, stopId, asksTest }: ActionsProps) {
  return (
    <>
      <ButtonLink kind="plain" to={before ? stopPath(stopId, 'zones', before.id) : stopPath(stopId, 'settings')}>
        {before ? (
          <FormattedMessage id="field.zones.zone" values={{ zone: labelOf(before) }} />
        ) : (
          <FormattedMessage id="field.step.settings" />
        )}
      </ButtonLink>
      <ButtonLink kind="main" to={after ? stopPath(stopId, 'zones', after.id) : stopPath(stopId, asksTest ? 'tests' : 'done')}>
        {after ? (
          <FormattedMessage id="field.zones.next" values={{ zone: labelOf(after) }} />
        ) : (
          <FormattedMessage id={asksTest ? 'field.zones.toTests' : 'field.zones.toDone'} />
        )}
      </ButtonLink>
    </>
  );
}
