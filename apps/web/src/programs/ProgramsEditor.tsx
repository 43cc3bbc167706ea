import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Tabs } from '../ui/dialogs/Tabs.js';
import { Button } from '../ui/forms/Button.js';
import { graphql } from '../graphql/__generated__/gql.js';
import type { NamedStation } from './named-station.js';
import { ProgramEditor } from './ProgramEditor.js';
import { emptyProgram, nextProgramName, type ProgramDraft } from './program-draft.js';

/** What is asked of a program wherever its settings are shown or entered; a query spreads it by its name, and its answer is a `GivenProgram`. */
graphql(`
  fragment ProgramFields on Program {
    name
    days
    starts
    adjustPercent
    stations {
      station
      minutes
      cycles
      soakMinutes
    }
  }
`);

interface Props {
  readonly programs: readonly ProgramDraft[];
  readonly stations: readonly NamedStation[];
  readonly mostStations: number;
  readonly onChange: (programs: readonly ProgramDraft[]) => void;
}

/** The programs, one at a time, and one more. */
export function ProgramsEditor({ programs, stations, mostStations, onChange }: Props) {
  const intl = useIntl();
  const [chosen, setChosen] = useState(programs[0]?.name ?? '');
  const program = programs.find(({ name }) => name === chosen) ?? programs[0];
  const next = nextProgramName(programs);
  const add = (): void => {
    onChange([...programs, emptyProgram(next)]);
    setChosen(next);
  };
  return (
    <>
      {program && (
        <Tabs
          label={intl.formatMessage({ id: 'field.settings.programs' })}
          tabs={programs.map(({ name }) => ({ name, words: intl.formatMessage({ id: 'field.settings.program' }, { name }) }))}
          chosen={program.name}
          onChoose={setChosen}
        >
          <ProgramEditor
            program={program}
            stations={stations}
            mostStations={mostStations}
            onChange={(changed) => onChange(programs.map((one) => (one.name === changed.name ? changed : one)))}
          />
        </Tabs>
      )}
      <Button kind="plain" onClick={add}>
        <FormattedMessage id="field.settings.addProgram" values={{ name: next }} />
      </Button>
    </>
  );
}
