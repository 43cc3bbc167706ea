import { createContext, type ReactNode, useCallback, useContext, useEffect, useRef, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import './dialogs.css';

export interface Toast {
  readonly words: string;
  /** Takes the deed back; the note stays ten seconds so that there is time. */
  readonly onUndo?: () => void;
}

interface Shown extends Toast {
  readonly id: number;
}

const STAYS_MS = 10_000;
const ToastContext = createContext<((toast: Toast) => void) | null>(null);

/** Holds the notes of what was just done, each with its way back. */
export function ToastProvider({ children }: { readonly children: ReactNode }) {
  const [shown, setShown] = useState<readonly Shown[]>([]);
  const last = useRef(0);
  const intl = useIntl();
  const show = useCallback((toast: Toast) => {
    last.current += 1;
    const id = last.current;
    setShown((before) => [...before.slice(-2), { ...toast, id }]);
  }, []);
  const remove = useCallback((id: number) => setShown((before) => before.filter((toast) => toast.id !== id)), []);
  return (
    <ToastContext value={show}>
      {children}
      <div className="toasts" role="status" aria-live="polite" aria-label={intl.formatMessage({ id: 'parts.notes' })}>
        {shown.map((toast) => (
          <Note key={toast.id} toast={toast} onEnd={() => remove(toast.id)} />
        ))}
      </div>
    </ToastContext>
  );
}

function Note({ toast, onEnd }: { readonly toast: Toast; readonly onEnd: () => void }) {
  const intl = useIntl();
  const [isHeld, setHeld] = useState(false);
  const end = useRef(onEnd);
  useEffect(() => {
    end.current = onEnd;
  });
  useEffect(() => {
    if (isHeld) return;
    const timer = setTimeout(() => end.current(), STAYS_MS);
    return () => clearTimeout(timer);
  }, [isHeld]);
  const undo = (): void => {
    toast.onUndo?.();
    onEnd();
  };
  return (
    <div
      className="toast"
      onMouseEnter={() => setHeld(true)}
      onMouseLeave={() => setHeld(false)}
      onFocus={() => setHeld(true)}
      onBlur={() => setHeld(false)}
    >
      <span>{toast.words}</span>
      {toast.onUndo && (
        <button type="button" onClick={undo}>
          <FormattedMessage id="parts.undo" />
        </button>
      )}
      <button type="button" aria-label={intl.formatMessage({ id: 'parts.dismiss' })} onClick={onEnd}>
        ×
      </button>
    </div>
  );
}

/** Shows a note of what was just done. */
export function useToast(): (toast: Toast) => void {
  const show = useContext(ToastContext);
  if (!show) throw new Error('useToast stands outside a ToastProvider.');
  return show;
}
