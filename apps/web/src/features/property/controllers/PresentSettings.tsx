import { FormattedMessage, useIntl } from 'react-intl';
import { useSays } from '../../../says/use-says.js';
import { ProgramsTable } from '../plan/settings/ProgramsTable.js';
import type { ComparedSettings } from '../../../page/work/settings-changes.js';

interface Props {
  readonly settings: ComparedSettings;
  readonly name: string;
}

/** The programs that are on a controller now; where it is not on, that is what matters. */
export function PresentSettings({ settings: { state, programs }, name }: Props) {
  const intl = useIntl();
  const { word } = useSays();
  return (
    <>
      {state !== 'on' && (
        <p>
          <b>
            {state === 'weather' ? (
              <FormattedMessage id="property.controller.weather" />
            ) : (
              <FormattedMessage id="property.controller.state" values={{ state: word('controller', state) }} />
            )}
          </b>
        </p>
      )}
      {programs.length > 0 && <ProgramsTable label={intl.formatMessage({ id: 'property.program.table' }, { name })} programs={programs} />}
    </>
  );
}
