import { PlannedBesidePresent } from '../../settings-beside/PlannedBesidePresent.js';
import type { ControllerHere } from './controller-here.js';
import { FoundHere } from './FoundHere.js';
import { KeptSettings } from './KeptSettings.js';

/** What is shown of the controller: what was kept, else what to enter where it was found different, else planned beside present. */
export function ControllerBody({ planned, present, stations, canReckon, deed, least, onEdit, onSetAsPlanned }: ControllerHere) {
  const { kept, found } = deed;
  if (kept) return <KeptSettings kept={kept} />;
  if (found && least)
    return (
      <FoundHere
        found={found}
        least={least}
        planned={planned}
        stations={stations}
        onEditFound={() => onEdit('found')}
        onSetAsPlanned={onSetAsPlanned}
      />
    );
  return <PlannedBesidePresent planned={planned} present={present} stations={stations} canReckon={canReckon} />;
}
