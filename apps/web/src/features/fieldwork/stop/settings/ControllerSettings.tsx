import type { FragmentType } from '@apollo/client';
import { type ReactNode, useState } from 'react';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { ControllerToSetFragment } from '../../../../graphql/__generated__/graphql.js';
import { useMasked } from '../../../../page/use-masked.js';
import { Caution, PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { SentLine } from '../../device/SentLine.js';
import type { StepProps } from '../step-props.js';
import { CautionWords } from '../CautionWords.js';
import { KeptSettings } from './KeptSettings.js';
import { PlannedBesidePresent } from './PlannedBesidePresent.js';
import { countOfDifferences } from './plan-rows.js';
import { SettingsActions } from './SettingsActions.js';
import { SettingsEditor } from './SettingsEditor.js';
import { useSettings } from './use-settings.js';

export const controllerToSet = graphql(`
  fragment ControllerToSet on Controller {
    id
    name
    location
    stations
    plannedSettings {
      id
      localTime
      record
      state
      programs {
        name
        days
        starts
        adjustPercent
        stations {
          station
          minutes
          cycles
          soakMinutes
        }
      }
    }
    presentSettings {
      id
      localTime
      effectiveAt
      record
      state
      programs {
        name
        days
        starts
        adjustPercent
        stations {
          station
          minutes
          cycles
          soakMinutes
        }
      }
    }
  }
`);

/** A station of the controller and the zone that it waters. */
export interface NamedStation {
  readonly station: number;
  readonly name: string;
}

interface Props extends Pick<StepProps, 'frame' | 'now' | 'sending'> {
  readonly controller: FragmentType<ControllerToSetFragment>;
  readonly stations: readonly NamedStation[];
  readonly stopId: string;
  readonly hasMains: boolean;
  readonly next: { readonly to: string; readonly words: string | null };
  readonly switcher: (content: ReactNode) => ReactNode;
}

/** Planned beside present, only what differs bold; set as planned in one tap. */
export function ControllerSettings({ controller: masked, stations, stopId, hasMains, frame, now, sending, next, switcher }: Props) {
  const controller = useMasked(controllerToSet, masked);
  const planned = controller.plannedSettings ?? null;
  const present = controller.presentSettings ?? null;
  const [isEditing, setEditing] = useState(false);
  const { record, kept, again, problem } = useSettings({ controller, stopId, now, send: sending.send });
  const isPlanned = planned !== null;
  const content = kept ? (
    <KeptSettings kept={kept} />
  ) : isEditing ? (
    <SettingsEditor
      draftKey={`settings.${stopId}.${controller.id}`}
      base={present ?? planned}
      stations={stations}
      mostStations={controller.stations}
      record={isPlanned ? 'found' : 'left'}
      sending={sending}
      frame={frame}
      heading={controller.name}
      onSave={async (state, programs) => {
        const isKept = await record(isPlanned ? 'found' : 'left', state, programs);
        if (isKept) setEditing(false);
        return isKept;
      }}
      problem={problem}
      onCancel={() => setEditing(false)}
    />
  ) : null;
  if (isEditing && !kept) return content;
  return (
    <PhoneFrame
      {...frame}
      status={<SentLine sending={sending} />}
      actions={
        <SettingsActions
          isKept={kept !== null}
          isPlanned={isPlanned}
          differ={countOfDifferences(planned, present)}
          isBusy={sending.underWay > 0}
          next={next}
          onAgain={again}
          onEdit={() => setEditing(true)}
          onSetAsPlanned={() => void (planned && record('left', planned.state, planned.programs))}
        />
      }
    >
      <h1>{controller.name}</h1>
      {controller.location && <p className="where">{controller.location}</p>}
      {hasMains && (
        <Caution>
          <CautionWords code="mains-voltage" />
        </Caution>
      )}
      {switcher(
        <>
          {problem ? <ErrorState problem={problem} /> : null}
          {content ?? <PlannedBesidePresent planned={planned} present={present} stations={stations} />}
          {!kept && !isPlanned && (
            <p className="after">
              <FormattedMessage id="field.settings.noPlan" />
            </p>
          )}
        </>,
      )}
    </PhoneFrame>
  );
}
