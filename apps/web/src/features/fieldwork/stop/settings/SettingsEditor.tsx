import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Tabs } from '../../../../ui/dialogs/Tabs.js';
import { Button } from '../../../../ui/forms/Button.js';
import { RadioList } from '../../../../ui/forms/Select.js';
import { PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { SentLine } from '../../device/SentLine.js';
import { useDraft } from '../../device/use-draft.js';
import type { Sending } from '../../device/use-sending.js';
import type { StepProps } from '../step-props.js';
import type { NamedStation } from './ControllerSettings.js';
import { ProgramEditor } from './ProgramEditor.js';
import { draftOf, nextProgramName, type ProgramDraft, problemOfDrafts, programsOf } from './program-draft.js';
import type { GivenProgram, GivenSettings } from './settings-fact.js';

interface Props {
  readonly draftKey: string;
  readonly base: GivenSettings | null;
  readonly stations: readonly NamedStation[];
  readonly mostStations: number;
  readonly record: 'found' | 'left';
  readonly heading: string;
  readonly frame: StepProps['frame'];
  readonly sending: Sending;
  readonly problem: unknown;
  readonly onSave: (state: string, programs: readonly GivenProgram[]) => Promise<boolean>;
  readonly onCancel: () => void;
}

const STATES = ['on', 'off', 'weather', 'unknown'] as const;

/** A short editor of what is on the controller: state, and each program's days, starts, percent and minutes. */
export function SettingsEditor({
  draftKey,
  base,
  stations,
  mostStations,
  record,
  heading,
  frame,
  sending,
  problem,
  onSave,
  onCancel,
}: Props) {
  const intl = useIntl();
  const [draft, setDraft, clear] = useDraft(draftKey, { state: base?.state ?? 'on', programs: draftOf(base) });
  const [chosen, setChosen] = useState(draft.programs[0]?.name ?? '');
  const [wrong, setWrong] = useState<string | null>(null);
  const program = draft.programs.find(({ name }) => name === chosen) ?? draft.programs[0];
  const change = (changed: ProgramDraft): void =>
    setDraft({ ...draft, programs: draft.programs.map((one) => (one.name === changed.name ? changed : one)) });
  const add = (): void => {
    const name = nextProgramName(draft.programs);
    setDraft({ ...draft, programs: [...draft.programs, { name, days: 'daily', starts: [''], percent: '100', minutes: {}, base: [] }] });
    setChosen(name);
  };
  const save = async (): Promise<void> => {
    const found = draft.state === 'on' ? problemOfDrafts(intl, draft.programs) : null;
    setWrong(found);
    if (found) return;
    if (await onSave(draft.state, draft.state === 'on' ? programsOf(draft.programs) : [])) clear();
  };
  return (
    <PhoneFrame
      {...frame}
      status={<SentLine sending={sending} />}
      actions={
        <>
          <Button
            kind="plain"
            onClick={() => {
              clear();
              onCancel();
            }}
          >
            <FormattedMessage id="parts.cancel" />
          </Button>
          <Button kind="main" isBusy={sending.underWay > 0} onClick={() => void save()}>
            <FormattedMessage id={record === 'found' ? 'field.settings.saveFound' : 'field.settings.saveLeft'} />
          </Button>
        </>
      }
    >
      <h1>
        <FormattedMessage id={record === 'found' ? 'field.settings.editFound' : 'field.settings.editLeft'} values={{ name: heading }} />
      </h1>
      {wrong && (
        <p className="problem" role="alert">
          {wrong}
        </p>
      )}
      {problem ? <ErrorState problem={problem} onRetry={() => void save()} /> : null}
      <div className="stack">
        <RadioList
          label={intl.formatMessage({ id: 'field.settings.state' })}
          value={draft.state}
          choices={STATES.map((state) => ({ value: state as string, words: intl.formatMessage({ id: `controller.${state}` }) }))}
          onChange={(state) => setDraft({ ...draft, state })}
        />
        {draft.state === 'on' && program && (
          <Tabs
            label={intl.formatMessage({ id: 'field.settings.programs' })}
            tabs={draft.programs.map(({ name }) => ({ name, words: intl.formatMessage({ id: 'field.settings.program' }, { name }) }))}
            chosen={program.name}
            onChoose={setChosen}
          >
            <ProgramEditor program={program} stations={stations} mostStations={mostStations} onChange={change} />
          </Tabs>
        )}
        {draft.state === 'on' && (
          <Button kind="plain" onClick={add}>
            <FormattedMessage id="field.settings.addProgram" values={{ name: nextProgramName(draft.programs) }} />
          </Button>
        )}
      </div>
    </PhoneFrame>
  );
}
