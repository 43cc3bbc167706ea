import type { FragmentType } from '@apollo/client';
import { type ReactNode, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { ControllerToSetFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { localTimeAt } from '../../../../page/values/local-instant.js';
import { useMasked } from '../../../../page/use-masked.js';
import { Caution, PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { SentLine } from '../../device/SentLine.js';
import type { NamedStation } from '../../../../programs/named-station.js';
import type { StepProps } from '../step-props.js';
import { CautionWords } from '../arrive/CautionWords.js';
import { namedAs } from '../named.js';
import { ControllerActions } from './ControllerActions.js';
import { ControllerBody } from './ControllerBody.js';
import { type LeastToEnter, useLeastToEnter } from '../enter/use-least-to-enter.js';
import { SettingsEditor } from './SettingsEditor.js';
import { begunFrom, type GivenProgram, type GivenSettings } from '../../../../programs/settings-fact.js';
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
    planGround {
      month
      gatheredAt
      form
      ground
      reason {
        code
        details
      }
    }
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
        ...ProgramFields @unmask
      }
    }
    presentSettings {
      id
      localTime
      effectiveAt
      record
      state
      programs {
        ...ProgramFields @unmask
      }
    }
  }
`);

interface Props extends Pick<StepProps, 'frame' | 'now' | 'visit'> {
  readonly controller: FragmentType<ControllerToSetFragment>;
  readonly stations: readonly NamedStation[];
  readonly stopId: string;
  readonly timeZone: string;
  /** The first day with water after the rain pause that is to be set here. */
  readonly waterAgainOn: string | null;
  readonly hasMains: boolean;
  readonly next: { readonly to: string; readonly words: string | null };
  readonly switcher: (content: ReactNode) => ReactNode;
}

/** Planned beside present, only what differs bold; set as planned in one tap. Found different: the least to enter, reckoned here. */
export function ControllerSettings({ controller: masked, stations, stopId, timeZone, frame, now, visit, next, switcher, ...place }: Props) {
  const intl = useIntl();
  const controller = useMasked(controllerToSet, masked);
  const { planned, present, inferred, base, ground, canReckon } = knownOf(controller);
  const [editing, setEditing] = useState<'found' | 'left' | null>(null);
  const deed = useSettings({ controller, stopId, timeZone, now, begin: visit.begin });
  const { record, kept, found } = deed;
  const least = useLeastToEnter({ carried: ground, found, month: localTimeAt(now().getTime(), timeZone).slice(0, 7), now });
  const heading = namedAs(intl, 'field.named.controller', controller.name);
  const setAsPlanned = (): void => void (planned && record('left', planned.state, planned.programs));
  const save = async (as: 'found' | 'left', state: string, programs: readonly GivenProgram[]): Promise<boolean> => {
    const isKept = await record(as, state, programs);
    if (isKept) setEditing(null);
    return isKept;
  };
  if (editing && !kept)
    return (
      <SettingsEditor
        key={editing}
        {...startOfEditing({ editing, stopId, controllerId: controller.id, found, least, base })}
        stations={stations}
        mostStations={controller.stations}
        holds={controller}
        record={editing}
        frame={frame}
        heading={heading}
        onSave={(state, programs) => save(editing, state, programs)}
        onCancel={() => setEditing(null)}
      />
    );
  const given = { planned, present, stations, next, canReckon, deed, least, onEdit: setEditing, onSetAsPlanned: setAsPlanned };
  return (
    <PhoneFrame {...frame} status={<SentLine />} actions={<ControllerActions {...given} />}>
      <ControllerHead heading={heading} location={controller.location ?? null} {...place} />
      {!kept && !found && inferred && <SeemsSetTo inferred={inferred} />}
      {switcher(<ControllerBody {...given} />)}
    </PhoneFrame>
  );
}

interface Editing {
  readonly editing: 'found' | 'left';
  readonly stopId: string;
  readonly controllerId: string;
  readonly found: GivenSettings | null;
  readonly least: LeastToEnter | null;
  readonly base: GivenSettings | null;
}

/** What an editor begins from. What is left after something was found is typed apart from what was found. */
function startOfEditing({ editing, stopId, controllerId, found, least, base }: Editing) {
  const draftKey = `settings.${stopId}.${controllerId}`;
  if (!found) return { draftKey, base };
  if (editing === 'found') return { draftKey, base: found };
  return { draftKey: `${draftKey}.left`, base: least?.kind === 'enter' ? { ...found, programs: least.programs } : found };
}

/** What is known of the controller, and what an editor begins from. */
function knownOf({ plannedSettings, presentSettings, inferredSettings, planGround }: ControllerToSetFragment) {
  const [planned, present, inferred] = [plannedSettings ?? null, presentSettings ?? null, inferredSettings ?? null];
  const ground = planGround ?? null;
  const canReckon = ground !== null && !ground.reason;
  return { planned, present, inferred, ground, canReckon, base: present ?? planned ?? (inferred && begunFrom(inferred)) };
}

interface HeadProps {
  readonly heading: string;
  readonly location: string | null;
  readonly hasMains: boolean;
  readonly waterAgainOn: string | null;
}

function ControllerHead({ heading, location, hasMains, waterAgainOn }: HeadProps) {
  const { dayInWords } = useFormats();
  return (
    <>
      <h1>{heading}</h1>
      {location && <p className="where">{location}</p>}
      {hasMains && (
        <Caution>
          <CautionWords code="mains-voltage" />
        </Caution>
      )}
      {waterAgainOn && (
        <p className="state-differs">
          <FormattedMessage id="field.settings.pause" values={{ day: dayInWords(waterAgainOn) }} />
        </p>
      )}
    </>
  );
}
