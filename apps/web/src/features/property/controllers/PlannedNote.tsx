import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { type ComparedSettings, settingsChanges } from '../../../page/work/settings-changes.js';

interface Props {
  readonly planned: ComparedSettings;
  readonly present: ComparedSettings | null;
}

/** What the planned settings would change. */
export function PlannedNote({ planned, present }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const changes = settingsChanges(intl, formats, present ?? { state: planned.state, programs: [] }, planned);
  return (
    <p className="planned">
      {changes.length === 0 ? (
        <FormattedMessage id="property.controller.plannedSame" />
      ) : (
        <FormattedMessage id="property.controller.planned" values={{ changes: `${changes.join('; ')}.` }} />
      )}
    </p>
  );
}
