import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { BreakerOfRuleFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { paths } from '../../../page/paths.js';
import { namesOf } from '../../../says/names.js';
import { useSays } from '../../../says/use-says.js';
import { clockInWords } from '../../../programs/days-in-words.js';
import { settingsChanges } from '../../../page/work/settings-changes.js';
import { planReason } from '../../../page/work/plan-reason.js';

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
          ...ProgramFields @unmask
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

/** A controller that breaks the rule: how, what each offer would change on it, and what comes of it; an offer is a row. */
export function BreakerRow({ under: { property, controller, breaches, plan } }: { readonly under: BreakerOfRuleFragment }) {
  const intl = useIntl();
  const offers = [plan?.leastChange, plan?.full].filter((offer): offer is Offer => Boolean(offer));
  const [first, ...others] = offers;
  const rows = Math.max(1, offers.length);
  return (
    <>
      <tr>
        <td rowSpan={rows}>
          <Link to={paths.property(property.id)}>{property.name}</Link> <span className="soft">{controller.name}</span>
        </td>
        <td rowSpan={rows}>
          <Broken breaches={breaches ?? []} />
        </td>
        {first ? (
          <OfferCells offer={first} present={controller.presentSettings ?? null} />
        ) : (
          <td colSpan={2}>{plan?.reason && planReason(intl, namesOf({}), plan.reason)}</td>
        )}
      </tr>
      {others.map((offer) => (
        <tr key={offer.kind}>
          <OfferCells offer={offer} present={controller.presentSettings ?? null} />
        </tr>
      ))}
    </>
  );
}

/** What is broken, each rule once: programs that break it alike are one line. */
function Broken({ breaches }: { readonly breaches: NonNullable<BreakerOfRuleFragment['breaches']> }) {
  const intl = useIntl();
  const { word } = useSays();
  const lines = new Map<string, { rule: string; kind: string; times: number }>();
  for (const { rule, kind, times } of breaches) {
    const key = JSON.stringify([rule, kind]);
    lines.set(key, { rule, kind, times: Math.max(times, lines.get(key)?.times ?? 0) });
  }
  return [...lines].map(([key, { rule, kind, times }]) => (
    <span className="line" key={key}>
      {intl.formatMessage({ id: 'plan.breach' }, { rule, kind: word('plan.breach', kind), times })}
    </span>
  ));
}

interface OfferProps {
  readonly offer: Offer;
  readonly present: BreakerOfRuleFragment['controller']['presentSettings'] | null;
}

function OfferCells({ offer: { kind, programs, result }, present }: OfferProps) {
  const intl = useIntl();
  const formats = useFormats();
  const { word, volume } = useSays();
  const now = present ?? { state: 'on', programs: [] };
  const changes = settingsChanges(intl, formats, now, { state: programs.length > 0 ? 'on' : 'off', programs });
  return (
    <>
      <td>
        <b>{word('plan.offer', kind)}</b> <span>{changes.join('; ')}</span>
      </td>
      <td>
        <FormattedMessage
          id="ruleChange.outcome"
          values={{
            unmet: volume(result.unmetLitres),
            wasted: volume(result.wastedLitres),
            ends: result.endsAt ? clockInWords(formats, result.endsAt) : 'none',
          }}
        />
      </td>
    </>
  );
}
