import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import { Fetched } from '../../page/Fetched.js';
import { PageHead } from '../../ui/frame/PageHead.js';
import { DemoDoors } from './DemoDoors.js';
import { DoorFrame } from './DoorFrame.js';
import { FirstOrganization } from './FirstOrganization.js';
import { OthersUnsent } from '../../session/OthersUnsent.js';
import { SignInForm } from './SignInForm.js';
import { useOwedSignOut } from '../../session/owed-sign-out.js';
import { enter, useNextAddress } from './urls.js';
import { useSignIn } from './use-sign-in.js';

export const signInPageDocument = graphql(`
  query SignInPage {
    signInPage {
      empty
      demo {
        email
        password
        name
        role
        organizationName
      }
    }
  }
`);

interface Props {
  readonly onEntered?: (address: string) => void;
}

/** The door: e-mail and password, the demonstration's doors, or the founding of the first organization. */
export function SignInPage({ onEntered = enter }: Props) {
  const intl = useIntl();
  useOwedSignOut();
  const next = useNextAddress();
  const query = useQuery(signInPageDocument, { fetchPolicy: 'network-only' });
  const signIn = useSignIn(() => onEntered(next));
  return (
    <DoorFrame>
      <Fetched query={query}>
        {({ signInPage: { empty, demo } }) =>
          empty ? (
            <FirstOrganization onEntered={() => onEntered('/')} />
          ) : (
            <>
              <PageHead
                sentence={intl.formatMessage({ id: 'identity.signIn.title' })}
                lede={<FormattedMessage id="identity.signIn.lede" />}
                tab={intl.formatMessage({ id: 'identity.signIn.do' })}
              />
              <OthersUnsent />
              <SignInForm signIn={signIn} />
              <DemoDoors doors={demo} signIn={signIn} />
            </>
          )
        }
      </Fetched>
    </DoorFrame>
  );
}
