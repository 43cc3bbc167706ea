import { FormattedMessage } from 'react-intl';
import { Button, ButtonLink } from '../../../../ui/forms/Button.js';

interface Props {
  readonly isKept: boolean;
  readonly isInDoubt: boolean;
  readonly next: { readonly to: string; readonly words: string | null };
  readonly onAgain: () => void;
  readonly onNote: () => void;
  readonly onSave: () => void;
}

/** What acts on a meter: a note and Save; once kept, on to the next. */
export function ReadingActions({ isKept, isInDoubt, next, onAgain, onNote, onSave }: Props) {
  if (isKept)
    return (
      <>
        <Button kind="plain" onClick={onAgain}>
          <FormattedMessage id="field.meter.again" />
        </Button>
        <ButtonLink kind="main" to={next.to}>
          {next.words ?? <FormattedMessage id="field.meter.toSettings" />}
        </ButtonLink>
      </>
    );
  return (
    <>
      <Button kind="plain" onClick={onNote}>
        <FormattedMessage id="field.note" />
      </Button>
      <Button kind="main" onClick={onSave}>
        <FormattedMessage id={isInDoubt ? 'field.meter.saveAnyway' : 'field.meter.save'} />
      </Button>
    </>
  );
}
