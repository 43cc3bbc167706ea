import { useQuery } from '@apollo/client/react';
import { useCallback, useEffect, useState } from 'react';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useDrawn } from '../../../session/use-drawn.js';
import { aheadMs, keepAhead, organizationNow } from './clock.js';

export const clockDocument = graphql(`
  query OrganizationClock {
    me {
      memberId
      organization {
        id
        now
      }
    }
  }
`);

export interface Clock {
  readonly now: () => Date;
  /** Whether the server has told the time, once, or did not answer and the device's own clock counts. */
  readonly isSet: boolean;
}

/** The organization's clock, running; without signal as the server told it last. */
export function useClock(organizationId: string): Clock {
  const { data, error, refetch } = useQuery(clockDocument, { fetchPolicy: 'no-cache', skip: !useDrawn() });
  const [isSet, setSet] = useState(() => aheadMs(organizationId) !== null);
  const told = data?.me?.organization.now;
  const isAnswered = told !== undefined || error !== undefined;
  useEffect(() => {
    if (!isAnswered) return;
    if (told !== undefined) keepAhead(organizationId, Date.parse(told) - Date.now());
    setSet(true);
  }, [told, isAnswered, organizationId]);
  useEffect(() => {
    // A phone's own clock may have been set while nobody looked.
    const look = (): void => {
      if (document.visibilityState === 'visible') void refetch().catch(() => undefined);
    };
    document.addEventListener('visibilitychange', look);
    return () => document.removeEventListener('visibilitychange', look);
  }, [refetch]);
  const now = useCallback(() => organizationNow(organizationId), [organizationId]);
  return { now, isSet };
}
