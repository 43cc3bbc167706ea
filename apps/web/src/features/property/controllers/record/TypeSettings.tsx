import { type FormEvent, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import type { ControllerToRecordQuery } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { type DayAndTime, dayAndTime, localTimeOf, useDeskNow } from '../../../../page/values/desk-time.js';
import { instantOf } from '../../../../page/values/local-instant.js';
import type { NamedStation } from '../../../../programs/named-station.js';
import { draftOf, problemOfDrafts, programsOf } from '../../../../programs/program-draft.js';
import { SeemsSetTo } from '../../../../programs/SeemsSetTo.js';
import { begunFrom } from '../../../../programs/settings-fact.js';
import { type SettingsDraft, SettingsForm } from '../../../../programs/SettingsForm.js';
import { useSays } from '../../../../says/use-says.js';
import { useToast } from '../../../../ui/dialogs/Toasts.js';
import { Button } from '../../../../ui/forms/Button.js';
import { TextField } from '../../../../ui/forms/Field.js';
import { RadioList } from '../../../../ui/forms/Select.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { type Recorded, useRecordSettings } from './use-record-settings.js';

type ToRecord = NonNullable<ControllerToRecordQuery['controller']>;

interface Props {
  readonly controller: ToRecord;
  readonly timeZone: string;
  readonly stations: readonly NamedStation[];
}

const RECORDS = ['found', 'left'] as const;

interface Draft extends SettingsDraft, DayAndTime {
  readonly record: (typeof RECORDS)[number];
}

/** Settings as somebody read them off or left them. It begins from what is known; where nothing is, from what usage shows. */
export function TypeSettings({ controller, timeZone, stations }: Props) {
  const intl = useIntl();
  const now = useDeskNow();
  const toast = useToast();
  const record = useRecordSettings(controller.id);
  const say = useRecordedWords();
  const [draft, setDraft] = useState<Draft>(() => ({ ...begun(controller), ...dayAndTime(now()), record: 'found' }));
  const [wrong, setWrong] = useState<string | null>(null);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const problem = dayProblem(draft, now());
    const found = problem ? intl.formatMessage({ id: problem }) : draft.state === 'on' ? problemOfDrafts(intl, draft.programs) : null;
    setWrong(found);
    if (found) return;
    const { record: as, state, programs } = draft;
    const recorded = await record.run({
      effectiveAt: instantOf(localTimeOf(draft), timeZone),
      record: as,
      state,
      programs: programsOf(programs),
    });
    if (recorded) toast({ words: say(recorded) });
  };
  return (
    <form className="form" onSubmit={(event) => void submit(event)} noValidate>
      {controller.inferredSettings && <SeemsSetTo inferred={controller.inferredSettings} />}
      {record.problem ? <ErrorState problem={record.problem} /> : null}
      {wrong && (
        <p className="problem" role="alert">
          {wrong}
        </p>
      )}
      <RecordAndTime draft={draft} now={now()} onChange={(change) => setDraft((before) => ({ ...before, ...change }))} />
      <SettingsForm
        draft={draft}
        stations={stations}
        mostStations={controller.stations}
        holds={controller}
        onChange={(change) => setDraft((before) => ({ ...before, ...change }))}
      />
      <div className="form-end">
        <Button type="submit" isBusy={record.isBusy}>
          <FormattedMessage id={draft.record === 'found' ? 'field.settings.saveFound' : 'field.settings.saveLeft'} />
        </Button>
      </div>
    </form>
  );
}

interface FieldsProps {
  readonly draft: Draft;
  readonly now: string;
  readonly onChange: (change: Partial<Draft>) => void;
}

function RecordAndTime({ draft, now, onChange }: FieldsProps) {
  const intl = useIntl();
  return (
    <>
      <RadioList
        label={intl.formatMessage({ id: 'property.settings.record' })}
        value={draft.record}
        choices={RECORDS.map((value) => ({ value, words: intl.formatMessage({ id: `property.settings.${value}` }) }))}
        onChange={(value) => onChange({ record: value })}
      />
      <div className="form-row">
        <TextField
          label={intl.formatMessage({ id: 'property.reading.date' })}
          type="date"
          max={now.slice(0, 10)}
          value={draft.day}
          onChange={(day) => onChange({ day })}
        />
        <TextField
          label={intl.formatMessage({ id: 'property.reading.time' })}
          type="time"
          value={draft.time}
          onChange={(time) => onChange({ time })}
        />
      </div>
    </>
  );
}

function dayProblem(draft: Draft, now: string): 'property.settings.dateMissing' | 'property.settings.future' | null {
  if (!draft.day || !draft.time) return 'property.settings.dateMissing';
  return localTimeOf(draft) > now ? 'property.settings.future' : null;
}

/** What is on it as far as it is known; else days and starts as usage shows them, the minutes of each station left to be typed. */
function begun({ presentSettings, inferredSettings }: ToRecord): SettingsDraft {
  const settings = presentSettings ?? (inferredSettings ? begunFrom(inferredSettings) : null);
  return { state: settings?.state ?? 'on', programs: draftOf(settings) };
}

/** What became of settings, in words. */
function useRecordedWords(): (recorded: Recorded) => string {
  const intl = useIntl();
  const formats = useFormats();
  const { word } = useSays();
  return (recorded) => {
    const { record, localTime, ...by } = recorded.__typename === 'Settings' ? recorded : recorded.kept;
    const values = { record: word('record', record), when: formats.dayOfYear(localTime.slice(0, 10)) };
    if (recorded.__typename === 'Settings') return intl.formatMessage({ id: 'property.settings.done' }, values);
    return intl.formatMessage({ id: 'property.settings.conflict' }, { ...values, by: ('recordedBy' in by && by.recordedBy) || 'nobody' });
  };
}
