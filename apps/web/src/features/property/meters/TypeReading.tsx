import { type FormEvent, useState } from 'react';
import { FormattedMessage } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { dayAndTime, localTimeOf, useDeskNow } from '../../../page/values/desk-time.js';
import { instantOf } from '../../../page/values/local-instant.js';
import { useRecordedWords, useRecordReading } from '../../../page/work/use-record-reading.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';
import { JudgedNote } from './JudgedNote.js';
import { dateProblem, type ReadingDraft, ReadingFields, registerOf } from './ReadingFields.js';

interface Props {
  readonly meterId: string;
  readonly unit: string;
}

/** A reading that came by telephone, letter or a photo. It can be saved even where it is doubtful, with a note that says why. */
export function TypeReading({ meterId, unit }: Props) {
  const { timeZone } = useFormats();
  const now = useDeskNow();
  const toast = useToast();
  const record = useRecordReading(meterId, ['PropertyPage']);
  const say = useRecordedWords();
  const [draft, setDraft] = useState<ReadingDraft>(() => ({ register: '', ...dayAndTime(now()), note: '' }));
  const [isSent, setSent] = useState(false);
  const register = registerOf(draft);
  const isWhole = register !== null && dateProblem(draft, now()) === null;
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setSent(true);
    if (!isWhole) return;
    const recorded = await record.run({ register, readAt: instantOf(localTimeOf(draft), timeZone), note: draft.note.trim() || null });
    if (!recorded) return;
    toast({ words: say(recorded) });
    setSent(false);
    setDraft({ register: '', ...dayAndTime(now()), note: '' });
  };
  return (
    <form className="form reading" onSubmit={(event) => void submit(event)} noValidate>
      <h3>
        <FormattedMessage id="property.reading.title" />
      </h3>
      {record.problem ? <ErrorState problem={record.problem} /> : null}
      <ReadingFields
        draft={draft}
        unit={unit}
        now={now()}
        isSent={isSent}
        onChange={(change) => setDraft((before) => ({ ...before, ...change }))}
      />
      {isWhole && (
        <JudgedNote
          meterId={meterId}
          register={register}
          readAt={instantOf(localTimeOf(draft), timeZone)}
          onLikely={(likely) => setDraft((before) => ({ ...before, register: String(likely) }))}
        />
      )}
      <div className="form-end">
        <Button type="submit" isBusy={record.isBusy}>
          <FormattedMessage id="property.reading.do" />
        </Button>
      </div>
    </form>
  );
}
