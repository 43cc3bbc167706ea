import type { FragmentType } from '@apollo/client';
import { useIntl } from 'react-intl';
import type { OrderToPriceFragment } from '../../../../graphql/__generated__/graphql.js';
import { Dialog } from '../../../../ui/dialogs/Dialog.js';
import { PriceForm } from './PriceForm.js';

interface Props {
  /** null while nothing is priced */
  readonly order: FragmentType<OrderToPriceFragment> | null;
  readonly what: string;
  readonly onClose: () => void;
}

/** What an order costs that was made without a price, or with another one. */
export function PriceDialog({ order, what, onClose }: Props) {
  const intl = useIntl();
  return (
    <Dialog isOpen={order !== null} heading={intl.formatMessage({ id: 'routes.price.title' }, { what })} onClose={onClose}>
      {order && <PriceForm order={order} onClose={onClose} />}
    </Dialog>
  );
}
