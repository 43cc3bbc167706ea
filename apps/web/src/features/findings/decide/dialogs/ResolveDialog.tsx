import { useState } from 'react';
import { useIntl } from 'react-intl';
import type { FindingToDecideFragment } from '../../../../graphql/__generated__/graphql.js';
import { useToast } from '../../../../ui/dialogs/Toasts.js';
import { TextAreaField } from '../../../../ui/forms/Field.js';
import { SettleDialog } from './SettleDialog.js';
import { useSettle } from '../use-settle.js';

interface Props {
  readonly finding: Pick<FindingToDecideFragment, 'id' | 'version'>;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

/** It is over: with what was found. */
export function ResolveDialog({ finding, onClose, onDone }: Props) {
  const intl = useIntl();
  const toast = useToast();
  const settle = useSettle();
  const [text, setText] = useState('');
  const [isMissing, setMissing] = useState(false);
  const why = text.trim();
  const submit = async (): Promise<void> => {
    setMissing(!why);
    const settled = why ? await settle.resolve(finding.id, finding.version, why) : null;
    if (!settled) return;
    toast({ words: intl.formatMessage({ id: 'resolve.done' }, { why }), onUndo: () => void settle.reopen(settled.id, settled.version) });
    onDone();
  };
  return (
    <SettleDialog title="resolve.title" deed="resolve.do" settle={settle} onSubmit={submit} onClose={onClose}>
      <TextAreaField
        label={intl.formatMessage({ id: 'resolve.words' })}
        value={text}
        onChange={setText}
        problem={isMissing && !why ? intl.formatMessage({ id: 'resolve.missing' }) : null}
      />
    </SettleDialog>
  );
}
