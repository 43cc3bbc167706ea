import { FormattedMessage } from 'react-intl';
import { Button, ButtonLink } from '../../../../ui/forms/Button.js';

interface Props {
  readonly isKept: boolean;
  readonly isPlanned: boolean;
  /** Whether the least to enter can be reckoned here from what is found. */
  readonly canReckon: boolean;
  readonly differ: number;
  /** Whether it is known what the controller is set to. */
  readonly isKnown: boolean;
  readonly next: { readonly to: string; readonly words: string | null };
  readonly onAgain: () => void;
  readonly onEdit: () => void;
  readonly onSetAsPlanned: () => void;
}

/** What acts on a controller: found different, set as planned; once kept, on to the next. */
export function SettingsActions({ isKept, isPlanned, canReckon, differ, isKnown, next, onAgain, onEdit, onSetAsPlanned }: Props) {
  const onward = (kind: 'main' | 'plain') => (
    <ButtonLink kind={kind} to={next.to}>
      {next.words ?? <FormattedMessage id="field.settings.toZones" />}
    </ButtonLink>
  );
  if (isKept)
    return (
      <>
        <Button kind="plain" onClick={onAgain}>
          <FormattedMessage id="field.settings.again" />
        </Button>
        {onward('main')}
      </>
    );
  if (!isPlanned)
    return (
      <>
        {onward('plain')}
        <Button kind="main" onClick={onEdit}>
          <FormattedMessage id={canReckon ? 'field.settings.recordFound' : 'field.settings.recordLeft'} />
        </Button>
      </>
    );
  return (
    <>
      <Button kind="plain" onClick={onEdit}>
        <FormattedMessage id="field.settings.foundDifferent" />
      </Button>
      <Button kind="main" onClick={onSetAsPlanned}>
        <FormattedMessage id={isKnown && differ === 0 ? 'field.settings.isAsPlanned' : 'field.settings.setAsPlanned'} />
      </Button>
    </>
  );
}
