import { ApolloClient, ApolloLink, gql, HttpLink, InMemoryCache } from '@apollo/client';
import { SetContextLink } from '@apollo/client/link/context';
import { ErrorLink } from '@apollo/client/link/error';
import { problemOf } from './problem.js';

/** Where a person signs in, and comes back from to the page they wanted. */
export const signInAddress = (wanted: string): string => `/sign-in?next=${encodeURIComponent(wanted)}`;

/** The address to come back to: a path of this site and nothing else, whatever a link says. */
export function nextAddress(search: string): string {
  const next = new URLSearchParams(search).get('next') ?? '/';
  // A second slash or a backslash would lead to another site.
  return /^\/(?![/\\])/.test(next) && !next.startsWith('/sign-in') ? next : '/';
}

interface Options {
  readonly uri?: string;
  readonly fetch?: typeof fetch;
  /** Sends the person to sign in; called at most once for each client. */
  readonly onSignedOut: () => void;
}

const SIGN_IN_CODES: ReadonlySet<string> = new Set(['SIGN_IN_NEEDED', 'UNAUTHENTICATED']);

/** A header that no form of another site can set, so that a cookie alone does no deed. */
const OWN_REQUEST = { 'x-rillbook-request': '1' };

/** Who the page shows as here: the server answers nobody else in their name, should another person sign in beside it. */
const MEMBER_HERE = gql`
  query MemberHere {
    me {
      memberId
    }
  }
`;

/** Parts of a thing have no id of their own: two questions about the same thing complete each other. */
const typePolicies = { Volume: { merge: true }, Gap: { merge: true } };

/** One connection to the server for one person; components see only what they asked for. */
export function makeClient({ uri = '/graphql', fetch, onSignedOut }: Options): ApolloClient {
  let isLeaving = false;
  const signedOut = new ErrorLink(({ error }) => {
    const problem = problemOf(error);
    if (isLeaving || problem.kind !== 'refused' || !SIGN_IN_CODES.has(problem.code)) return;
    isLeaving = true;
    onSignedOut();
  });
  const http = new HttpLink({ uri, credentials: 'same-origin', headers: OWN_REQUEST, ...(fetch ? { fetch } : {}) });
  const cache = new InMemoryCache({ typePolicies });
  const named = new SetContextLink(({ headers }) => {
    const here = cache.readQuery<{ me: { memberId: string } | null }>({ query: MEMBER_HERE })?.me?.memberId;
    return { headers: { ...headers, ...(here && { 'x-rillbook-member': here }) } };
  });
  return new ApolloClient({ link: ApolloLink.from([signedOut, named, http]), cache, dataMasking: true });
}
