import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import type { OrderToApproveFragment } from '../../../../graphql/__generated__/graphql.js';
import { Section } from '../../../../ui/frame/Section.js';
import { Head, Table } from '../../../../ui/tables/Table.js';
import { OrderToApprove } from './OrderToApprove.js';

interface Props {
  readonly orders: readonly (FragmentType<OrderToApproveFragment> & { readonly id: string })[];
  readonly mayApprove: boolean;
}

/** What costs more than the client lets be spent without asking. */
export function OrdersToApprove({ orders, mayApprove }: Props) {
  const intl = useIntl();
  const heading = intl.formatMessage({ id: 'routes.waiting.title' }, { count: orders.length });
  return (
    <Section heading={heading} note={<FormattedMessage id="routes.waiting.note" />}>
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
                <FormattedMessage id="routes.head.cost" />
              </Head>
              <Head isNumber>
                <FormattedMessage id="routes.head.limit" />
              </Head>
              <th scope="col" aria-label={intl.formatMessage({ id: 'routes.approve' })} />
            </tr>
          }
        >
          {orders.map((order) => (
            <OrderToApprove key={order.id} order={order} mayApprove={mayApprove} />
          ))}
        </Table>
      </div>
    </Section>
  );
}
