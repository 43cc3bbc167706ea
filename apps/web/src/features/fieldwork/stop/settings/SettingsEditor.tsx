import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../../../ui/forms/Button.js';
import { PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { SentLine } from '../../device/SentLine.js';
import { useDraft } from '../../../../offline/use-draft.js';
import type { StepProps } from '../step-props.js';
import type { ControllerHolds } from '../../../../programs/beyond/beyond-controller.js';
import type { NamedStation } from '../../../../programs/named-station.js';
import { type SettingsDraft, SettingsForm } from '../../../../programs/SettingsForm.js';
import { draftOf, problemOfDrafts, programsOf } from '../../../../programs/program-draft.js';
import type { GivenProgram, GivenSettings } from '../../../../programs/settings-fact.js';

interface Props {
  readonly draftKey: string;
  readonly base: GivenSettings | null;
  readonly stations: readonly NamedStation[];
  readonly mostStations: number;
  readonly holds: ControllerHolds;
  readonly record: 'found' | 'left';
  readonly heading: string;
  readonly frame: StepProps['frame'];
  readonly onSave: (state: string, programs: readonly GivenProgram[]) => Promise<boolean>;
  readonly onCancel: () => void;
}

/** A short editor of what is on the controller: state, and each program's days, starts, percent and minutes. */
export function SettingsEditor({ draftKey, base, stations, mostStations, holds, record, heading, frame, onSave, onCancel }: Props) {
  const intl = useIntl();
  const [draft, setDraft, clear] = useDraft<SettingsDraft>(draftKey, { state: base?.state ?? 'on', programs: draftOf(base) });
  const [wrong, setWrong] = useState<string | null>(null);
  const save = async (): Promise<void> => {
    const programs = draft.state === 'on' ? draft.programs : [];
    const found = problemOfDrafts(intl, programs);
    setWrong(found);
    if (!found && (await onSave(draft.state, programsOf(programs)))) clear();
  };
  const cancel = (): void => {
    clear();
    onCancel();
  };
  const actions = <EditorActions record={record} onCancel={cancel} onSave={() => void save()} />;
  return (
    <PhoneFrame {...frame} status={<SentLine />} actions={actions}>
      <h1>
        <FormattedMessage id={record === 'found' ? 'field.settings.editFound' : 'field.settings.editLeft'} values={{ name: heading }} />
      </h1>
      {wrong && (
        <p className="problem" role="alert">
          {wrong}
        </p>
      )}
      <SettingsForm draft={draft} stations={stations} mostStations={mostStations} holds={holds} onChange={setDraft} />
    </PhoneFrame>
  );
}

interface ActionsProps {
  readonly record: 'found' | 'left';
  readonly onCancel: () => void;
  readonly onSave: () => void;
}

function EditorActions({ record, onCancel, onSave }: ActionsProps) {
  return (
    <>
      <Button kind="plain" onClick={onCancel}>
        <FormattedMessage id="parts.cancel" />
      </Button>
      <Button kind="main" onClick={onSave}>
        <FormattedMessage id={record === 'found' ? 'field.settings.saveFound' : 'field.settings.saveLeft'} />
      </Button>
    </>
  );
}
