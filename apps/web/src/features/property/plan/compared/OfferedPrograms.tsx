import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useSays } from '../../../../says/use-says.js';
import { ProgramsTable } from '../settings/ProgramsTable.js';
import { type ComparedSettings, settingsChanges } from '../../../../page/work/settings-changes.js';
import type { Offer } from '../plan-document.js';

interface Props {
  readonly offer: Offer;
  readonly name: string;
  readonly present: ComparedSettings | null;
}

/** An offer's programs, and how they differ from what is on the controller. */
export function OfferedPrograms({ offer: { kind, programs }, name, present }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const { word } = useSays();
  const offered = word('plan.offer', kind);
  const changes = present && settingsChanges(intl, formats, present, { state: programs.length > 0 ? 'on' : 'off', programs });
  return (
    <div className="offer">
      <h3>{offered}</h3>
      {changes && (
        <p>
          {changes.length === 0 ? (
            <FormattedMessage id="plan.noChange" />
          ) : (
            <FormattedMessage id="plan.changes" values={{ changes: changes.join('; ') }} />
          )}
        </p>
      )}
      {programs.length > 0 && <ProgramsTable label={intl.formatMessage({ id: 'plan.programs' }, { name, offered })} programs={programs} />}
    </div>
  );
}
