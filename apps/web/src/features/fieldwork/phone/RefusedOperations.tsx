import { FormattedMessage } from 'react-intl';
import { isOver, isRefused } from '../../../offline/outbox.js';
import { useOutbox } from '../../../offline/PhoneProvider.js';
import { Button } from '../../../ui/forms/Button.js';
import { CorrectLink } from './CorrectLink.js';
import { OperationLine } from './OperationLine.js';
import { SetAside } from './SetAside.js';

interface Props {
  readonly onAgain: (key: string) => void;
  readonly onSetAside: (key: string, why: string) => void;
}

/** What the server refused: said anew where it belongs, sent again as it is, or set aside with why; and those that are over, as history. */
export function RefusedOperations({ onAgain, onSetAside }: Props) {
  const outbox = useOutbox();
  const refused = outbox.operations.filter(isRefused);
  const open = refused.filter((one) => !isOver(outbox, one));
  const over = refused.filter((one) => isOver(outbox, one));
  return (
    <>
      {open.length > 0 && (
        <>
          <h2 className="crew-name">
            <FormattedMessage id="field.phone.refused" values={{ count: open.length }} />
          </h2>
          <ul className="operations">
            {open.map((one) => (
              <OperationLine key={one.key} operation={one}>
                <div className="after stack">
                  <CorrectLink operation={one} />
                  <Button onClick={() => onAgain(one.key)}>
                    <FormattedMessage id="field.phone.again" />
                  </Button>
                  <SetAside onSetAside={(why) => onSetAside(one.key, why)} />
                </div>
              </OperationLine>
            ))}
          </ul>
        </>
      )}
      {over.length > 0 && (
        <>
          <h2 className="crew-name">
            <FormattedMessage id="field.refused.over" />
          </h2>
          <ul className="operations">
            {over.map((one) => (
              <OperationLine key={one.key} operation={one}>
                {!one.setAside && (
                  <span className="line">
                    <FormattedMessage id="field.refused.saidAnew" />
                  </span>
                )}
              </OperationLine>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
