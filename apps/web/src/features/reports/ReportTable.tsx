import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link, useLocation } from 'react-router';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { ReportRowFragment } from '../../graphql/__generated__/graphql.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { reportFile } from '../../page/paths.js';
import { useMaskedList } from '../../page/use-masked.js';
import { sentenceCase } from '../../page/values/sentence-case.js';
import { EmptyState } from '../../ui/states/States.js';
import { Head, Table } from '../../ui/tables/Table.js';
import { isOnlyWritten } from './mail-state.js';
import { MailWords } from './MailWords.js';
import { openSearch } from './urls.js';

export const reportRow = graphql(`
  fragment ReportRow on WaterReport {
    id
    clientId
    propertyId
    fromOn
    untilOn
    state
    sendAt
    sentAt
    approvedVersion
    mails {
      id
      state
      answer
    }
  }
`);

interface Props {
  readonly reports: readonly (FragmentType<ReportRowFragment> & { readonly id: string })[];
  readonly names: ReadonlyMap<string, string>;
  readonly chosen: readonly string[];
  readonly onChoose: (ids: readonly string[]) => void;
  readonly open: string | null;
}

/** The reports of a month: whose, of when, and how far each is. */
export function ReportTable({ reports: masked, names, chosen, onChoose, open }: Props) {
  const intl = useIntl();
  const reports = useMaskedList(reportRow, masked);
  if (reports.length === 0)
    return (
      <EmptyState sentence={intl.formatMessage({ id: 'reports.empty' })}>
        <FormattedMessage id="reports.emptyHow" />
      </EmptyState>
    );
  const all = reports.map(({ id }) => id);
  const areAllChosen = all.every((id) => chosen.includes(id));
  const toggle = (id: string): void => onChoose(chosen.includes(id) ? chosen.filter((one) => one !== id) : [...chosen, id]);
  return (
    <Table
      name={intl.formatMessage({ id: 'reports.table' })}
      head={
        <tr>
          <Head>
            <input
              type="checkbox"
              aria-label={intl.formatMessage({ id: 'reports.chooseAll' })}
              checked={areAllChosen}
              onChange={() => onChoose(areAllChosen ? [] : all)}
            />
          </Head>
          {(['client', 'period', 'state', 'mails', 'files'] as const).map((head) => (
            <Head key={head}>
              <FormattedMessage id={`reports.head.${head}`} />
            </Head>
          ))}
        </tr>
      }
    >
      {reports.map((report) => (
        <Row
          key={report.id}
          report={report}
          name={names.get(report.clientId) ?? '–'}
          ofProperty={report.propertyId ? (names.get(report.propertyId) ?? '–') : null}
          isChosen={chosen.includes(report.id)}
          isOpen={report.id === open}
          onToggle={() => toggle(report.id)}
        />
      ))}
    </Table>
  );
}

interface RowProps {
  readonly report: ReportRowFragment;
  readonly name: string;
  /** the one property that it is of; null where it is of all */
  readonly ofProperty: string | null;
  readonly isChosen: boolean;
  readonly isOpen: boolean;
  readonly onToggle: () => void;
}

function Row({ report, name, isChosen, isOpen, onToggle, ofProperty }: RowProps) {
  const intl = useIntl();
  const { days, month } = useFormats();
  const { search } = useLocation();
  const isOfMonth = report.fromOn.slice(0, 7) === report.untilOn.slice(0, 7);
  return (
    <tr aria-current={isOpen || undefined}>
      <td>
        <input type="checkbox" aria-label={intl.formatMessage({ id: 'reports.choose' }, { name })} checked={isChosen} onChange={onToggle} />
      </td>
      <td>
        <Link to={{ search: openSearch(search, report.id) }}>{name}</Link>
        {ofProperty && <span className="soft reason">{ofProperty}</span>}
      </td>
      <td>{isOfMonth ? sentenceCase(month(report.untilOn)) : days(report.fromOn, report.untilOn)}</td>
      <td>
        <StateWords report={report} />
        {report.approvedVersion && (
          <span className="soft reason">
            <FormattedMessage id="reports.dataVersion" values={{ version: report.approvedVersion }} />
          </span>
        )}
      </td>
      <td>
        <MailWords mails={report.mails} />
      </td>
      <td>
        <a href={reportFile(report.id, 'pdf')} target="_blank" rel="noreferrer">
          PDF
        </a>
      </td>
    </tr>
  );
}

function StateWords({ report: { state, sendAt, sentAt, mails } }: { readonly report: ReportRowFragment }) {
  const { moment } = useFormats();
  if (state === 'sent')
    return (
      <FormattedMessage id={isOnlyWritten(mails) ? 'reports.state.written' : 'reports.state.sent'} values={{ when: moment(sentAt) }} />
    );
  if (state === 'approved' && sendAt) return <FormattedMessage id="reports.state.waits" values={{ when: moment(sendAt) }} />;
  return <FormattedMessage id={state === 'approved' ? 'reports.state.approved' : 'reports.state.draft'} />;
}
