import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { BreakerOfRuleFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { paths } from '../../../page/paths.js';
import { namesOf } from '../../../says/names.js';
import { useSays } from '../../../says/use-says.js';
import { clockInWords } from '../plan/settings/days-in-words.js';
import { settingsChanges } from '../plan/settings/settings-changes.js';
import { planReason } from '../plan/plan-reason.js';

graphql(`
  fragment BreakerOfRule on ControllerUnderRule {
    property {
      id
      name
    }
    controller {
      id
      name
      presentSettings {
        id
        state
        programs {
          name
          days
          starts
          adjustPercent
          stations {
            station
            minutes
          }
        }
      }
    }
    breaches {
      rule
      kind
      times
    }
    plan {
      reason {
        code
        details
      }
      leastChange {
        ...PlanOfferFields @unmask
      }
      full {
        ...PlanOfferFields @unmask
      }
    }
  }
`);

type Offer = NonNullable<NonNullable<BreakerOfRuleFragment['plan']>['full']>;

/** A controller that breaks the rule: how, what each offer would change on it, and what comes of it. */
export function BreakerRow({ under: { property, controller, breaches, plan } }: { readonly under: BreakerOfRuleFragment }) {
  const intl = useIntl();
  const { word } = useSays();
  const offers = [plan?.leastChange, plan?.full].filter((offer): offer is Offer => Boolean(offer));
  const broken = (breaches ?? []).map(({ rule, kind, times }) =>
    intl.formatMessage({ id: 'plan.breach' }, { rule, kind: word('plan.breach', kind), times }),
  );
  return (
    <tr>
      <td>
        <Link to={paths.property(property.id)}>{property.name}</Link> <span className="soft">{controller.name}</span>
      </td>
      <td>
        {[...new Set(broken)].map((each) => (
          <span className="line" key={each}>
            {each}
          </span>
        ))}
      </td>
      <td>
        {offers.map((offer) => (
          <Change key={offer.kind} offer={offer} present={controller.presentSettings ?? null} />
        ))}
        {offers.length === 0 && plan?.reason && planReason(intl, namesOf({}), plan.reason)}
      </td>
      <td>
        {offers.map((offer) => (
          <Outcome key={offer.kind} offer={offer} />
        ))}
      </td>
    </tr>
  );
}

interface ChangeProps {
  readonly offer: Offer;
  readonly present: BreakerOfRuleFragment['controller']['presentSettings'] | null;
}

function Change({ offer: { kind, programs }, present }: ChangeProps) {
  const intl = useIntl();
  const formats = useFormats();
  const { word } = useSays();
  const now = present ?? { state: 'on', programs: [] };
  const changes = settingsChanges(intl, formats, now, { state: programs.length > 0 ? 'on' : 'off', programs });
  return (
    <span className="line">
      <b>{word('plan.offer', kind)}</b> {changes.join('; ')}
    </span>
  );
}

function Outcome({ offer: { result } }: { readonly offer: Offer }) {
  const formats = useFormats();
  const { volume } = useSays();
  return (
    <span className="line">
      <FormattedMessage
        id="ruleChange.outcome"
        values={{
          unmet: volume(result.unmetLitres),
          wasted: volume(result.wastedLitres),
          ends: result.endsAt ? clockInWords(formats, result.endsAt) : 'none',
        }}
      />
    </span>
  );
}
