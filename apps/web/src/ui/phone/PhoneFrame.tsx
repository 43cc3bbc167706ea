import { type ReactNode, useEffect } from 'react';
import { Link } from 'react-router';
import { useDisplay } from '../theme/DisplayProvider.js';
import './phone.css';

export interface PhoneStep {
  readonly to: string;
  readonly words: string;
  readonly isHere?: boolean;
}

interface Props {
  readonly back?: { readonly to: string; readonly words: string };
  /** Where in the day this is: Stop 3 of 7. */
  readonly place?: ReactNode;
  readonly steps?: readonly PhoneStep[];
  readonly stepsName?: string;
  /** What waits to be sent, in one plain line that is always there. */
  readonly status?: ReactNode;
  /** What acts, within reach of a thumb; the main action last, on the right. */
  readonly actions?: ReactNode;
  readonly children: ReactNode;
}

/** A page for hands, gloves and sun: large type, everything that acts in the dock. It opens light whatever the phone says. */
export function PhoneFrame({ back, place, steps, stepsName, status, actions, children }: Props) {
  const { setField } = useDisplay();
  useEffect(() => {
    setField(true);
    return () => setField(false);
  }, [setField]);
  const hasDock = Boolean(status || actions);
  return (
    <div className={hasDock ? 'phone docked' : 'phone'}>
      <header className="bar">
        {back ? <Link to={back.to}>‹ {back.words}</Link> : <span />}
        {place && <span>{place}</span>}
      </header>
      {steps && (
        <nav className="steps" aria-label={stepsName}>
          {steps.map(({ to, words, isHere }) => (
            <Link key={to} to={to} aria-current={isHere ? 'step' : undefined}>
              {words}
            </Link>
          ))}
        </nav>
      )}
      <main>{children}</main>
      {hasDock && (
        <div className="dock">
          {status && <p role="status">{status}</p>}
          {actions && <div className="dock-actions">{actions}</div>}
        </div>
      )}
    </div>
  );
}

/** What could hurt here, or must be left alone. */
export function Caution({ children }: { readonly children: ReactNode }) {
  return <p className="caution">{children}</p>;
}
