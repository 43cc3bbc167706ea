import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { WorkOfPropertyFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { sentenceCase } from '../../../page/values/sentence-case.js';
import { useMasked } from '../../../page/use-masked.js';
import { useSays } from '../../../says/use-says.js';
import { Section } from '../../../ui/frame/Section.js';
import { Head, Num, Table } from '../../../ui/tables/Table.js';

const workOfProperty = graphql(`
  fragment WorkOfProperty on Property {
    id
    workOrders {
      id
      kind
      state
      what
      cost
      day
      doneNote
      leftNote
      doneAt
      crew {
        id
        name
      }
    }
  }
`);

type Order = WorkOfPropertyFragment['workOrders'][number];
const hasEnded = ({ state }: Order): boolean => state === 'done' || state === 'dropped';

/** Work that waits, and work that was done. */
export function WorkSection({ property }: { readonly property: FragmentType<WorkOfPropertyFragment> }) {
  const intl = useIntl();
  const { workOrders } = useMasked(workOfProperty, property);
  const waiting = workOrders.filter((order) => !hasEnded(order));
  const heading = intl.formatMessage({ id: 'property.work' }, { open: waiting.length });
  if (workOrders.length === 0) return <Section heading={heading} />;
  return (
    <Section heading={heading}>
      <Table
        name={intl.formatMessage({ id: 'property.work.table' })}
        isTight
        head={
          <tr>
            <Head>
              <FormattedMessage id="property.work.what" />
            </Head>
            <Head>
              <FormattedMessage id="property.work.who" />
            </Head>
            <Head>
              <FormattedMessage id="property.work.note" />
            </Head>
            <Head isNumber>
              <FormattedMessage id="property.work.cost" />
            </Head>
          </tr>
        }
      >
        {[...waiting, ...workOrders.filter(hasEnded)].map((order) => (
          <WorkRow key={order.id} order={order} />
        ))}
      </Table>
    </Section>
  );
}

function WorkRow({ order: { kind, state, what, cost, crew, day, doneAt, doneNote, leftNote } }: { readonly order: Order }) {
  const formats = useFormats();
  const { word } = useSays();
  const when = doneAt ? formats.moment(doneAt) : day && formats.day(day);
  return (
    <tr>
      <td>
        <b>{sentenceCase(word('work', kind))}</b> {what}
      </td>
      <td>{[word('workState', state), crew?.name, when].filter(Boolean).join(', ')}</td>
      <td>{[doneNote, leftNote].filter(Boolean).join(' · ')}</td>
      <Num>{typeof cost === 'number' ? formats.money(cost) : ''}</Num>
    </tr>
  );
}
