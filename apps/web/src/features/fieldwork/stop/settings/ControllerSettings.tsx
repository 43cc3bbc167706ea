import type { FragmentType } from '@apollo/client';
import { type ReactNode, useState } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { ControllerToSetFragment } from '../../../../graphql/__generated__/graphql.js';
import { useMasked } from '../../../../page/use-masked.js';
import { Caution, PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { SentLine } from '../../device/SentLine.js';
import type { NamedStation } from '../../../../programs/named-station.js';
import type { StepProps } from '../step-props.js';
import { CautionWords } from '../arrive/CautionWords.js';
import { namedAs } from '../named.js';
import { KeptSettings } from './KeptSettings.js';
import { PlannedBesidePresent } from './PlannedBesidePresent.js';
import { countOfDifferences } from './plan-rows.js';
import { SettingsActions } from './SettingsActions.js';
import { SettingsEditor } from './SettingsEditor.js';
import { begunFrom, type GivenProgram } from '../../../../programs/settings-fact.js';
import { SeemsSetTo } from '../../../../programs/SeemsSetTo.js';
import { useSettings } from './use-settings.js';

export const controllerToSet = graphql(`
  fragment ControllerToSet on Controller {
    id
    name
    location
    stations
    startsPerProgram
    maxMinutes
    maxAdjustPercent
    inferredSettings {
      through
      programs {
        name
        days
        starts
        minutes
        confidence
      }
    }
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

interface Props extends Pick<StepProps, 'frame' | 'now'> {
  readonly controller: FragmentType<ControllerToSetFragment>;
  readonly stations: readonly NamedStation[];
  readonly stopId: string;
  readonly timeZone: string;
  readonly hasMains: boolean;
  readonly next: { readonly to: string; readonly words: string | null };
  readonly switcher: (content: ReactNode) => ReactNode;
}

/** Planned beside present, only what differs bold; set as planned in one tap. */
export function ControllerSettings({ controller: masked, stations, stopId, timeZone, hasMains, frame, now, next, switcher }: Props) {
  const intl = useIntl();
  const controller = useMasked(controllerToSet, masked);
  const { planned, present, inferred, base } = knownOf(controller);
  const [isEditing, setEditing] = useState(false);
  const { record, kept, again } = useSettings({ controller, stopId, timeZone, now });
  const heading = namedAs(intl, 'field.named.controller', controller.name);
  const as = planned ? 'found' : 'left';
  const save = async (state: string, programs: readonly GivenProgram[]): Promise<boolean> => {
    const isKept = await record(as, state, programs);
    if (isKept) setEditing(false);
    return isKept;
  };
  if (isEditing && !kept)
    return (
      <SettingsEditor
        draftKey={`settings.${stopId}.${controller.id}`}
        base={base}
        stations={stations}
        mostStations={controller.stations}
        holds={controller}
        record={as}
        frame={frame}
        heading={heading}
        onSave={save}
        onCancel={() => setEditing(false)}
      />
    );
  const actions = (
    <SettingsActions
      isKept={kept !== null}
      isPlanned={planned !== null}
      differ={countOfDifferences(planned, present)}
      isKnown={present !== null}
      next={next}
      onAgain={again}
      onEdit={() => setEditing(true)}
      onSetAsPlanned={() => void (planned && record('left', planned.state, planned.programs))}
    />
  );
  return (
    <PhoneFrame {...frame} status={<SentLine />} actions={actions}>
      <ControllerHead heading={heading} location={controller.location ?? null} hasMains={hasMains} />
      {!kept && inferred && <SeemsSetTo inferred={inferred} />}
      {switcher(kept ? <KeptSettings kept={kept} /> : <PlannedBesidePresent planned={planned} present={present} stations={stations} />)}
    </PhoneFrame>
  );
}

/** What is known of the controller, and what an editor begins from. */
function knownOf({ plannedSettings, presentSettings, inferredSettings }: ControllerToSetFragment) {
  const [planned, present, inferred] = [plannedSettings ?? null, presentSettings ?? null, inferredSettings ?? null];
  return { planned, present, inferred, base: present ?? planned ?? (inferred && begunFrom(inferred)) };
}

interface HeadProps {
  readonly heading: string;
  readonly location: string | null;
  readonly hasMains: boolean;
}

function ControllerHead({ heading, location, hasMains }: HeadProps) {
  return (
    <>
      <h1>{heading}</h1>
      {location && <p className="where">{location}</p>}
      {hasMains && (
        <Caution>
          <CautionWords code="mains-voltage" />
        </Caution>
      )}
    </>
  );
}
