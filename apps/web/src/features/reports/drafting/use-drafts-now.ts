import { useApolloClient } from '@apollo/client/react';
import { useEffect, useState } from 'react';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { DraftsNowQuery } from '../../../graphql/__generated__/graphql.js';

export const draftsNowDocument = graphql(`
  query DraftsNow($ids: [ID!]!) {
    waterReports(ids: $ids) {
      id
      clientId
      unprinted
      content {
        verdict
        dataVersion
      }
    }
  }
`);

type Draft = DraftsNowQuery['waterReports'][number];

/** A draft as it is now, or why it cannot be written. */
export type DraftNow = Draft | { readonly id: string; readonly problem: unknown };

/** Each is written anew on the server: some at a time, so that the first are there soon. */
const AT_ONCE = 10;

/** As they were chosen, which is by the clients' names: the server answers in an order of its own. */
const inOrder = (drafts: readonly Draft[], ids: readonly string[]): Draft[] =>
  drafts.toSorted((a, b) => ids.indexOf(a.id) - ids.indexOf(b.id));

/** What some drafts say now, as far as they are there. One that cannot be written does not keep the others away. */
export function useDraftsNow(ids: readonly string[]): readonly DraftNow[] {
  const client = useApolloClient();
  const [found, setFound] = useState<readonly DraftNow[]>([]);
  useEffect(() => {
    let isOver = false;
    const ask = async (some: readonly string[]): Promise<readonly DraftNow[]> => {
      try {
        const { data } = await client.query({ query: draftsNowDocument, variables: { ids: [...some] }, fetchPolicy: 'no-cache' });
        return inOrder(data?.waterReports ?? [], some);
      } catch (problem) {
        if (some.length === 1) return [{ id: some[0]!, problem }];
        const each: DraftNow[] = [];
        for (const id of some) each.push(...(await ask([id])));
        return each;
      }
    };
    const askAll = async (): Promise<void> => {
      for (let at = 0; at < ids.length && !isOver; at += AT_ONCE) {
        const more = await ask(ids.slice(at, at + AT_ONCE));
        if (!isOver) setFound((before) => [...before, ...more]);
      }
    };
    void askAll();
    return () => {
      isOver = true;
    };
  }, [client, ids]);
  return found;
}
