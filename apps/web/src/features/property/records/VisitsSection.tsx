import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { VisitsOfPropertyFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../page/use-masked.js';
import { Section } from '../../../ui/frame/Section.js';
import { Head, Table } from '../../../ui/tables/Table.js';

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
      zoneNotes {
        id
      }
    }
  }
`);

/** What really happened here, the newest visit first. */
export function VisitsSection({ property }: { readonly property: FragmentType<VisitsOfPropertyFragment> }) {
  const intl = useIntl();
  const { visits, timeZone } = useMasked(visitsOfProperty, property);
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
          <VisitRow key={visit.id} visit={visit} timeZone={timeZone} />
        ))}
      </Table>
    </Section>
  );
}

interface RowProps {
  readonly visit: VisitsOfPropertyFragment['visits'][number];
  readonly timeZone: string;
}

function VisitRow({ visit: { arrivedAt, closedAt, recordedBy, doneNote, leftNote, zoneNotes }, timeZone }: RowProps) {
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
        {zoneNotes.length > 0 && (
          <span className="xs soft line">
            <FormattedMessage id="property.visits.zones" values={{ count: zoneNotes.length }} />
          </span>
        )}
      </td>
      <td>{leftNote}</td>
    </tr>
  );
}
