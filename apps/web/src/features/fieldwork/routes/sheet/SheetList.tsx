import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMaskedList } from '../../../../page/use-masked.js';
import { sentenceCase } from '../../../../page/values/sentence-case.js';
import { Head, Num, Table } from '../../../../ui/tables/Table.js';
import { useOrderWords } from '../../use-order-words.js';
import { StopWhen, timeOf, type TimeOnSheet } from './StopWhen.js';

const listedStop = graphql(`
  fragment ListedStop on Stop {
    id
    property {
      id
      name
      address
      city
      ...HoursOnSheet
    }
    workOrders {
      id
      kind
      what
      estimateMinutes
    }
  }
`);

interface Props {
  /** YYYY-MM-DD */
  readonly day: string;
  readonly times: readonly TimeOnSheet[];
  readonly stops: readonly FragmentType<typeof listedStop>[];
}

/** The whole day on one page: where to go in which order, what for, and a box for each that is done. */
export function SheetList({ day, times, stops: masked }: Props) {
  const intl = useIntl();
  const { minutes } = useFormats();
  const orderWords = useOrderWords();
  const stops = useMaskedList(listedStop, masked);
  return (
    <Table
      name={intl.formatMessage({ id: 'sheet.list' })}
      isTight
      head={
        <tr>
          <Head>
            <FormattedMessage id="sheet.list.stop" />
          </Head>
          <Head>
            <FormattedMessage id="sheet.list.work" />
          </Head>
          <Head isNumber>
            <FormattedMessage id="sheet.list.minutes" />
          </Head>
          <Head>
            <FormattedMessage id="sheet.list.done" />
          </Head>
        </tr>
      }
    >
      {stops.map(({ id, property, workOrders }, at) => (
        <tr key={id}>
          <th scope="row">
            {at + 1}. {property.name}
            <small>{[property.address, property.city].filter(Boolean).join(', ')}</small>
            <small className="sheet-when">
              <StopWhen day={day} time={timeOf(times, id)} property={property} />
            </small>
          </th>
          <td>{workOrders.map(orderWords).join('; ') || sentenceCase(intl.formatMessage({ id: 'monthPlan.visit' }))}</td>
          <Num>{minutesOf(workOrders, minutes)}</Num>
          <td>
            <span className="box" aria-hidden="true" />
          </td>
        </tr>
      ))}
    </Table>
  );
}

/** The estimates together; nothing where one of them is not known. */
function minutesOf(orders: readonly { readonly estimateMinutes?: number | null }[], inWords: (minutes: number) => string): string {
  const known = orders.flatMap(({ estimateMinutes }) => (typeof estimateMinutes === 'number' ? [estimateMinutes] : []));
  return known.length === orders.length && known.length > 0 ? inWords(known.reduce((sum, one) => sum + one, 0)) : '';
}
