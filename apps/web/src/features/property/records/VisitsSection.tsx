import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { VisitsOfPropertyFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../page/use-masked.js';
import { Section } from '../../../ui/frame/Section.js';
import { Head, Table } from '../../../ui/tables/Table.js';
import { VisitFacts } from './VisitFacts.js';

const visitsOfProperty = graphql(`
  fragment VisitsOfProperty on Property {
    id
    timeZone
    visits {
      id
      arrivedAt
      closedAt
      recordedBy
      doneNote
      leftNote
      ...FactsOfVisit
    }
    zones {
      id
      name
    }
  }
`);

/** What really happened here, the newest visit first. */
export function VisitsSection({ property }: { readonly property: FragmentType<VisitsOfPropertyFragment> }) {
  const intl = useIntl();
  const { visits, timeZone, zones } = useMasked(visitsOfProperty, property);
  const zoneNames = new Map(zones.map(({ id, name }) => [id, name]));
  const newestFirst = [...visits].sort((one, other) => other.arrivedAt.localeCompare(one.arrivedAt));
  const heading = intl.formatMessage({ id: 'property.visits' }, { count: visits.length });
  if (visits.length === 0) return <Section heading={heading} />;
  return (
    <Section heading={heading}>
      <Table
        name={intl.formatMessage({ id: 'property.visits.table' })}
        isTight
        head={
          <tr>
            {(['when', 'by', 'done', 'left'] as const).map((what) => (
              <Head key={what}>
                <FormattedMessage id={`property.visits.${what}`} />
              </Head>
            ))}
          </tr>
        }
      >
        {newestFirst.map((visit) => (
          <VisitRow key={visit.id} visit={visit} timeZone={timeZone} zoneNames={zoneNames} />
        ))}
      </Table>
    </Section>
  );
}

interface RowProps {
  readonly visit: VisitsOfPropertyFragment['visits'][number];
  readonly timeZone: string;
  readonly zoneNames: ReadonlyMap<string, string>;
}

function VisitRow({ visit, timeZone, zoneNames }: RowProps) {
  const { arrivedAt, closedAt, recordedBy, doneNote, leftNote } = visit;
  const { moment } = useFormats();
  return (
    <tr>
      <td>
        {moment(arrivedAt, timeZone)}
        {!closedAt && (
          <span className="xs soft line">
            <FormattedMessage id="property.visits.open" />
          </span>
        )}
      </td>
      <td>{recordedBy}</td>
      <td>
        {doneNote}
        <VisitFacts visit={visit} zoneNames={zoneNames} />
      </td>
      <td>{leftNote}</td>
    </tr>
  );
}
