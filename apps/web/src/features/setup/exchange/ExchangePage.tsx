import { useQuery } from '@apollo/client/react';
import { useCallback } from 'react';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { Fetched } from '../../../page/Fetched.js';
import { useAddress } from '../../../page/use-address.js';
import { exchangeAddress } from '../urls.js';
import { BringIn } from './BringIn.js';
import { DropAnywhere } from './DropAnywhere.js';
import { FirstRun } from './FirstRun.js';
import { UploadPage } from './upload/UploadPage.js';
import { useCheck } from './use-check.js';

const exchangeDocument = graphql(`
  query Exchange {
    properties {
      id
    }
    signInPage {
      demo {
        email
      }
    }
  }
`);

/** Files in and out. On an empty organization, how to begin. */
export function ExchangePage() {
  const [{ upload, job }, change] = useAddress(exchangeAddress);
  const files = useCheck(useCallback((id: string) => change({ upload: id, job: null }), [change]));
  const query = useQuery(exchangeDocument, { fetchPolicy: 'cache-and-network' });
  if (upload)
    return (
      <UploadPage
        key={upload}
        id={upload}
        job={job}
        onJob={(started) => change({ job: started })}
        onEnd={() => {
          change({ upload: null, job: null });
          void query.refetch();
        }}
      />
    );
  return (
    <Fetched query={query}>
      {({ properties, signInPage }) => (
        <DropAnywhere onFiles={files.onFiles}>
          {properties.length === 0 ? <FirstRun files={files} hasDemo={signInPage.demo.length > 0} /> : <BringIn files={files} />}
        </DropAnywhere>
      )}
    </Fetched>
  );
}
