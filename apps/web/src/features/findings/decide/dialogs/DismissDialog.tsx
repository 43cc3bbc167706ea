import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import type { FindingToDecideFragment } from '../../../../graphql/__generated__/graphql.js';
import { useToast } from '../../../../ui/dialogs/Toasts.js';
import { TextAreaField } from '../../../../ui/forms/Field.js';
import { RadioList } from '../../../../ui/forms/Select.js';
import { DISMISS_REASONS, type DismissReason } from './dismiss-reasons.js';
import { SettleDialog } from './SettleDialog.js';
import { useSettle } from '../use-settle.js';

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
  const [reason, setReason] = useState<DismissReason>('client wants it');
  const [text, setText] = useState('');
  const [isMissing, setMissing] = useState(false);
  const chosen = DISMISS_REASONS.find(({ value }) => value === reason)!;
  const said = intl.formatMessage({ id: chosen.words });
  const why = reason === 'other' ? text.trim() : [said, text.trim()].filter(Boolean).join('. ');
  const submit = async (): Promise<void> => {
    setMissing(!why);
    const settled = why ? await settle.dismiss(finding.id, finding.version, { reason, why }) : null;
    if (!settled) return;
    toast({ words: intl.formatMessage({ id: 'dismiss.done' }, { why }), onUndo: () => void settle.reopen(settled.id, settled.version) });
    onDone();
  };
  return (
    <SettleDialog title="dismiss.title" deed="dismiss.do" settle={settle} onSubmit={submit} onClose={onClose}>
      <RadioList
        label={intl.formatMessage({ id: 'dismiss.reason' })}
        value={reason}
        onChange={setReason}
        choices={DISMISS_REASONS.map(({ value, words }) => ({ value, words: intl.formatMessage({ id: words }) }))}
      />
      <TextAreaField
        label={intl.formatMessage({ id: 'dismiss.words' })}
        isOptional={reason !== 'other'}
        value={text}
        onChange={setText}
        problem={isMissing && !why ? intl.formatMessage({ id: 'dismiss.words.missing' }) : null}
      />
      <p className="hint">
        <FormattedMessage id={chosen.hint} />
      </p>
    </SettleDialog>
  );
}
