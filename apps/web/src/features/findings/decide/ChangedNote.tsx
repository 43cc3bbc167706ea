import { FormattedMessage } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';

export interface Changed {
  readonly changedBy?: string | null;
  readonly changedAt?: string | null;
}

/** Somebody was quicker: who and when, and that it is shown anew. */
export function ChangedNote({ changed }: { readonly changed: Changed | null }) {
  const { moment } = useFormats();
  if (!changed) return null;
  const values = { by: changed.changedBy ?? 'none', at: changed.changedAt ? moment(changed.changedAt) : 'none' };
  return (
    <p className="state failed" role="alert">
      <FormattedMessage id="findings.changed" values={values} />
    </p>
  );
}
