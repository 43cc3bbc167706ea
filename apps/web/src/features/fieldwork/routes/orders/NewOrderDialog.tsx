import { useIntl } from 'react-intl';
import { Dialog } from '../../../../ui/dialogs/Dialog.js';
import { NewOrderForm } from './NewOrderForm.js';

interface Props {
  readonly isOpen: boolean;
  readonly properties: readonly { readonly id: string; readonly name: string }[];
  readonly onClose: () => void;
}

/** Work that no finding asked for. */
export function NewOrderDialog({ isOpen, properties, onClose }: Props) {
  const intl = useIntl();
  return (
    <Dialog isOpen={isOpen} heading={intl.formatMessage({ id: 'routes.newOrder' })} onClose={onClose}>
      {isOpen && <NewOrderForm properties={properties} onClose={onClose} />}
    </Dialog>
  );
}
