import { FormattedMessage } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { Button, ButtonLink } from '../../../../ui/forms/Button.js';
import { PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { SentLine } from '../../device/SentLine.js';
import { stopPath } from '../../urls.js';
import type { StepProps } from '../step-props.js';

interface Props extends Pick<StepProps, 'frame'> {
  readonly visit: {
    readonly arrivedAt: string;
    readonly closedAt: string;
    readonly doneNote?: string | null;
    readonly leftNote?: string | null;
  };
  readonly next: { readonly id: string; readonly name: string } | null;
  readonly onAgain: () => void;
}

/** A stop that was closed: how long it took, and where to go next. */
export function ClosedStop({ visit: { arrivedAt, closedAt, doneNote, leftNote }, next, frame, onAgain }: Props) {
  const { minutes, time } = useFormats();
  const onSite = (Date.parse(closedAt) - Date.parse(arrivedAt)) / 60_000;
  return (
    <PhoneFrame
      {...frame}
      status={<SentLine />}
      actions={
        <>
          <Button kind="plain" onClick={onAgain}>
            <FormattedMessage id="field.done.again" />
          </Button>
          <ButtonLink kind="main" to={next ? stopPath(next.id) : frame.back.to}>
            {next ? <FormattedMessage id="field.done.next" values={{ name: next.name }} /> : <FormattedMessage id="field.done.dayDone" />}
          </ButtonLink>
        </>
      }
    >
      <h1>
        <FormattedMessage id="field.done.closed" values={{ time: time(closedAt), minutes: minutes(onSite) }} />
      </h1>
      {doneNote && (
        <p className="after">
          <FormattedMessage id="field.done.wasDone" values={{ note: doneNote }} />
        </p>
      )}
      {leftNote && (
        <p className="after">
          <FormattedMessage id="field.done.wasLeft" values={{ note: leftNote }} />
        </p>
      )}
    </PhoneFrame>
  );
}
