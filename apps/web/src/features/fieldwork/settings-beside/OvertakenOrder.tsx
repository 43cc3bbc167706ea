import { FormattedMessage } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';

interface Props {
  /** The order with the newer plan; null where there is none. */
  readonly by: { readonly plannedAt: string; readonly state: string } | null | undefined;
}

/** That an order's plan of a controller is overtaken by a newer one, and what is left to do. */
export function OvertakenOrder({ by }: Props) {
  const { moment } = useFormats();
  if (!by) return null;
  return (
    <p className="problem">
      <FormattedMessage id={by.state === 'done' ? 'work.overtaken.done' : 'work.overtaken'} values={{ at: moment(by.plannedAt) }} />
    </p>
  );
}
