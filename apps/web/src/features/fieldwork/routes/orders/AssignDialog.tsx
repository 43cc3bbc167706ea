import { useIntl } from 'react-intl';
import { Dialog } from '../../../../ui/dialogs/Dialog.js';
import { AssignForm } from './AssignForm.js';

interface Props {
  /** Null while none is given out. */
  readonly order: { readonly id: string; readonly version: number; readonly what: string; readonly kind: string } | null;
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  readonly day: string;
  readonly onClose: () => void;
}

/** Who does it, and when. */
export function AssignDialog({ order, crews, day, onClose }: Props) {
  const intl = useIntl();
  return (
    <Dialog
      isOpen={order !== null}
      heading={intl.formatMessage({ id: 'routes.assign.title' }, { what: order?.what || intl.formatMessage({ id: 'routes.assign.work' }) })}
      onClose={onClose}
    >
      {order && <AssignForm key={order.id} order={order} crews={crews} day={day} onClose={onClose} />}
    </Dialog>
  );
}
