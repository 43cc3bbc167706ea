import { useApolloClient } from '@apollo/client/react';
import { useEffect, useState } from 'react';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { WateringRuleInput, WhatARuleChangesQuery } from '../../../graphql/__generated__/graphql.js';

const changeDocument = graphql(`
  query WhatARuleChanges($rule: WateringRuleInput!, $replaces: ID, $skip: Int!, $first: Int!) {
    ruleChange(rule: $rule, replaces: $replaces, skip: $skip, first: $first) {
      month
      properties
      controllers {
        controllerId
        property {
          id
          name
        }
        breaches {
          rule
        }
        ...BreakerOfRule @unmask
      }
    }
  }
`);

/** A controller under the rule that is asked about. */
export type UnderRule = WhatARuleChangesQuery['ruleChange']['controllers'][number];

/** What is known so far of what a rule changes; `until` of `properties` are looked at. */
export interface RuleChangeSoFar {
  readonly month: string;
  readonly properties: number;
  readonly until: number;
  readonly controllers: readonly UnderRule[];
}

interface Asked {
  readonly soFar: RuleChangeSoFar | null;
  readonly isDone: boolean;
  readonly problem: unknown;
  readonly goOn: () => void;
}

/** Planning takes a moment for a controller: properties are asked for some at a time, so that the first are seen soon. */
const AT_A_TIME = 5;

/** Asks what a rule changes, property after property, until all are looked at. What is broken off goes on where it stopped. */
export function useRuleChange(rule: WateringRuleInput, replaces: string | null): Asked {
  const client = useApolloClient();
  const [soFar, setSoFar] = useState<RuleChangeSoFar | null>(null);
  const [problem, setProblem] = useState<unknown>(null);
  const isDone = soFar !== null && soFar.until >= soFar.properties;
  const skip = soFar?.until ?? 0;
  useEffect(() => {
    if (isDone || problem !== null) return;
    let isGone = false;
    client
      .query({ query: changeDocument, variables: { rule, replaces, skip, first: AT_A_TIME }, fetchPolicy: 'no-cache' })
      .then(({ data }) => {
        if (isGone || !data) return;
        const { month, properties, controllers } = data.ruleChange;
        setSoFar((before) => ({
          month,
          properties,
          until: Math.min(properties, skip + AT_A_TIME),
          controllers: [...(before?.controllers ?? []), ...controllers],
        }));
      })
      .catch((error: unknown) => {
        if (!isGone) setProblem(error);
      });
    return () => {
      isGone = true;
    };
  }, [client, rule, replaces, skip, isDone, problem]);
  return { soFar, isDone, problem, goOn: () => setProblem(null) };
}
