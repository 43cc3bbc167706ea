import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { useParams } from 'react-router';
import { graphql } from '../../graphql/__generated__/gql.js';
import { Fetched } from '../../page/Fetched.js';
import { ButtonLink } from '../../ui/forms/Button.js';
import { PageHead } from '../../ui/frame/PageHead.js';
import { AcceptInvitation } from './AcceptInvitation.js';
import { DoorFrame } from './DoorFrame.js';
import { enter } from './urls.js';

export const invitationDocument = graphql(`
  query Invitation($link: String!) {
    invitation(link: $link) {
      email
      name
      organizationName
      language
    }
  }
`);

interface Props {
  readonly onEntered?: (address: string) => void;
}

/** Where an invitation leads: who invites, and a password to choose. */
export function InvitationPage({ onEntered = enter }: Props) {
  const intl = useIntl();
  const { link = '' } = useParams();
  const query = useQuery(invitationDocument, { variables: { link } });
  return (
    <DoorFrame>
      <Fetched query={query}>
        {({ invitation }) =>
          invitation ? (
            <AcceptInvitation link={link} invitation={invitation} onEntered={() => onEntered('/')} />
          ) : (
            <>
              <PageHead
                sentence={intl.formatMessage({ id: 'identity.invitation.gone' })}
                lede={<FormattedMessage id="identity.invitation.goneLede" />}
              />
              <ButtonLink to="/sign-in">
                <FormattedMessage id="identity.invitation.toSignIn" />
              </ButtonLink>
            </>
          )
        }
      </Fetched>
    </DoorFrame>
  );
}
