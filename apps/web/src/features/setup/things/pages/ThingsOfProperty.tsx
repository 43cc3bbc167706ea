import type { FragmentType } from '@apollo/client';
import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { ThingsOfPropertyFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../../page/use-masked.js';
import { useSays } from '../../../../says/use-says.js';
import type { ThingsPlace } from '../../urls.js';
import { backflow } from '../kinds/backflow.js';
import { controller } from '../kinds/controller.js';
import { meter } from '../kinds/meter.js';
import { ThingsSection } from '../list/ThingsSection.js';
import { ZonesOfProperty } from './ZonesOfProperty.js';

const thingsOfProperty = graphql(`
  fragment ThingsOfProperty on Property {
    id
    meters {
      ...MeterFields @unmask
    }
    controllers {
      ...ControllerFields @unmask
    }
    zones {
      ...ZoneFields @unmask
      plantings {
        ...PlantingFields @unmask
      }
    }
    backflowAssemblies {
      ...BackflowAssemblyFields @unmask
    }
  }
`);

interface Props {
  readonly property: FragmentType<ThingsOfPropertyFragment>;
  readonly place: ThingsPlace;
  readonly onPlace: (place: Partial<ThingsPlace>) => void;
}

const isInUse = ({ retiredAt }: { readonly retiredAt?: string | null }): boolean => !retiredAt;

/** Each kind of thing on a property. */
export function ThingsOfProperty({ property: masked, place, onPlace }: Props) {
  const { word } = useSays();
  const property = useMasked(thingsOfProperty, masked);
  const meters = property.meters.filter(isInUse);
  const controllers = property.controllers.filter(isInUse);
  const zones = property.zones.filter(isInUse);
  const usual = { place, onPlace, refetch: ['SetupProperty'], belongs: { propertyId: property.id } };
  return (
    <>
      <ThingsSection
        {...usual}
        kind={meter}
        things={meters}
        fixed={{ multiplier: '1', kind: 'irrigation', water: 'potable' }}
        nameOf={({ id }) => meters.find((one) => one.id === id)?.name ?? ''}
        about={({ id }) => {
          const one = meters.find((found) => found.id === id);
          return one && `${word('meter', one.kind)}, ${word('water', one.water)}, ${one.unit}`;
        }}
      />
      <Controllers {...usual} controllers={controllers} />
      <ZonesOfProperty {...usual} zones={zones} controllers={controllers} meters={meters} />
      <Assemblies {...usual} assemblies={property.backflowAssemblies.filter(isInUse)} />
    </>
  );
}

interface Usual {
  readonly place: ThingsPlace;
  readonly onPlace: (place: Partial<ThingsPlace>) => void;
  readonly refetch: readonly string[];
  readonly belongs: Readonly<Record<string, unknown>>;
}

function Controllers({ controllers, ...usual }: Usual & { readonly controllers: ThingsOfPropertyFragment['controllers'] }) {
  const intl = useIntl();
  return (
    <ThingsSection
      {...usual}
      kind={controller}
      things={controllers}
      nameOf={({ id }) => controllers.find((one) => one.id === id)?.name ?? ''}
      about={({ id }) => {
        const one = controllers.find((found) => found.id === id);
        const stations = intl.formatMessage({ id: 'setup.controller.stations' }, { count: one?.stations ?? 0 });
        return [stations, one?.location].filter(Boolean).join(', ');
      }}
    />
  );
}

function Assemblies({ assemblies, ...usual }: Usual & { readonly assemblies: ThingsOfPropertyFragment['backflowAssemblies'] }) {
  const intl = useIntl();
  const { dayOfYear } = useFormats();
  return (
    <ThingsSection
      {...usual}
      kind={backflow}
      things={assemblies}
      nameOf={({ id }) => assemblies.find((one) => one.id === id)?.name ?? ''}
      about={({ id }) => {
        const one = assemblies.find((found) => found.id === id);
        const due = one?.nextTestDueOn ? intl.formatMessage({ id: 'setup.backflow.due' }, { day: dayOfYear(one.nextTestDueOn) }) : null;
        return [one?.location, due].filter(Boolean).join(', ');
      }}
    />
  );
}
