import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import type { WateringRuleInput } from '../../../graphql/__generated__/graphql.js';
import { Section } from '../../../ui/frame/Section.js';
import { Progress } from '../../../ui/states/Progress.js';
import { ErrorState, LoadingState } from '../../../ui/states/States.js';
import { Head, Table } from '../../../ui/tables/Table.js';
import { BreakerRow } from './BreakerRow.js';
import { RuleDeeds } from './RuleDeeds.js';
import { useRuleChange } from './use-rule-change.js';

interface Props {
  readonly rule: WateringRuleInput;
  readonly replaces: string | null;
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  readonly today: string;
}

/** Which controllers of all the supplier's properties break the rule as they are set now, and the deeds that make it so. */
export function WhatChanges({ rule: asked, replaces, crews, today }: Props) {
  const intl = useIntl();
  // The rule as it was asked about: it is one thing as long as this is shown.
  const [rule] = useState(asked);
  const { soFar, isDone, problem, goOn } = useRuleChange(rule, replaces);
  if (!soFar) return problem === null ? <LoadingState /> : <ErrorState problem={problem} onRetry={goOn} />;
  const { controllers, properties, until, month } = soFar;
  const breakers = controllers.filter(({ breaches }) => (breaches?.length ?? 0) > 0);
  const unknown = controllers.filter(({ breaches }) => !breaches).length;
  const propertyIds = [...new Set(breakers.map(({ property }) => property.id))];
  const name = intl.formatMessage({ id: 'ruleChange.breakers' }, { count: breakers.length, all: controllers.length });
  return (
    <Section heading={name} note={<FormattedMessage id="ruleChange.seen" values={{ until, properties, unknown }} />}>
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
      {problem !== null && <ErrorState problem={problem} onRetry={goOn} />}
      {!isDone && problem === null && <Progress label={intl.formatMessage({ id: 'ruleChange.goesOn' })} done={until} total={properties} />}
      {isDone && <RuleDeeds {...{ rule, replaces, month, propertyIds, crews, today }} />}
    </Section>
  );
}
