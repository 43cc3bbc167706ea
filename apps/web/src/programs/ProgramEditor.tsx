import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../ui/forms/Button.js';
import { TextField } from '../ui/forms/Field.js';
import type { NamedStation } from './named-station.js';
import { DaysEditor } from './DaysEditor.js';
import { MinutesEditor } from './MinutesEditor.js';
import type { ProgramDraft } from './program-draft.js';

interface Props {
  readonly program: ProgramDraft;
  readonly stations: readonly NamedStation[];
  readonly mostStations: number;
  readonly onChange: (program: ProgramDraft) => void;
}

/** One program: minutes first, for they are what mostly differs. */
export function ProgramEditor({ program, stations, mostStations, onChange }: Props) {
  const intl = useIntl();
  const setStart = (at: number, start: string): void =>
    onChange({ ...program, starts: program.starts.map((one, place) => (place === at ? start : one)) });
  return (
    <div className="stack">
      <MinutesEditor
        program={program}
        stations={stations}
        mostStations={mostStations}
        onChange={(minutes) => onChange({ ...program, minutes })}
      />
      <TextField
        label={intl.formatMessage({ id: 'field.settings.percent' })}
        inputMode="decimal"
        unit="%"
        value={program.percent}
        onChange={(percent) => onChange({ ...program, percent })}
      />
      <DaysEditor days={program.days} onChange={(days) => onChange({ ...program, days })} />
      <div className="starts">
        {program.starts.map((start, at) => (
          // Starts have no name but their place.
          // biome-ignore lint/suspicious/noArrayIndexKey: the place is the identity
          <div key={at}>
            <TextField
              type="time"
              label={intl.formatMessage({ id: 'field.settings.startNumber' }, { number: at + 1 })}
              value={start}
              onChange={(next) => setStart(at, next)}
            />
            {program.starts.length > 1 && (
              <Button kind="plain" onClick={() => onChange({ ...program, starts: program.starts.filter((_, place) => place !== at) })}>
                <FormattedMessage id="parts.delete" />
              </Button>
            )}
          </div>
        ))}
        <Button kind="plain" onClick={() => onChange({ ...program, starts: [...program.starts, ''] })}>
          <FormattedMessage id="field.settings.addStart" />
        </Button>
      </div>
    </div>
  );
}
