import { useQuery } from '@apollo/client/react';
import { useState } from 'react';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { Fetched } from '../../../../page/Fetched.js';
import { mayDo, useViewer } from '../../../../session/viewer.js';
import { TypeSettings } from './TypeSettings.js';

const controllerToRecordDocument = graphql(`
  query ControllerToRecord($id: ID!, $propertyId: ID!) {
    controller(id: $id) {
      id
      name
      stations
      startsPerProgram
      maxMinutes
      maxAdjustPercent
      presentSettings {
        id
        localTime
        record
        state
        programs {
          ...ProgramFields @unmask
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
    }
    property(id: $propertyId) {
      id
      timeZone
      zones {
        id
        name
        station
        controllerId
        retiredAt
      }
    }
  }
`);

interface Props {
  readonly controllerId: string;
  readonly propertyId: string;
}

/** A place to record settings that came on paper, by telephone or as a photo; asked for only when it is opened. */
export function RecordFold(props: Props) {
  const viewer = useViewer();
  const [isOpened, setOpened] = useState(false);
  if (!mayDo(viewer, 'record fieldwork')) return null;
  return (
    <details className="fold" onToggle={({ currentTarget }) => currentTarget.open && setOpened(true)}>
      <summary>
        <FormattedMessage id="property.settings.open" />
      </summary>
      {isOpened && <Opened {...props} />}
    </details>
  );
}

function Opened({ controllerId, propertyId }: Props) {
  const query = useQuery(controllerToRecordDocument, { variables: { id: controllerId, propertyId }, fetchPolicy: 'cache-and-network' });
  return (
    <Fetched query={query}>
      {({ controller, property }) =>
        controller &&
        property && (
          <TypeSettings
            controller={controller}
            timeZone={property.timeZone}
            stations={property.zones
              .filter((zone) => zone.controllerId === controllerId && !zone.retiredAt && typeof zone.station === 'number')
              .map(({ name, station }) => ({ name, station: station ?? 0 }))
              .sort((one, other) => one.station - other.station)}
          />
        )
      }
    </Fetched>
  );
}
