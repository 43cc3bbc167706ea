import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import type { OrderToGiveOutFragment } from '../../../../graphql/__generated__/graphql.js';
import { Section } from '../../../../ui/frame/Section.js';
import { EmptyState } from '../../../../ui/states/States.js';
import { Head, Table } from '../../../../ui/tables/Table.js';
import { OrderToGiveOut } from './OrderToGiveOut.js';

interface Props {
  readonly orders: readonly (FragmentType<OrderToGiveOutFragment> & { readonly id: string })[];
  readonly onGiveOut: (orderId: string) => void;
}

/** What nobody has yet. */
export function OrdersToGiveOut({ orders, onGiveOut }: Props) {
  const intl = useIntl();
  const heading = intl.formatMessage({ id: 'routes.open.title' }, { count: orders.length });
  return (
    <Section heading={heading}>
      {orders.length === 0 ? (
        <EmptyState sentence={intl.formatMessage({ id: 'routes.open.none' })}>
          <FormattedMessage id="routes.open.how" />
        </EmptyState>
      ) : (
        <div className="orders">
          <Table
            name={heading}
            isTight
            head={
              <tr>
                <Head>
                  <FormattedMessage id="routes.head.what" />
                </Head>
                <Head>
                  <FormattedMessage id="routes.head.where" />
                </Head>
                <Head isNumber>
                  <FormattedMessage id="routes.head.minutes" />
                </Head>
                <th scope="col" aria-label={intl.formatMessage({ id: 'routes.giveOut' })} />
              </tr>
            }
          >
            {orders.map((order) => (
              <OrderToGiveOut key={order.id} order={order} onGiveOut={() => onGiveOut(order.id)} />
            ))}
          </Table>
        </div>
      )}
    </Section>
  );
}
