import { useState } from 'react';
import { type IntlShape, useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { Formats } from '../../i18n/formats.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { useDeed } from '../../page/use-deed.js';

const signInDocument = graphql(`
  mutation SignIn($email: String!, $password: String!) {
    signIn(email: $email, password: $password) {
      __typename
      ... on SignedIn {
        me {
          memberId
        }
      }
      ... on SignInRefused {
        code
        retryInSeconds
      }
    }
  }
`);

export interface SignIn {
  readonly run: (email: string, password: string) => Promise<void>;
  readonly isBusy: boolean;
  /** Why the door stayed shut, in words. */
  readonly refusal: string | null;
  readonly problem: unknown;
}

/** Signs in, and says when it was done. */
export function useSignIn(onEntered: () => void): SignIn {
  const intl = useIntl();
  const formats = useFormats();
  const deed = useDeed(signInDocument);
  const [refusal, setRefusal] = useState<string | null>(null);
  const run = async (email: string, password: string): Promise<void> => {
    setRefusal(null);
    const result = (await deed.run({ email: email.trim(), password }))?.signIn;
    switch (result?.__typename) {
      case 'SignedIn':
        return onEntered();
      case 'SignInRefused':
        return setRefusal(refusalWords(intl, formats, result));
      case undefined:
        return;
    }
  };
  return { run, isBusy: deed.isBusy, refusal, problem: deed.problem };
}

interface Refusal {
  readonly code: string;
  readonly retryInSeconds?: number | null;
}

const SECONDS_PER_MINUTE = 60;

/** Why nobody was signed in, and what to do. */
function refusalWords(intl: IntlShape, formats: Formats, { code, retryInSeconds }: Refusal): string {
  switch (code) {
    case 'WRONG_EMAIL_OR_PASSWORD':
      return intl.formatMessage({ id: 'identity.refused.wrong' });
    case 'TOO_MANY_TRIES':
      return intl.formatMessage(
        { id: 'identity.refused.tooMany' },
        { wait: formats.minutes(Math.ceil((retryInSeconds ?? SECONDS_PER_MINUTE) / SECONDS_PER_MINUTE)) },
      );
    case 'NO_ORGANIZATION':
      return intl.formatMessage({ id: 'identity.refused.noOrganization' });
    default:
      return intl.formatMessage({ id: 'identity.refused.other' }, { code });
  }
}
