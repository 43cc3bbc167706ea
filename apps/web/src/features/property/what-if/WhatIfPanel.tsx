import { useQuery } from '@apollo/client/react';
import { useMemo } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../page/Fetched.js';
import { EmptyState } from '../../../ui/states/States.js';
import { type AskYear, askingYear } from './ask-year.js';
import { WhatIfQuestion } from './WhatIfQuestion.js';
import type { PropertyOfYear, YearGiven } from './year-given.js';
import './what-if.css';

const whatIfDocument = graphql(`
  query WhatIfOfProperty($id: ID!, $month: Month) {
    property(id: $id) {
      id
      zones {
        id
        name
        station
      }
      account(month: $month) {
        id
        pricePerLitre
      }
      whatIf(until: $month) {
        months
        weather {
          firstDay
          etoMm
          rainMm
        }
        stages {
          months
          zones {
            zoneId
            areaM2
            plantFactor
            density
            shade
            rawMm
            duLq
            leachingFraction
            assumed
            isCounted
          }
        }
      }
    }
  }
`);

interface Props {
  readonly propertyId: string;
  readonly month: string | null;
}

/** Fetches a year of the property once; every question after that is answered here. */
export function WhatIfPanel({ propertyId, month }: Props) {
  const query = useQuery(whatIfDocument, { variables: { id: propertyId, month }, fetchPolicy: 'cache-and-network' });
  return (
    <Fetched query={query}>
      {({ property }) =>
        property?.whatIf && <YearOrWhyNot key={property.whatIf.months.at(-1)} property={property} year={property.whatIf} />
      }
    </Fetched>
  );
}

interface YearProps {
  readonly property: PropertyOfYear;
  readonly year: YearGiven;
}

/** The question where it can be answered; else what is missing, and no number. */
function YearOrWhyNot({ property, year }: YearProps) {
  const intl = useIntl();
  const ask = useMemo(() => askingYear(year), [year]);
  if ((year.stages.at(-1)?.zones.length ?? 0) === 0)
    return (
      <EmptyState sentence={intl.formatMessage({ id: 'whatIf.noZones' })}>
        {intl.formatMessage({ id: 'property.zones.none.how' })}
      </EmptyState>
    );
  if (!ask)
    return (
      <EmptyState sentence={intl.formatMessage({ id: 'whatIf.noWeather' })}>
        {intl.formatMessage({ id: 'whatIf.noWeather.how' })}
      </EmptyState>
    );
  return <YearOrMonths property={property} year={year} ask={ask} />;
}

function YearOrMonths({ ask, ...rest }: YearProps & { readonly ask: AskYear }) {
  const intl = useIntl();
  const formats = useFormats();
  const { months, stages } = rest.year;
  // Weather is the same for all zones: a month that it is missing in is missing for each.
  const zoneId = stages.at(-1)?.zones[0]?.zoneId ?? null;
  const litres = ask(zoneId, (zone) => zone);
  const missing = months.filter((_, at) => litres[at] === null);
  if (missing.length === 0) return <WhatIfQuestion ask={ask} {...rest} />;
  const named = intl.formatList(missing.map(formats.month), { type: 'conjunction' });
  return (
    <EmptyState sentence={intl.formatMessage({ id: 'whatIf.someWeather' })}>
      {intl.formatMessage({ id: 'whatIf.someWeather.how' }, { months: named })}
    </EmptyState>
  );
}
