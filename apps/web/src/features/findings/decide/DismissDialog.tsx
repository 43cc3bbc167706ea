import { type FormEvent, useId, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import type { FindingToDecideFragment } from '../../../graphql/__generated__/graphql.js';
import type { MessageId } from '../../../i18n/catalogue.js';
import { Dialog } from '../../../ui/dialogs/Dialog.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { TextAreaField } from '../../../ui/forms/Field.js';
import { RadioList } from '../../../ui/forms/Select.js';
import { ErrorState } from '../../../ui/states/States.js';
import { ChangedNote } from './ChangedNote.js';
import { useSettle } from './use-settle.js';

const REASONS = ['agreed', 'known', 'wrong', 'small', 'other'] as const;
type Reason = (typeof REASONS)[number];
const REASON_WORDS: Readonly<Record<Reason, MessageId>> = {
  agreed: 'dismiss.agreed',
  known: 'dismiss.known',
  wrong: 'dismiss.wrong',
  small: 'dismiss.small',
  other: 'dismiss.other',
};

interface Props {
  readonly finding: Pick<FindingToDecideFragment, 'id' | 'version'>;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

/** Nothing is to be done, and why; the note after it takes it back. */
export function DismissDialog({ finding, onClose, onDone }: Props) {
  const intl = useIntl();
  const toast = useToast();
  const settle = useSettle();
  const form = useId();
  const [reason, setReason] = useState<Reason>('agreed');
  const [text, setText] = useState('');
  const [isMissing, setMissing] = useState(false);
  const said = intl.formatMessage({ id: REASON_WORDS[reason] });
  const why = reason === 'other' ? text.trim() : [said, text.trim()].filter(Boolean).join('. ');
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setMissing(!why);
    const settled = why ? await settle.dismiss(finding.id, finding.version, why) : null;
    if (!settled) return;
    toast({ words: intl.formatMessage({ id: 'dismiss.done' }, { why }), onUndo: () => void settle.reopen(settled.id, settled.version) });
    onDone();
  };
  return (
    <Dialog
      isOpen
      heading={intl.formatMessage({ id: 'dismiss.title' })}
      onClose={onClose}
      actions={
        <>
          <Button kind="main" type="submit" form={form} isBusy={settle.isBusy}>
            <FormattedMessage id="dismiss.do" />
          </Button>
          <Button kind="plain" onClick={onClose}>
            <FormattedMessage id="parts.cancel" />
          </Button>
        </>
      }
    >
      <form id={form} className="form" onSubmit={(event) => void submit(event)} noValidate>
        {settle.problem ? <ErrorState problem={settle.problem} /> : null}
        <ChangedNote changed={settle.changed} />
        <RadioList
          label={intl.formatMessage({ id: 'dismiss.reason' })}
          value={reason}
          onChange={setReason}
          choices={REASONS.map((value) => ({ value, words: intl.formatMessage({ id: REASON_WORDS[value] }) }))}
        />
        <TextAreaField
          label={intl.formatMessage({ id: 'dismiss.words' })}
          isOptional={reason !== 'other'}
          value={text}
          onChange={setText}
          problem={isMissing && !why ? intl.formatMessage({ id: 'dismiss.words.missing' }) : null}
        />
        <p className="hint">
          <FormattedMessage id="dismiss.note" />
        </p>
      </form>
    </Dialog>
  );
}
