import { type FormEvent, useId, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import type { FindingToDecideFragment } from '../../../graphql/__generated__/graphql.js';
import { Dialog } from '../../../ui/dialogs/Dialog.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { TextAreaField } from '../../../ui/forms/Field.js';
import { ErrorState } from '../../../ui/states/States.js';
import { ChangedNote } from './ChangedNote.js';
import { useSettle } from './use-settle.js';

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
  const form = useId();
  const [text, setText] = useState('');
  const [isMissing, setMissing] = useState(false);
  const why = text.trim();
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setMissing(!why);
    const settled = why ? await settle.resolve(finding.id, finding.version, why) : null;
    if (!settled) return;
    toast({ words: intl.formatMessage({ id: 'resolve.done' }, { why }), onUndo: () => void settle.reopen(settled.id, settled.version) });
    onDone();
  };
  return (
    <Dialog
      isOpen
      heading={intl.formatMessage({ id: 'resolve.title' })}
      onClose={onClose}
      actions={
        <>
          <Button kind="main" type="submit" form={form} isBusy={settle.isBusy}>
            <FormattedMessage id="resolve.do" />
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
        <TextAreaField
          label={intl.formatMessage({ id: 'resolve.words' })}
          value={text}
          onChange={setText}
          problem={isMissing && !why ? intl.formatMessage({ id: 'resolve.missing' }) : null}
        />
      </form>
    </Dialog>
  );
}
