import type { ApolloClient } from '@apollo/client';
import { useApolloClient } from '@apollo/client/react';
import { useEffect } from 'react';
import { graphql } from '../graphql/__generated__/gql.js';

const NAME = 'rillbook.signOutOwed';

const owedSignOutDocument = graphql(`
  mutation OwedSignOut {
    signOut
  }
`);

/** Signed out without signal: nobody is signed in here from now on, and the server is told as soon as it answers. */
export const oweSignOut = (): void => localStorage.setItem(NAME, 'yes');

export const isSignOutOwed = (): boolean => localStorage.getItem(NAME) !== null;

/** Somebody came in by the door: the session that was to be ended is no longer this device's. */
export const forgetOwedSignOut = (): void => localStorage.removeItem(NAME);

async function pay(client: ApolloClient): Promise<void> {
  if (!isSignOutOwed()) return;
  await client.mutate({ mutation: owedSignOutDocument });
  forgetOwedSignOut();
}

/** Tells the server at the door, now or when there is signal. */
export function useOwedSignOut(): void {
  const client = useApolloClient();
  useEffect(() => {
    // Without an answer it stays owed, and is told at the next chance.
    const tell = (): void => void pay(client).catch(() => undefined);
    tell();
    window.addEventListener('online', tell);
    return () => window.removeEventListener('online', tell);
  }, [client]);
}
