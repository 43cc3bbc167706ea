import type { ComponentProps, ReactNode } from 'react';
import { Link } from 'react-router';
import './forms.css';

/** `main` is the page's one filled button; `usual` is outlined in water; `plain` is for the rest. */
export type ButtonKind = 'main' | 'usual' | 'plain';

const className = (kind: ButtonKind): string => (kind === 'usual' ? 'btn' : `btn ${kind}`);

interface Props extends Omit<ComponentProps<'button'>, 'className' | 'disabled'> {
  readonly kind?: ButtonKind;
  /** A deed is under way: pressed again, nothing happens twice. Never greyed out without words. */
  readonly isBusy?: boolean;
}

export function Button({ kind = 'usual', isBusy = false, type = 'button', onClick, children, ...rest }: Props) {
  return (
    <button
      type={type}
      className={className(kind)}
      aria-busy={isBusy || undefined}
      onClick={(event) => (isBusy ? event.preventDefault() : onClick?.(event))}
      {...rest}
    >
      {children}
    </button>
  );
}

interface LinkProps {
  readonly to: string;
  readonly kind?: ButtonKind;
  /** What going there says. */
  readonly onClick?: () => void;
  readonly children: ReactNode;
}

/** A link that looks like a button, for going somewhere to do the deed. */
export function ButtonLink({ to, kind = 'usual', onClick, children }: LinkProps) {
  return (
    <Link to={to} className={className(kind)} {...(onClick && { onClick })}>
      {children}
    </Link>
  );
}
