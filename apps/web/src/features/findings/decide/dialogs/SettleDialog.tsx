import { type FormEvent, type ReactNode, useId } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import type { MessageId } from '../../../../i18n/catalogue.js';
import { Dialog } from '../../../../ui/dialogs/Dialog.js';
import { Button } from '../../../../ui/forms/Button.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { ChangedNote } from '../ChangedNote.js';
import type { Settle } from '../use-settle.js';

interface Props {
  readonly title: MessageId;
  /** The word on the button that does it. */
  readonly deed: MessageId;
  readonly settle: Settle;
  readonly onSubmit: () => Promise<void>;
  readonly onClose: () => void;
  /** What is asked for. */
  readonly children: ReactNode;
}

/** The dialog of a decision: what went wrong or was changed meanwhile on top, what is asked for, and its button. */
export function SettleDialog({ title, deed, settle, onSubmit, onClose, children }: Props) {
  const intl = useIntl();
  const form = useId();
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    void onSubmit();
  };
  return (
    <Dialog
      isOpen
      heading={intl.formatMessage({ id: title })}
      onClose={onClose}
      actions={
        <>
          <Button kind="main" type="submit" form={form} isBusy={settle.isBusy}>
            <FormattedMessage id={deed} />
          </Button>
          <Button kind="plain" onClick={onClose}>
            <FormattedMessage id="parts.cancel" />
          </Button>
        </>
      }
    >
      <form id={form} className="form" onSubmit={submit} noValidate>
        {settle.problem ? <ErrorState problem={settle.problem} /> : null}
        <ChangedNote changed={settle.changed} />
        {children}
      </form>
    </Dialog>
  );
}
