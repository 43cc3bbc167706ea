import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { OrderToApproveFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { paths } from '../../../../page/paths.js';
import { useDeed } from '../../../../page/use-deed.js';
import { useMasked } from '../../../../page/use-masked.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { Button } from '../../../../ui/forms/Button.js';
import { Num } from '../../../../ui/tables/Table.js';
import { useOrderWords } from '../../use-order-words.js';
import { useOrderOutcome } from './use-order-outcome.js';

export const orderToApprove = graphql(`
  fragment OrderToApprove on WorkOrder {
    id
    version
    kind
    what
    cost
    notToExceed
    property {
      id
      name
      client {
        id
        name
      }
    }
  }
`);

const approveDocument = graphql(`
  mutation ApproveWorkOrder($id: ID!, $version: Int!) {
    approveWorkOrder(id: $id, version: $version) {
      __typename
      ... on WorkOrder {
        id
        version
        state
      }
      ... on ChangedMeanwhile {
        id
        version
        changedBy
        changedAt
      }
      ... on ApprovalNeeded {
        needed: cost
        limit: notToExceed
      }
    }
  }
`);

interface Props {
  readonly order: FragmentType<OrderToApproveFragment>;
  readonly mayApprove: boolean;
}

/** One order with what it costs and what may be spent; approved, it can be given out. */
export function OrderToApprove({ order: masked, mayApprove }: Props) {
  const intl = useIntl();
  const { money } = useFormats();
  const orderWords = useOrderWords();
  const { id, version, kind, what, cost, notToExceed, property } = useMasked(orderToApprove, masked);
  const approve = useDeed(approveDocument, { refetch: ['Routes'] });
  const { refusal, settle } = useOrderOutcome(intl.formatMessage({ id: 'routes.approved' }, { name: property.name }));
  const press = async (): Promise<void> => {
    const answer = await approve.run({ id, version });
    if (answer) settle(answer.approveWorkOrder);
  };
  return (
    <tr>
      <td>
        {orderWords({ kind, what })}
        {refusal && (
          <p className="problem" role="alert">
            {refusal}
          </p>
        )}
        {approve.problem ? <ErrorState problem={approve.problem} /> : null}
      </td>
      <td>
        <Link to={paths.property(property.id)}>{property.name}</Link> <span className="soft xs">{property.client.name}</span>
      </td>
      <Num>{typeof cost === 'number' ? money(cost) : <FormattedMessage id="routes.offerWanted" />}</Num>
      <Num>{money(notToExceed)}</Num>
      <td className="num">
        {mayApprove && (
          <Button
            isBusy={approve.isBusy}
            aria-label={intl.formatMessage({ id: 'routes.approveOf' }, { what: orderWords({ kind, what }), name: property.name })}
            onClick={() => void press()}
          >
            <FormattedMessage id="routes.approve" />
          </Button>
        )}
      </td>
    </tr>
  );
}
