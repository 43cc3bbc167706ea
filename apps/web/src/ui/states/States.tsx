import { type ReactNode, useEffect, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { problemOf } from '../../graphql/problem.js';
import { problemSentence } from '../../i18n/problems/problem-sentence.js';
import { Button } from '../forms/Button.js';
import './states.css';

/** Words while something is fetched: none for a moment, so that nothing flickers; others when it takes long. */
export function LoadingState() {
  const [waited, setWaited] = useState<'short' | 'some' | 'long'>('short');
  useEffect(() => {
    const some = setTimeout(() => setWaited('some'), 300);
    const long = setTimeout(() => setWaited('long'), 6000);
    return () => {
      clearTimeout(some);
      clearTimeout(long);
    };
  }, []);
  return (
    <p className="state soft" role="status" aria-busy="true">
      {waited === 'some' && <FormattedMessage id="parts.loading" />}
      {waited === 'long' && <FormattedMessage id="parts.slow" />}
    </p>
  );
}

interface EmptyProps {
  /** What is not here, as a sentence. */
  readonly sentence: string;
  /** How it is filled. */
  readonly children?: ReactNode;
  readonly action?: ReactNode;
  /** It is all that its page has to say. */
  readonly isPage?: boolean;
}

/** A list with nothing in it says how to fill it. */
export function EmptyState({ sentence, children, action, isPage = false }: EmptyProps) {
  const Heading = isPage ? 'h1' : 'h2';
  return (
    <div className="state empty">
      <Heading className="minor">{sentence}</Heading>
      {children && <p className="soft">{children}</p>}
      {action && <div className="form-end">{action}</div>}
    </div>
  );
}

interface ErrorProps {
  readonly problem: unknown;
  readonly onRetry?: () => void;
}

/** What went wrong and what to do, with a way to try again. */
export function ErrorState({ problem, onRetry }: ErrorProps) {
  const { locale } = useIntl();
  const found = problemOf(problem);
  return (
    <div className="state failed" role="alert">
      <p>
        {found.kind === 'noAnswer' ? (
          <FormattedMessage id="parts.noAnswer" />
        ) : (
          <FormattedMessage id="parts.refused" values={{ reason: problemSentence(locale, { ...found, message: found.says }) }} />
        )}
      </p>
      {onRetry && (
        <Button onClick={onRetry}>
          <FormattedMessage id="parts.tryAgain" />
        </Button>
      )}
    </div>
  );
}
