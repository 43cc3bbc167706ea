import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { PropertyOfHeadFragment, VerdictOfAccountFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { MonthSelect } from '../../../page/MonthSelect.js';
import { paths } from '../../../page/paths.js';
import { useMasked } from '../../../page/use-masked.js';
import type { Names } from '../../../says/names.js';
import { type Says, useSays } from '../../../says/use-says.js';
import { mayDo, useViewer } from '../../../session/viewer.js';
import { ButtonLink } from '../../../ui/forms/Button.js';
import { PageHead } from '../../../ui/frame/PageHead.js';
import { verdict, verdictOfAccount } from './verdict.js';

const propertyOfHead = graphql(`
  fragment PropertyOfHead on Property {
    id
    name
    address
    city
    client {
      id
      name
    }
    zones {
      id
      areaM2
    }
    controllers {
      id
    }
    meters {
      id
    }
    findings {
      id
      state
      money
    }
  }
`);

interface Props {
  readonly property: FragmentType<PropertyOfHeadFragment>;
  readonly account: FragmentType<VerdictOfAccountFragment> | null;
  readonly months: readonly string[];
  readonly month: string | null;
  readonly through: string | null;
  readonly names: Names;
  readonly onMonth: (month: string) => void;
}

/** The verdict as the page's sentence, with the month it is of. */
export function PropertyHead({ account, ...rest }: Props) {
  return account ? <KnownHead account={account} {...rest} /> : <Head verdictOf={null} {...rest} />;
}

function KnownHead({ account, ...rest }: Omit<Props, 'account'> & { readonly account: FragmentType<VerdictOfAccountFragment> }) {
  return <Head verdictOf={useMasked(verdictOfAccount, account)} {...rest} />;
}

interface HeadProps extends Omit<Props, 'account'> {
  readonly verdictOf: VerdictOfAccountFragment | null;
}

function Head({ property: masked, verdictOf, months, month, through, names, onMonth }: HeadProps) {
  const intl = useIntl();
  const formats = useFormats();
  const says = useSays(names);
  const viewer = useViewer();
  const property = useMasked(propertyOfHead, masked);
  const dearest = property.findings
    .filter(({ state }) => state === 'open')
    .sort((one, other) => (other.money ?? -1) - (one.money ?? -1))[0];
  const facts = {
    zones: property.zones.length,
    area: formats.quantity(
      'area',
      property.zones.reduce((sum, { areaM2 }) => sum + areaM2, 0),
    ),
    controllers: property.controllers.length,
    meters: property.meters.length,
  };
  const where = [property.client.name, [property.address, property.city].filter(Boolean).join(', ')].filter(Boolean).join(' · ');
  return (
    <>
      <PageHead
        crumb={
          <>
            {mayDo(viewer, 'read portfolio') && (
              <>
                <Link to={month ? `${paths.portfolio}?month=${month}` : paths.portfolio}>
                  <FormattedMessage id="property.crumb" />
                </Link>{' '}
                ·{' '}
              </>
            )}
            {where}
          </>
        }
        sentence={verdict(property.name, verdictOf, { intl, formats, says })}
        tab={property.name}
        actions={
          month !== null && (
            <>
              <MonthSelect months={months} shown={month} through={through} onChange={onMonth} />
              {dearest && mayDo(viewer, 'decide findings') && (
                <ButtonLink kind="main" to={paths.finding(dearest.id)}>
                  <FormattedMessage id="property.findings.do" />
                </ButtonLink>
              )}
            </>
          )
        }
        lede={whyUnknown(verdictOf, says)}
      />
      <p className="soft facts">
        <FormattedMessage id="property.facts" values={facts} />
      </p>
    </>
  );
}

/** What is missing where the verdict is. */
function whyUnknown(account: VerdictOfAccountFragment | null, says: Says): string | null {
  if (!account || typeof account.aboveNeed.litres === 'number') return null;
  const reasons = [account.metered.reason, account.needed.reason].flatMap((reason) => (reason ? [says.reason(reason)] : []));
  const own = account.aboveNeed.reason ? [says.reason(account.aboveNeed.reason)] : [];
  return [...new Set(reasons.length > 0 ? reasons : own)].join(' ');
}
