import { useQuery } from '@apollo/client/react';
import { useEffect } from 'react';
import { graphql } from '../../../../graphql/__generated__/gql.js';

const jobDocument = graphql(`
  query BackgroundWork($id: ID!) {
    job(id: $id) {
      id
      state
      done
      total
      says
      outcome {
        code
        details
      }
    }
  }
`);

const ASK_EVERY_MS = 1000;

/** Whether background work is over, well or badly. */
export const hasEnded = (state: string | undefined): boolean => state === 'done' || state === 'failed';

/** Background work, asked after every second until it has ended. */
export function useJob(id: string) {
  const query = useQuery(jobDocument, { variables: { id }, pollInterval: ASK_EVERY_MS, fetchPolicy: 'network-only' });
  const { stopPolling } = query;
  const isOver = hasEnded(query.data?.job?.state) || query.data?.job === null;
  useEffect(() => {
    if (isOver) stopPolling();
  }, [isOver, stopPolling]);
  return query;
}
