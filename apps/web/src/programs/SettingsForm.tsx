import { useIntl } from 'react-intl';
import { RadioList } from '../ui/forms/Select.js';
import '../ui/phone/phone.css';
import { BeyondWords } from './beyond/BeyondWords.js';
import type { ControllerHolds } from './beyond/beyond-controller.js';
import type { NamedStation } from './named-station.js';
import { ProgramsEditor } from './ProgramsEditor.js';
import type { ProgramDraft } from './program-draft.js';
import './programs.css';

/** Settings as they are typed. */
export interface SettingsDraft {
  readonly state: string;
  readonly programs: readonly ProgramDraft[];
}

interface Props {
  readonly draft: SettingsDraft;
  readonly stations: readonly NamedStation[];
  readonly mostStations: number;
  readonly holds: ControllerHolds;
  readonly onChange: (draft: SettingsDraft) => void;
}

const STATES = ['on', 'off', 'weather', 'unknown'] as const;

/** What is on a controller: where its dial stands, and where it is on each program's days, starts, percent and minutes. */
export function SettingsForm({ draft, stations, mostStations, holds, onChange }: Props) {
  const intl = useIntl();
  return (
    <div className="stack">
      <RadioList
        label={intl.formatMessage({ id: 'field.settings.state' })}
        value={draft.state}
        choices={STATES.map((state) => ({ value: state as string, words: intl.formatMessage({ id: `controller.${state}` }) }))}
        onChange={(state) => onChange({ ...draft, state })}
      />
      {draft.state === 'on' && (
        <>
          <ProgramsEditor
            programs={draft.programs}
            stations={stations}
            mostStations={mostStations}
            onChange={(programs) => onChange({ ...draft, programs })}
          />
          <BeyondWords programs={draft.programs} holds={holds} />
        </>
      )}
    </div>
  );
}
