import { useId } from 'react';
import { FormattedMessage } from 'react-intl';
import type { NamedStation } from './named-station.js';
import type { ProgramDraft } from './program-draft.js';

interface Props {
  readonly program: ProgramDraft;
  readonly stations: readonly NamedStation[];
  readonly mostStations: number;
  readonly onChange: (minutes: ProgramDraft['minutes']) => void;
}

/** The minutes of each station: those with a zone, and those that the program already has. */
export function MinutesEditor({ program, stations, mostStations, onChange }: Props) {
  const id = useId();
  const known = new Map(stations.map(({ station, name }) => [station, name]));
  const all = [...new Set([...known.keys(), ...program.base.map(({ station }) => station)])].sort((a, b) => a - b);
  // A controller whose zones nobody has entered yet still has its stations.
  const shown = all.length > 0 ? all : Array.from({ length: mostStations }, (_, at) => at + 1);
  return (
    <fieldset className="choices">
      <legend>
        <FormattedMessage id="field.settings.minutes" />
      </legend>
      <div className="minutes-of">
        {shown.map((station) => (
          <MinutesOf
            key={station}
            id={`${id}-${station}`}
            words={known.has(station) ? `${station} ${known.get(station)}` : String(station)}
            value={program.minutes[station] ?? ''}
            onChange={(minutes) => onChange({ ...program.minutes, [station]: minutes })}
          />
        ))}
      </div>
    </fieldset>
  );
}

interface MinutesProps {
  readonly id: string;
  readonly words: string;
  readonly value: string;
  readonly onChange: (minutes: string) => void;
}

function MinutesOf({ id, words, value, onChange }: MinutesProps) {
  return (
    <>
      <label htmlFor={id}>{words}</label>
      <span className="with-unit">
        <input id={id} inputMode="decimal" value={value} onChange={(event) => onChange(event.target.value)} />
        <span className="unit">
          <FormattedMessage id="unit.min" />
        </span>
      </span>
    </>
  );
}
