import type { ThingsOfPropertyFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useSays } from '../../../../says/use-says.js';
import type { ThingsPlace } from '../../urls.js';
import { planting } from '../kinds/planting.js';
import { zone } from '../kinds/zone.js';
import { ThingsSection } from '../list/ThingsSection.js';

interface Props {
  readonly zones: ThingsOfPropertyFragment['zones'];
  readonly controllers: ThingsOfPropertyFragment['controllers'];
  readonly meters: ThingsOfPropertyFragment['meters'];
  readonly place: ThingsPlace;
  readonly onPlace: (place: Partial<ThingsPlace>) => void;
  readonly refetch: readonly string[];
  readonly belongs: Readonly<Record<string, unknown>>;
}

const choicesOf = (things: readonly { readonly id: string; readonly name: string }[]) =>
  things.map(({ id, name }) => ({ value: id, words: name }));

/** The zones, and what is planted in them. */
export function ZonesOfProperty({ zones, controllers, meters, belongs, ...usual }: Props) {
  const { quantity } = useFormats();
  const { word } = useSays();
  const plantings = zones.flatMap((one) => one.plantings).filter(({ retiredAt }) => !retiredAt);
  const zoneOf = new Map(zones.map((one) => [one.id, one]));
  const plantingOf = new Map(plantings.map((one) => [one.id, one]));
  return (
    <>
      <ThingsSection
        {...usual}
        belongs={belongs}
        kind={zone}
        things={zones}
        choices={{ controllerId: choicesOf(controllers), meterId: choicesOf(meters) }}
        nameOf={({ id }) => zoneOf.get(id)?.name ?? ''}
        about={({ id }) => {
          const one = zoneOf.get(id);
          if (!one) return null;
          const at = controllers.find((found) => found.id === one.controllerId);
          const where = at && typeof one.station === 'number' ? `${at.name} ${one.station}` : null;
          const plants = one.plants ? word('plants', one.plants) : null;
          return [where, quantity('area', one.areaM2), word('method', one.method), plants].filter(Boolean).join(', ');
        }}
      />
      {zones.length > 0 && (
        <ThingsSection
          {...usual}
          kind={planting}
          things={plantings}
          choices={{ zoneId: choicesOf(zones) }}
          nameOf={({ id }) => plantingOf.get(id)?.species ?? ''}
          about={({ id }) => {
            const one = plantingOf.get(id);
            if (!one) return null;
            return [zoneOf.get(one.zoneId)?.name, one.waterNeed ? word('need', one.waterNeed) : null].filter(Boolean).join(', ');
          }}
        />
      )}
    </>
  );
}
