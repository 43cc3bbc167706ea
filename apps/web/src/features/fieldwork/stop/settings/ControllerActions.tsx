import { countOfDifferences } from '../../settings-beside/plan-rows.js';
import type { ControllerHere } from './controller-here.js';
import { EnterActions } from './EnterActions.js';
import { SettingsActions } from './SettingsActions.js';

/** What acts on the controller: after it was found different, what leads to what is left; else found different, set as planned, on to the next. */
export function ControllerActions({ planned, present, next, canReckon, deed, least, onEdit, onSetAsPlanned }: ControllerHere) {
  const { kept, record, again } = deed;
  if (least && !kept)
    return (
      <EnterActions
        least={least}
        isPlanned={planned !== null}
        onEnter={(programs) => void record('left', 'on', programs)}
        onSetAsPlanned={onSetAsPlanned}
        onEditLeft={() => onEdit('left')}
      />
    );
  return (
    <SettingsActions
      isKept={kept !== null}
      isPlanned={planned !== null}
      canReckon={canReckon}
      differ={countOfDifferences(planned, present)}
      isKnown={present !== null}
      next={next}
      onAgain={again}
      onEdit={() => onEdit(planned || canReckon ? 'found' : 'left')}
      onSetAsPlanned={onSetAsPlanned}
    />
  );
}
