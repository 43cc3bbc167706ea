import type { FragmentType } from '@apollo/client';
import { useState } from 'react';
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
import { useOrderWords } from '../../use-order-words.js';
import { PriceDialog } from './PriceDialog.js';
import { useOrderOutcome } from './use-order-outcome.js';

export const orderToApprove = graphql(`
  fragment OrderToApprove on WorkOrder {
    id
    version
    kind
    what
    cost
    notToExceed
    isOffer
    ...OrderToPrice
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

/** One order with what it costs and what may be spent: first its price is named, then the client agrees to it; approved, it can be given out. */
export function OrderToApprove({ order: masked, mayApprove }: Props) {
  const intl = useIntl();
  const { money } = useFormats();
  const orderWords = useOrderWords();
  const order = useMasked(orderToApprove, masked);
  const { id, version, kind, what, cost, notToExceed, isOffer, property } = order;
  const [isPricing, setPricing] = useState(false);
  const isPriced = typeof cost === 'number';
  const named = { what: orderWords({ kind, what }), name: property.name };
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
      <td className="num" data-head={intl.formatMessage({ id: 'routes.head.cost' })}>
        {isPriced ? money(cost) : <FormattedMessage id="routes.offerWanted" />}
      </td>
      <td className="num" data-head={intl.formatMessage({ id: 'routes.head.limit' })}>
        {money(notToExceed)}
      </td>
      <td className="num">
        {mayApprove && (
          <Acts
            isPriced={isPriced}
            isOffer={isOffer}
            named={named}
            isBusy={approve.isBusy}
            onPrice={() => setPricing(true)}
            onYes={press}
          />
        )}
        <PriceDialog order={isPricing ? order : null} what={named.what} onClose={() => setPricing(false)} />
      </td>
    </tr>
  );
}

interface ActsProps {
  readonly isPriced: boolean;
  readonly isOffer: boolean;
  readonly named: { readonly what: string; readonly name: string };
  readonly isBusy: boolean;
  readonly onPrice: () => void;
  readonly onYes: () => Promise<void>;
}

/** What has no price gets one first; nobody approves it before. */
function Acts({ isPriced, isOffer, named, isBusy, onPrice, onYes }: ActsProps) {
  const intl = useIntl();
  const label = intl.formatMessage({ id: isPriced ? 'routes.price.change' : 'routes.price' });
  const yes = isOffer ? 'routes.clientYes' : 'routes.approve';
  return (
    <span className="row-acts">
      {isPriced && (
        <Button isBusy={isBusy} aria-label={intl.formatMessage({ id: `${yes}Of` }, named)} onClick={() => void onYes()}>
          <FormattedMessage id={yes} />
        </Button>
      )}
      <Button
        kind={isPriced ? 'plain' : 'main'}
        aria-label={intl.formatMessage({ id: 'routes.price.of' }, { label, ...named })}
        onClick={onPrice}
      >
        {label}
      </Button>
    </span>
  );
}
