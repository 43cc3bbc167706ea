import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import type { FindingToDecideFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useViewer } from '../../../../session/viewer.js';
import { useToast } from '../../../../ui/dialogs/Toasts.js';
import { TextAreaField, TextField } from '../../../../ui/forms/Field.js';
import { RadioList } from '../../../../ui/forms/Select.js';
import { SettleDialog } from './SettleDialog.js';
import { useSettle } from '../use-settle.js';

type How = 'until it clears' | 'until a day';

interface Props {
  readonly finding: Pick<FindingToDecideFragment, 'id' | 'version'>;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

/** Somebody has seen it and it can wait: silent until a day or until it clears, with a note of why. */
export function WaitDialog({ finding, onClose, onDone }: Props) {
  const intl = useIntl();
  const toast = useToast();
  const settle = useSettle();
  const { dayInWords } = useFormats();
  const { today } = useViewer().organization;
  const [how, setHow] = useState<How>('until a day');
  const [day, setDay] = useState('');
  const [text, setText] = useState('');
  const [isChecked, setChecked] = useState(false);
  const note = text.trim();
  const until = how === 'until a day' ? day : null;
  const isDayRight = until === null || until >= today;
  const submit = async (): Promise<void> => {
    setChecked(true);
    if (!note || !isDayRight) return;
    if (!(await settle.acknowledge(finding.id, finding.version, { until, note }))) return;
    toast({ words: intl.formatMessage({ id: 'wait.done' }, { day: until === null ? 'none' : dayInWords(until) }) });
    onDone();
  };
  return (
    <SettleDialog title="wait.title" deed="wait.do" settle={settle} onSubmit={submit} onClose={onClose}>
      <HowLong how={how} onHow={setHow} day={day} onDay={setDay} hasProblem={isChecked && !isDayRight} />
      <TextAreaField
        label={intl.formatMessage({ id: 'wait.note' })}
        value={text}
        onChange={setText}
        problem={isChecked && !note ? intl.formatMessage({ id: 'wait.note.missing' }) : null}
      />
      <p className="hint">
        <FormattedMessage id="wait.hint" />
      </p>
    </SettleDialog>
  );
}

interface HowLongProps {
  readonly how: How;
  readonly onHow: (how: How) => void;
  readonly day: string;
  readonly onDay: (day: string) => void;
  readonly hasProblem: boolean;
}

function HowLong({ how, onHow, day, onDay, hasProblem }: HowLongProps) {
  const intl = useIntl();
  const { today } = useViewer().organization;
  return (
    <>
      <RadioList
        label={intl.formatMessage({ id: 'wait.how' })}
        value={how}
        onChange={onHow}
        choices={[
          { value: 'until a day', words: intl.formatMessage({ id: 'wait.untilDay' }) },
          { value: 'until it clears', words: intl.formatMessage({ id: 'wait.untilClear' }) },
        ]}
      />
      {how === 'until a day' && (
        <TextField
          type="date"
          label={intl.formatMessage({ id: 'wait.day' })}
          min={today}
          value={day}
          onChange={onDay}
          problem={hasProblem ? intl.formatMessage({ id: 'wait.day.missing' }) : null}
        />
      )}
    </>
  );
}
