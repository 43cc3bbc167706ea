import { FormattedMessage } from 'react-intl';
import { areOwn, disputedIn } from '../../../offline/outbox.js';
import { useOutbox } from '../../../offline/PhoneProvider.js';
import { Button } from '../../../ui/forms/Button.js';
import { CorrectLink } from './CorrectLink.js';
import { OperationLine } from './OperationLine.js';

/** What somebody else, or the same person on another phone, said otherwise: both words with who said them, said anew where it belongs, or only seen; the office decides. */
export function DisputedOperations({ onSeen }: { readonly onSeen: (key: string) => void }) {
  const disputed = disputedIn(useOutbox());
  if (disputed.length === 0) return null;
  return (
    <>
      <h2 className="crew-name">
        <FormattedMessage id="field.phone.disputed" values={{ count: disputed.length, isSelf: String(areOwn(disputed)) }} />
      </h2>
      <ul className="operations">
        {disputed.map((one) => (
          <OperationLine key={one.key} operation={one}>
            <div className="after stack">
              <Button onClick={() => onSeen(one.key)}>
                <FormattedMessage id="field.phone.seen" />
              </Button>
              <CorrectLink operation={one} />
            </div>
          </OperationLine>
        ))}
      </ul>
    </>
  );
}
