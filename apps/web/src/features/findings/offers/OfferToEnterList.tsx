import { useQuery } from '@apollo/client/react';
import { FormattedMessage, type IntlShape, useIntl } from 'react-intl';
import type { Formats } from '../../../i18n/formats.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../page/Fetched.js';
import { planReason } from '../../../page/work/plan-reason.js';
import { settingsChanges } from '../../../page/work/settings-changes.js';
import type { Names } from '../../../says/names.js';
import { useSays } from '../../../says/use-says.js';
import { RadioList } from '../../../ui/forms/Select.js';
import { offerChoices, type Wished } from './offer-choices.js';
import { type ControllerToEnter, offersDocument, type OfferToEnter } from './offers-document.js';

interface Props {
  readonly controllerId: string;
  readonly month: string;
  readonly names: Names;
  /** null where nobody has chosen yet */
  readonly wished: Wished | null;
  readonly onChange: (wished: Wished) => void;
}

/** The two offers of the controller's plan, the least change first: what each enters, leaves unmet and wastes. */
export function OfferToEnterList({ controllerId, month, ...rest }: Props) {
  const query = useQuery(offersDocument, { variables: { id: controllerId, month } });
  return (
    <Fetched query={query}>
      {({ controller }) => (controller ? <Offers controller={controller} {...rest} /> : <FormattedMessage id="plan.reason.gone" />)}
    </Fetched>
  );
}

type OffersProps = Omit<Props, 'controllerId' | 'month'> & { readonly controller: ControllerToEnter };

function Offers({ controller, names, wished, onChange }: OffersProps) {
  const intl = useIntl();
  const formats = useFormats();
  const { word, volume } = useSays();
  const { offers, first } = offerChoices(controller);
  if (offers.length === 0) return <NoOffer controller={controller} names={names} />;
  const hintOf = (offer: OfferToEnter): string => {
    const { unmetLitres, wastedLitres, keyPresses } = offer.result;
    const values = { presses: keyPresses, unmet: volume(unmetLitres), wasted: volume(wastedLitres) };
    return `${enters(intl, formats, controller, offer)} ${intl.formatMessage({ id: 'accept.offer.leaves' }, values)}`;
  };
  const choices = offers.map(({ wished: value, offer }) =>
    offer
      ? { value, words: word('plan.offer', offer.kind), hint: hintOf(offer) }
      : { value, words: intl.formatMessage({ id: 'accept.offer.nothing' }), hint: intl.formatMessage({ id: 'accept.offer.nothing.hint' }) },
  );
  const month = formats.month(controller.plan?.month ?? '');
  return (
    <RadioList
      label={intl.formatMessage({ id: 'accept.offer' }, { name: controller.name, month })}
      {...(first === 'full program' && { hint: intl.formatMessage({ id: 'plan.noLeast' }) })}
      value={offers.find(({ wished: value }) => value === wished)?.wished ?? first}
      choices={choices}
      onChange={onChange}
    />
  );
}

/** Why nothing can be planned, and what the crew gets all the same. */
function NoOffer({ controller: { plan }, names }: Pick<OffersProps, 'controller' | 'names'>) {
  const intl = useIntl();
  const why = plan?.reason ? planReason(intl, names, plan.reason) : '';
  return (
    <p className="soft">
      <FormattedMessage id="accept.offer.none" values={{ why, byAccount: plan?.reason?.code === 'NO_WEATHER' ? 'yes' : 'no' }} />
    </p>
  );
}

/** What differs from what is set now; a program where nobody knows what is set. */
function enters(intl: IntlShape, formats: Formats, { presentSettings }: ControllerToEnter, { programs }: OfferToEnter): string {
  if (!presentSettings) return intl.formatMessage({ id: 'accept.offer.programs' }, { count: programs.length });
  const changes = settingsChanges(intl, formats, presentSettings, { state: programs.length > 0 ? 'on' : 'off', programs });
  return changes.length === 0
    ? intl.formatMessage({ id: 'plan.noChange' })
    : intl.formatMessage({ id: 'accept.offer.changes' }, { changes: changes.join('; ') });
}
