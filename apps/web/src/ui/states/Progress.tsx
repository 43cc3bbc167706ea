import { useId } from 'react';
import { FormattedMessage } from 'react-intl';
import './states.css';

interface Props {
  readonly label: string;
  readonly done: number;
  /** Null while it is not known how much there is. */
  readonly total: number | null;
}

/** How far something is, in words and as a bar. */
export function Progress({ label, done, total }: Props) {
  const id = useId();
  return (
    <div className="progress">
      <label htmlFor={id}>{label}</label>
      <progress id={id} {...(total === null ? {} : { value: Math.min(done, total), max: Math.max(total, 1) })} />
      {total !== null && (
        <span className="num">
          <FormattedMessage id="parts.done" values={{ done, total }} />
        </span>
      )}
    </div>
  );
}
