import { useState } from 'react';
import { FormattedMessage } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { WateringRuleInput } from '../../../graphql/__generated__/graphql.js';
import { type CrewAndDay, GiveWork } from '../../../page/work/GiveWork.js';
import { paths } from '../../../page/paths.js';
import { useDeed } from '../../../page/use-deed.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';

const bringInDocument = graphql(`
  mutation BringInRule($rule: WateringRuleInput!, $replaces: ID) {
    bringInRule(rule: $rule, replaces: $replaces) {
      id
      name
    }
  }
`);

const orderDocument = graphql(`
  mutation OrderRuleChange($input: RuleChangeOrderInput!) {
    orderRuleChange(input: $input) {
      id
    }
  }
`);

interface Props {
  readonly rule: WateringRuleInput;
  readonly replaces: string | null;
  readonly month: string;
  /** Where a controller breaks the rule. */
  readonly propertyIds: readonly string[];
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  readonly today: string;
}

const MOST_AT_ONCE = 10;

/** First the rule is brought in, then the work is made: a crew is never sent for a rule that is not there. */
export function RuleDeeds({ rule, replaces, month, propertyIds, crews, today }: Props) {
  const bringIn = useDeed(bringInDocument);
  const order = useDeed(orderDocument);
  const [isIn, setIn] = useState(false);
  const [made, setMade] = useState<number | null>(null);
  const usual = rule.effectiveFrom && rule.effectiveFrom > today ? rule.effectiveFrom : today;
  const bring = async (): Promise<void> => {
    if (await bringIn.run({ rule, replaces })) setIn(true);
  };
  const give = async (to: CrewAndDay): Promise<void> => {
    let count = 0;
    for (let from = 0; from < propertyIds.length; from += MOST_AT_ONCE) {
      const some = propertyIds.slice(from, from + MOST_AT_ONCE);
      // Orders that are made already are kept as they are, so that this can be pressed again after a failure.
      const answer = await order.run({ input: { propertyIds: some, month, what: rule.name, ...to } });
      if (!answer) return;
      count += answer.orderRuleChange.length;
    }
    setMade(count);
  };
  if (!isIn)
    return (
      <div className="form">
        {bringIn.problem ? <ErrorState problem={bringIn.problem} /> : null}
        <div className="form-end">
          <Button kind="main" isBusy={bringIn.isBusy} onClick={() => void bring()}>
            <FormattedMessage id="ruleChange.bringIn" />
          </Button>
        </div>
      </div>
    );
  return (
    <div className="form">
      <p role="status">
        <FormattedMessage id="ruleChange.isIn" values={{ name: rule.name }} />
      </p>
      {order.problem ? <ErrorState problem={order.problem} /> : null}
      {made !== null && (
        <p role="status">
          <FormattedMessage id="ruleChange.made" values={{ count: made }} />{' '}
          <Link to={paths.routes}>
            <FormattedMessage id="ruleChange.toRoutes" />
          </Link>
        </p>
      )}
      {made === null && propertyIds.length > 0 && (
        <GiveWork crews={crews} usualDay={usual} isBusy={order.isBusy} onGive={(to) => void give(to)} />
      )}
    </div>
  );
}
