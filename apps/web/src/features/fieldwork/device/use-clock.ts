import { useQuery } from '@apollo/client/react';
import { useCallback, useEffect, useRef, useState } from 'react';
import { graphql } from '../../../graphql/__generated__/gql.js';

const clockDocument = graphql(`
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
  /** The organization's now: a phone's clock may be wrong, and the demonstration lives in another week. */
  readonly now: () => Date;
  /** Whether the server has told the time, or did not answer and the device's own clock counts. */
  readonly isSet: boolean;
}

/** The organization's clock, running. */
export function useClock(): Clock {
  const { data, error } = useQuery(clockDocument, { fetchPolicy: 'no-cache' });
  const ahead = useRef(0);
  const [isSet, setSet] = useState(false);
  const told = data?.me?.organization.now;
  const isAnswered = told !== undefined || error !== undefined;
  useEffect(() => {
    if (!isAnswered) return;
    if (told !== undefined) ahead.current = Date.parse(told) - Date.now();
    setSet(true);
  }, [told, isAnswered]);
  const now = useCallback(() => new Date(Date.now() + ahead.current), []);
  return { now, isSet };
}
