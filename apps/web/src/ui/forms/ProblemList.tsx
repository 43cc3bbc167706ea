import { useEffect, useRef } from 'react';
import { FormattedMessage } from 'react-intl';

export interface FormProblem {
  /** The field's id, or none where the problem is of the whole form. */
  readonly field?: string;
  readonly words: string;
}

/** On top of a form that could not be saved: what is wrong, each with a way to its field. It takes the focus when it comes. */
export function ProblemList({ problems }: { readonly problems: readonly FormProblem[] }) {
  const place = useRef<HTMLDivElement>(null);
  const count = problems.length;
  useEffect(() => {
    if (count > 0) place.current?.focus();
  }, [count]);
  if (count === 0) return null;
  return (
    <div className="problems" role="alert" tabIndex={-1} ref={place}>
      <h2>
        <FormattedMessage id="parts.problems" values={{ count }} />
      </h2>
      <ul>
        {problems.map(({ field, words }) => (
          <li key={`${field ?? ''} ${words}`}>
            {field ? (
              <a
                href={`#${field}`}
                onClick={(event) => {
                  event.preventDefault();
                  document.getElementById(field)?.focus();
                }}
              >
                {words}
              </a>
            ) : (
              words
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}
