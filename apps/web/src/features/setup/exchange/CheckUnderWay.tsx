import { useIntl } from 'react-intl';
import { Progress } from '../../../ui/states/Progress.js';
import { ErrorState } from '../../../ui/states/States.js';
import type { FilesToCheck } from './use-check.js';

/** How far the files are on their way, or why they were not taken. */
export function CheckUnderWay({ files: { isBusy, sent, problem } }: { readonly files: FilesToCheck }) {
  const intl = useIntl();
  if (problem) return <ErrorState problem={problem} />;
  if (!isBusy) return null;
  const isSent = sent !== null && sent.done >= sent.total;
  const share = sent && sent.total > 0 && !isSent ? Math.round((100 * sent.done) / sent.total) : null;
  return (
    <div className="before-part" role="status">
      {isSent ? (
        <Progress label={intl.formatMessage({ id: 'setup.checking' })} done={0} total={null} />
      ) : (
        <Progress label={intl.formatMessage({ id: 'setup.sending' })} done={share ?? 0} total={share === null ? null : 100} />
      )}
    </div>
  );
}
