import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { OrderToGiveOutFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { paths } from '../../../../page/paths.js';
import { useMasked } from '../../../../page/use-masked.js';
import { Button } from '../../../../ui/forms/Button.js';
import { Num } from '../../../../ui/tables/Table.js';
import { OvertakenOrder } from '../../settings-beside/OvertakenOrder.js';
import { useOrderWords } from '../../use-order-words.js';

export const orderToGiveOut = graphql(`
  fragment OrderToGiveOut on WorkOrder {
    id
    kind
    what
    waterAgainOn
    estimateMinutes
    notBefore
    dueOn
    skills
    leftNote
    overtakenBy {
      orderId
      plannedAt
      state
    }
    property {
      id
      name
    }
  }
`);

interface Props {
  readonly order: FragmentType<OrderToGiveOutFragment>;
  readonly onGiveOut: () => void;
}

/** One order that nobody has yet. */
export function OrderToGiveOut({ order: masked, onGiveOut }: Props) {
  const intl = useIntl();
  const { minutes, dayInWords } = useFormats();
  const orderWords = useOrderWords();
  const order = useMasked(orderToGiveOut, masked);
  const { estimateMinutes, notBefore, dueOn, skills, leftNote, overtakenBy, property } = order;
  const bounds = [
    notBefore && intl.formatMessage({ id: 'routes.from' }, { day: dayInWords(notBefore) }),
    dueOn && intl.formatMessage({ id: 'routes.by' }, { day: dayInWords(dueOn) }),
    skills.length > 0 && intl.formatMessage({ id: 'setup.visits.needs' }, { skills: skills.join(', ') }),
  ].filter(Boolean);
  return (
    <tr>
      <td>
        {orderWords(order)}
        {bounds.length > 0 && <p className="soft">{bounds.join(' · ')}</p>}
        {leftNote && (
          <p className="soft">
            <FormattedMessage id="field.order.leftBefore" values={{ note: leftNote }} />
          </p>
        )}
        <OvertakenOrder by={overtakenBy} />
      </td>
      <td>
        <Link to={paths.property(property.id)}>{property.name}</Link>
      </td>
      <Num>{minutes(estimateMinutes)}</Num>
      <td className="num">
        <Button
          kind="plain"
          aria-label={intl.formatMessage({ id: 'routes.giveOutOf' }, { what: orderWords(order), name: property.name })}
          onClick={onGiveOut}
        >
          <FormattedMessage id="routes.giveOut" />
        </Button>
      </td>
    </tr>
  );
}
