import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { Fetched } from '../../../page/Fetched.js';
import { PageHead } from '../../../ui/frame/PageHead.js';
import { ClearDemo } from './ClearDemo.js';
import { PlanSettingForm } from './PlanSettingForm.js';
import { OrganizationForm } from './OrganizationForm.js';

const organizationDocument = graphql(`
  query SetupOrganization {
    me {
      memberId
      organization {
        id
        version
        name
        language
        units
        leastLitres
        leastMoney
        leastConfidence
        isDemo
      }
    }
  }
`);

/** How the organization speaks and counts, and what is worth a finding. */
export function OrganizationPage() {
  const intl = useIntl();
  // The viewer's own data stays as it is in the cache: who asks for other fields of it keeps them apart.
  const query = useQuery(organizationDocument, { fetchPolicy: 'no-cache' });
  return (
    <>
      <PageHead
        sentence={intl.formatMessage({ id: 'setup.organization.title' })}
        lede={<FormattedMessage id="setup.organization.lede" />}
      />
      <Fetched query={query}>
        {({ me }) =>
          me && (
            <>
              <OrganizationForm key={me.organization.version} organization={me.organization} onSaved={() => void query.refetch()} />
              <PlanSettingForm />
              {me.organization.isDemo && <ClearDemo name={me.organization.name} />}
            </>
          )
        }
      </Fetched>
    </>
  );
}
