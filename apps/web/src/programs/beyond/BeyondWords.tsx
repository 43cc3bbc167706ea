import { FormattedMessage } from 'react-intl';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { type BeyondController, beyondController, type ControllerHolds } from './beyond-controller.js';
import type { ProgramDraft } from '../program-draft.js';

interface Props {
  readonly programs: readonly ProgramDraft[];
  readonly holds: ControllerHolds;
}

/** Says what is typed beyond what the controller is on record to hold. It may be saved all the same: the record may be wrong. */
export function BeyondWords({ programs, holds }: Props) {
  const formats = useFormats();
  const said = (what: BeyondController['what'], value: number) =>
    what === 'percent' ? formats.percent(value / 100) : formats.number(value);
  return (
    <div role="status">
      {beyondController(programs, holds).map(({ what, program, station, found, most }) => (
        <p className="caution" key={`${what} ${program} ${station}`}>
          <FormattedMessage
            id={`field.settings.beyond.${what}`}
            values={{ name: program, station, found: said(what, found), most: said(what, most) }}
          />
        </p>
      ))}
    </div>
  );
}
