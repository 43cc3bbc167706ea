import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { Fetched } from '../../../page/Fetched.js';
import { useViewer } from '../../../session/viewer.js';
import { PageHead } from '../../../ui/frame/PageHead.js';
import { BrandForm } from './BrandForm.js';

export const brandDocument = graphql(`
  query SetupBrand {
    reportBrand {
      name
      colour
      logo
      contact
      version
    }
  }
`);

/** How the office's reports look: its own name, colour, logo, and where it is reached. */
export function BrandPage() {
  const intl = useIntl();
  const { organization } = useViewer();
  const query = useQuery(brandDocument, { fetchPolicy: 'no-cache' });
  return (
    <>
      <PageHead sentence={intl.formatMessage({ id: 'setup.brand.title' })} lede={<FormattedMessage id="setup.brand.lede" />} />
      <Fetched query={query}>
        {({ reportBrand }) => (
          <BrandForm
            key={reportBrand.version}
            brand={reportBrand}
            organizationName={organization.name}
            onSaved={() => void query.refetch()}
          />
        )}
      </Fetched>
    </>
  );
}
