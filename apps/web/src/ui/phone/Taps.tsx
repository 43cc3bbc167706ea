import type { ReactNode } from 'react';
import { useIntl } from 'react-intl';

/** Large answers, two in a row. */
export function Taps({ children }: { readonly children: ReactNode }) {
  return <div className="taps">{children}</div>;
}

interface TapProps {
  readonly words: string;
  /** How many; shown beside the words where there is one. */
  readonly count?: number;
  readonly isOn?: boolean;
  readonly onTap: () => void;
}

/** One tap for what was seen. */
export function Tap({ words, count, isOn = false, onTap }: TapProps) {
  return (
    <button type="button" className="tap" aria-pressed={isOn} onClick={onTap}>
      {words} {count ? <b>{count}</b> : null}
    </button>
  );
}

interface CounterProps {
  readonly words: string;
  readonly count: number;
  readonly onChange: (count: number) => void;
  readonly least?: number;
}

/** One more, one fewer. */
export function Counter({ words, count, onChange, least = 0 }: CounterProps) {
  const intl = useIntl();
  return (
    <div className="count" role="group" aria-label={words}>
      <button
        type="button"
        className="tap"
        aria-label={intl.formatMessage({ id: 'parts.fewer' })}
        onClick={() => onChange(Math.max(least, count - 1))}
      >
        −
      </button>
      <span role="status">
        {words}: <b>{count}</b>
      </span>
      <button type="button" className="tap" aria-label={intl.formatMessage({ id: 'parts.more' })} onClick={() => onChange(count + 1)}>
        +
      </button>
    </div>
  );
}
