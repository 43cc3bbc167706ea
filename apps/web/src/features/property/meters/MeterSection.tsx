import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { MeterOfPropertyFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../page/use-masked.js';
import { useSays } from '../../../says/use-says.js';
import { mayDo, useViewer } from '../../../session/viewer.js';
import { Section } from '../../../ui/frame/Section.js';
import { ReadingsTable } from './ReadingsTable.js';
import { isFitting } from './is-fitting.js';
import { TypeReading } from './TypeReading.js';

const meterOfProperty = graphql(`
  fragment MeterOfProperty on Meter {
    id
    name
    kind
    water
    unit
    multiplier
    pricePerUnit
    readings(first: 24) {
      id
      readAt
      register
      source
      note
      replacedById
      recordedBy
      litresSinceLast
      judgement
    }
  }
`);

/** A meter: how it stands, its readings and what each was judged to be, and a place to type a new one. */
export function MeterSection({ meter: masked }: { readonly meter: FragmentType<MeterOfPropertyFragment> }) {
  const intl = useIntl();
  const formats = useFormats();
  const viewer = useViewer();
  const { word } = useSays();
  const meter = useMasked(meterOfProperty, masked);
  const readings = [...meter.readings].sort((one, other) => other.readAt.localeCompare(one.readAt));
  const newest = readings.find(({ replacedById }) => !replacedById);
  const heading = newest
    ? intl.formatMessage(
        { id: isFitting(newest) ? 'property.meter.read' : 'property.meter.doubted' },
        {
          name: meter.name,
          register: formats.number(newest.register, 3),
          unit: meter.unit,
          day: formats.moment(newest.readAt),
          judgement: word('judgement', newest.judgement),
        },
      )
    : intl.formatMessage({ id: 'property.meter.neverRead' }, { name: meter.name });
  const facts = {
    kind: word('meter', meter.kind),
    water: word('water', meter.water),
    unit: meter.unit,
    multiplier: meter.multiplier === 1 ? 'one' : formats.number(meter.multiplier, 3),
  };
  return (
    <Section
      heading={heading}
      note={
        <>
          <FormattedMessage id="property.meter.facts" values={facts} />{' '}
          {typeof meter.pricePerUnit === 'number' && (
            <FormattedMessage id="property.meter.price" values={{ unit: meter.unit, price: formats.price(meter.pricePerUnit) }} />
          )}
        </>
      }
    >
      <ReadingsTable name={meter.name} unit={meter.unit} readings={readings} />
      {mayDo(viewer, 'record fieldwork') && <TypeReading meterId={meter.id} unit={meter.unit} />}
    </Section>
  );
}
