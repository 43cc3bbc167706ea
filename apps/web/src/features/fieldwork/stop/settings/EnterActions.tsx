import { FormattedMessage } from 'react-intl';
import type { GivenProgram } from '../../../../programs/settings-fact.js';
import { Button } from '../../../../ui/forms/Button.js';
import type { LeastToEnter } from '../enter/use-least-to-enter.js';

interface Props {
  readonly least: LeastToEnter;
  readonly isPlanned: boolean;
  readonly onEnter: (programs: readonly GivenProgram[]) => void;
  readonly onSetAsPlanned: () => void;
  readonly onEditLeft: () => void;
}

/** What acts after a controller was found different: entered as the phone says, else as planned, else as the hands left it. */
export function EnterActions({ least, isPlanned, onEnter, onSetAsPlanned, onEditLeft }: Props) {
  const otherwise = (
    <Button kind="plain" onClick={onEditLeft}>
      <FormattedMessage id="field.enter.otherwise" />
    </Button>
  );
  if (least.kind === 'enter')
    return (
      <>
        {otherwise}
        <Button kind="main" onClick={() => onEnter(least.programs)}>
          <FormattedMessage id={least.isAsFound ? 'field.enter.leftAsFound' : 'field.enter.entered'} />
        </Button>
      </>
    );
  if (isPlanned)
    return (
      <>
        {otherwise}
        <Button kind="main" onClick={onSetAsPlanned}>
          <FormattedMessage id="field.settings.setAsPlanned" />
        </Button>
      </>
    );
  return (
    <Button kind="main" onClick={onEditLeft}>
      <FormattedMessage id="field.settings.recordLeft" />
    </Button>
  );
}
