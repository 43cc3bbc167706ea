import { type ReactNode, useEffect, useId, useRef } from 'react';
import { useIntl } from 'react-intl';
import './dialogs.css';

interface Props {
  readonly isOpen: boolean;
  /** What is asked or shown, as a sentence. */
  readonly heading: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** Buttons, the main one first. */
  readonly actions?: ReactNode;
}

/** The browser's own dialog: it keeps the focus, Escape closes it, and the focus goes back where it was. */
export function Dialog({ isOpen, heading, onClose, children, actions }: Props) {
  const place = useRef<HTMLDialogElement>(null);
  const name = useId();
  const intl = useIntl();
  useEffect(() => {
    const dialog = place.current;
    if (!dialog || !isOpen) return;
    const before = document.activeElement;
    if (typeof dialog.showModal === 'function') dialog.showModal();
    else dialog.open = true;
    dialog.querySelector<HTMLElement>('input, select, textarea')?.focus();
    return () => {
      if (typeof dialog.close === 'function') dialog.close();
      else dialog.open = false;
      if (before instanceof HTMLElement) before.focus();
    };
  }, [isOpen]);
  if (!isOpen) return null;
  return (
    <dialog
      ref={place}
      className="dialog"
      aria-labelledby={name}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <div className="dialog-head">
        <h2 id={name}>{heading}</h2>
        <button type="button" className="link" onClick={onClose}>
          {intl.formatMessage({ id: 'parts.close' })}
        </button>
      </div>
      {children}
      {actions && <div className="form-end">{actions}</div>}
    </dialog>
  );
}
