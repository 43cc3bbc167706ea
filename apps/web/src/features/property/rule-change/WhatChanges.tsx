import { useQuery } from '@apollo/client/react';
import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { WateringRuleInput } from '../../../graphql/__generated__/graphql.js';
import { Fetched } from '../../../page/Fetched.js';
import { Button } from '../../../ui/forms/Button.js';
import { Section } from '../../../ui/frame/Section.js';
import { Head, Table } from '../../../ui/tables/Table.js';
import { BreakerRow } from './BreakerRow.js';
import { RuleDeeds } from './RuleDeeds.js';

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

/** Planning takes a second for a controller: the properties are looked at some at a time. */
const AT_A_TIME = 10;

interface Props {
  readonly rule: WateringRuleInput;
  readonly replaces: string | null;
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  readonly today: string;
}

/** Which controllers break the rule as they are set now, and the deeds that make it so. */
export function WhatChanges({ rule, replaces, crews, today }: Props) {
  const intl = useIntl();
  const [skip, setSkip] = useState(0);
  const [isIn, setIn] = useState(false);
  const [before, setBefore] = useState<readonly string[]>([]);
  // Once the rule is in force it replaces nothing more: what was shown stays shown.
  const query = useQuery(changeDocument, { variables: { rule, replaces, skip, first: AT_A_TIME }, fetchPolicy: 'no-cache', skip: isIn });
  const data = query.data ?? query.previousData;
  return (
    <Fetched query={{ ...query, data }}>
      {({ ruleChange: { controllers, properties, month } }) => {
        const breakers = controllers.filter(({ breaches }) => (breaches?.length ?? 0) > 0);
        const unknown = controllers.filter(({ breaches }) => !breaches).length;
        const last = Math.min(properties, skip + AT_A_TIME);
        const propertyIds = [...new Set([...before, ...breakers.map(({ property }) => property.id)])];
        const next = (): void => {
          setBefore(propertyIds);
          setSkip(last);
        };
        const name = intl.formatMessage({ id: 'ruleChange.breakers' }, { count: breakers.length, all: controllers.length });
        return (
          <Section
            heading={name}
            note={<FormattedMessage id="ruleChange.seen" values={{ from: Math.min(skip + 1, last), until: last, properties, unknown }} />}
          >
            {breakers.length > 0 && (
              <Table
                name={name}
                isTight
                head={
                  <tr>
                    {(['where', 'breaks', 'enter', 'result'] as const).map((what) => (
                      <Head key={what}>
                        <FormattedMessage id={`ruleChange.${what}`} />
                      </Head>
                    ))}
                  </tr>
                }
              >
                {breakers.map((one) => (
                  <BreakerRow key={one.controllerId} under={one} />
                ))}
              </Table>
            )}
            {last < properties ? (
              <Button onClick={next}>
                <FormattedMessage id="ruleChange.next" />
              </Button>
            ) : (
              <RuleDeeds {...{ rule, replaces, month, propertyIds, crews, today }} onIn={() => setIn(true)} />
            )}
          </Section>
        );
      }}
    </Fetched>
  );
}
