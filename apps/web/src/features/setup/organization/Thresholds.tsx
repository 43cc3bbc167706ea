import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { TextField } from '../../../ui/forms/Field.js';
import type { OrganizationDraft } from './judge-organization.js';

interface Props {
  readonly draft: OrganizationDraft;
  readonly set: (change: Partial<OrganizationDraft>) => void;
  readonly problemOf: (field: string) => string | null;
}

/** How sure and how large a gap must be before it is a finding. */
export function Thresholds({ draft, set, problemOf }: Props) {
  const intl = useIntl();
  const { unitOf, currency } = useFormats();
  return (
    <>
      <h2>
        <FormattedMessage id="setup.organization.thresholds" />
      </h2>
      <p className="soft">
        <FormattedMessage id="setup.organization.thresholdsHow" />
      </p>
      <TextField
        id="org-percent"
        label={intl.formatMessage({ id: 'setup.organization.confidence' })}
        hint={intl.formatMessage({ id: 'setup.organization.confidenceHow' })}
        inputMode="decimal"
        unit="%"
        value={draft.percent}
        onChange={(percent) => set({ percent })}
        problem={problemOf('org-percent')}
      />
      <TextField
        id="org-volume"
        label={intl.formatMessage({ id: 'setup.organization.volume' })}
        inputMode="decimal"
        unit={unitOf('volume')}
        value={draft.volume}
        onChange={(volume) => set({ volume })}
        problem={problemOf('org-volume')}
      />
      <TextField
        id="org-money"
        label={intl.formatMessage({ id: 'setup.organization.money' })}
        inputMode="decimal"
        unit={currency}
        value={draft.money}
        onChange={(money) => set({ money })}
        problem={problemOf('org-money')}
      />
    </>
  );
}
