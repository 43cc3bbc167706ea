import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { ControllerOfPropertyFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../page/use-masked.js';
import type { Names } from '../../../says/names.js';
import { Section } from '../../../ui/frame/Section.js';
import { PlanFold } from '../plan/PlanFold.js';
import { RecordFold } from './record/RecordFold.js';
import { PlannedNote } from './PlannedNote.js';
import { PresentSettings } from './PresentSettings.js';
import { SettingsHistory } from './SettingsHistory.js';
import { unchangedSince } from './unchanged-since.js';

const controllerOfProperty = graphql(`
  fragment ControllerOfProperty on Controller {
    id
    propertyId
    name
    stations
    programs
    location
    presentSettings {
      id
      localTime
      record
      state
      programs {
        ...ProgramFields @unmask
      }
    }
    plannedSettings {
      id
      state
      programs {
        ...ProgramFields @unmask
      }
    }
    settings(first: 24) {
      id
      localTime
      record
      state
      recordedBy
      programs {
        ...ProgramFields @unmask
      }
    }
    rainPauses {
      id
      pausedFrom
      pausedUntil
    }
  }
`);

const MOST_PAUSES = 2;

interface Props {
  readonly controller: FragmentType<ControllerOfPropertyFragment>;
  readonly names: Names;
}

/** A controller: what is on it now, what is planned, and its settings through time. */
export function ControllerSection({ controller: masked, names }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const controller = useMasked(controllerOfProperty, masked);
  const { name, presentSettings: present, plannedSettings: planned } = controller;
  const facts = { stations: controller.stations, programs: controller.programs ?? 'none', location: controller.location || 'none' };
  const heading = present
    ? intl.formatMessage(
        { id: 'property.controller.since' },
        { name, day: formats.dayOfYear((unchangedSince(intl, formats, controller.settings) ?? present.localTime).slice(0, 10)) },
      )
    : intl.formatMessage({ id: 'property.controller.unknown' }, { name });
  const newestPauses = [...controller.rainPauses]
    .sort((one, other) => other.pausedFrom.localeCompare(one.pausedFrom))
    .slice(0, MOST_PAUSES);
  return (
    <Section heading={heading} note={<FormattedMessage id="property.controller.facts" values={facts} />}>
      {present ? (
        <PresentSettings settings={present} name={name} />
      ) : (
        <p>{intl.formatMessage({ id: 'property.controller.unknown.how' })}</p>
      )}
      {planned && <PlannedNote planned={planned} present={present ?? null} />}
      {newestPauses.map(({ id, pausedFrom, pausedUntil }) => (
        <p key={id} className="soft">
          {pausedUntil ? (
            <FormattedMessage
              id="property.controller.paused"
              values={{ from: formats.moment(pausedFrom), until: formats.moment(pausedUntil) }}
            />
          ) : (
            <FormattedMessage id="property.controller.pausedOpen" values={{ from: formats.moment(pausedFrom) }} />
          )}
        </p>
      ))}
      <PlanFold controllerId={controller.id} propertyId={controller.propertyId} name={name} present={present ?? null} names={names} />
      <RecordFold controllerId={controller.id} propertyId={controller.propertyId} />
      <SettingsHistory settings={controller.settings} name={name} />
    </Section>
  );
}
