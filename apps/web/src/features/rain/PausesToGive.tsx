import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { PauseRowFragment } from '../../graphql/__generated__/graphql.js';
import { type CrewAndDay, GiveWork } from '../../page/work/GiveWork.js';
import { paths } from '../../page/paths.js';
import { useDeed } from '../../page/use-deed.js';
import { Section } from '../../ui/frame/Section.js';
import { ErrorState } from '../../ui/states/States.js';
import { PauseTable } from './PauseTable.js';

const orderPausesDocument = graphql(`
  mutation OrderPauses($input: OrderPausesInput!) {
    orderPauses(input: $input) {
      id
    }
  }
`);

interface Props {
  /** Those that somebody has to go to, and those that pause by themselves and may be paused for longer. */
  readonly toGo: readonly PauseRowFragment[];
  readonly themselves: readonly PauseRowFragment[];
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  readonly today: string;
}

/** What is chosen, given out in one go; whoever has such an order already, or pauses by itself, is not chosen to begin with. */
export function PausesToGive({ toGo, themselves, crews, today }: Props) {
  const intl = useIntl();
  const order = useDeed(orderPausesDocument, { refetch: ['RainPausePage'] });
  const [chosen, setChosen] = useState<ReadonlySet<string>>(
    () => new Set(toGo.filter((pause) => !pause.order).map(({ controllerId }) => controllerId)),
  );
  const [made, setMade] = useState<number | null>(null);
  const give = async (to: CrewAndDay): Promise<void> => {
    const wished = [...toGo, ...themselves].filter(({ controllerId }) => chosen.has(controllerId));
    const answer = await order.run({ input: { pauses: wished.map(({ controllerId, until }) => ({ controllerId, until })), ...to } });
    if (!answer) return;
    setMade(answer.orderPauses.length);
    setChosen(new Set());
  };
  const table = (name: string, pauses: readonly PauseRowFragment[]) =>
    pauses.length > 0 && <PauseTable name={name} pauses={pauses} chosen={chosen} onChoose={setChosen} />;
  const byHand = intl.formatMessage({ id: 'rain.toGo' }, { count: toGo.length });
  const bySensor = intl.formatMessage({ id: 'rain.themselves' }, { count: themselves.length });
  return (
    <>
      <Section heading={byHand}>
        {table(byHand, toGo)}
        <div className="form rain-give">
          {order.problem ? <ErrorState problem={order.problem} /> : null}
          {made !== null && (
            <p role="status">
              <FormattedMessage id="ruleChange.made" values={{ count: made }} />{' '}
              <Link to={paths.routes}>
                <FormattedMessage id="ruleChange.toRoutes" />
              </Link>
            </p>
          )}
          <p className={chosen.size > 0 ? undefined : 'soft'}>
            <FormattedMessage id="rain.chosen" values={{ count: chosen.size }} />
          </p>
          {chosen.size > 0 && <GiveWork crews={crews} usualDay={today} isBusy={order.isBusy} onGive={(to) => void give(to)} />}
        </div>
      </Section>
      {themselves.length > 0 && (
        <Section heading={bySensor} note={<FormattedMessage id="rain.themselvesNote" />}>
          {table(bySensor, themselves)}
        </Section>
      )}
    </>
  );
}
