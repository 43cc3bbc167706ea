import { useQuery } from '@apollo/client/react';
import { type ReactNode, useCallback, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { ReportsPageQuery } from '../../graphql/__generated__/graphql.js';
import { Fetched } from '../../page/Fetched.js';
import { MonthSelect } from '../../page/MonthSelect.js';
import { useAddress } from '../../page/use-address.js';
import { PageHead } from '../../ui/frame/PageHead.js';
import { paths } from '../../page/paths.js';
import { DraftAll } from './drafting/DraftAll.js';
import { DraftOne } from './drafting/DraftOne.js';
import { OneReport } from './one/OneReport.js';
import { isOnlyWritten } from './mail-state.js';
import { MailsToSettle } from './MailsToSettle.js';
import { newestWhole } from './drafting/period.js';
import { Questions, WaitingQuestions } from './Questions.js';
import { ReportTable } from './ReportTable.js';
import './reports.css';
import { UnderWay } from './drafting/UnderWay.js';
import { reportsAddress } from './urls.js';

export const reportsDocument = graphql(`
  query ReportsPage {
    waterReports {
      id
      clientId
      untilOn
      state
      mails {
        id
        state
        answer
      }
      ...ReportRow
      ...MailsToSettle
    }
    clients {
      id
      name
      emails
    }
    properties {
      id
      name
      client {
        id
      }
    }
    portfolio(first: 1) {
      month
      months
      through
    }
    clientQuestions {
      id
      ...ClientQuestion
    }
    reportMailing {
      hasServer
      hasLinks
    }
  }
`);

/** What the clients get: drafts for all in one go, a look at each, approval, sending, and what became of each mail. */
export function ReportsPage() {
  const query = useQuery(reportsDocument, { fetchPolicy: 'cache-and-network' });
  const { refetch } = query;
  const again = useCallback(() => void refetch(), [refetch]);
  return (
    <Fetched query={query}>
      {(data) => (
        <Reports data={data}>
          <UnderWay onEnd={again} />
        </Reports>
      )}
    </Fetched>
  );
}

interface Props {
  readonly data: ReportsPageQuery;
  /** how far the work in the background is */
  readonly children: ReactNode;
}

function Reports({ data, children }: Props) {
  const intl = useIntl();
  const [place, change] = useAddress(reportsAddress);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const { portfolio, waterReports, clients, properties, clientQuestions } = data;
  const month = place.month ?? newestWhole(portfolio.months, portfolio.month, portfolio.through);
  const names = new Map([...clients, ...properties].map(({ id, name }) => [id, name]));
  const byName = (a: { clientId: string }, b: { clientId: string }): number =>
    (names.get(a.clientId) ?? '').localeCompare(names.get(b.clientId) ?? '');
  const reports = waterReports.filter(({ untilOn }) => untilOn.startsWith(month)).sort(byName);
  const chosenIn = (state: string): string[] =>
    reports.filter((report) => report.state === state && chosen.includes(report.id)).map(({ id }) => id);
  const values = countsOf(reports);
  return (
    <>
      <PageHead
        sentence={intl.formatMessage({ id: 'reports.title' }, values)}
        lede={
          <>
            <FormattedMessage id="reports.lede" />{' '}
            <Link to={`${paths.companyMonth}?month=${month}`}>
              <FormattedMessage id="reports.company" />
            </Link>
          </>
        }
        tab={intl.formatMessage({ id: 'frame.reports' })}
        actions={
          <MonthSelect
            months={portfolio.months}
            shown={month}
            through={portfolio.through}
            onChange={(next) => change({ month: next, report: null })}
          />
        }
      />
      <DraftAll
        month={month}
        isEmpty={reports.length === 0}
        drafts={chosenIn('draft')}
        approved={chosenIn('approved')}
        names={names}
        onDone={() => setChosen([])}
      />
      <MailingNote mailing={data.reportMailing} />
      {children}
      <WaitingQuestions questions={clientQuestions} />
      {place.report && (
        <OneReport key={place.report} id={place.report} emails={emailsOf(data, place.report)} onClose={() => change({ report: null })} />
      )}
      <MailsToSettle reports={waterReports} names={names} />
      <div className="report-list">
        <ReportTable reports={reports} names={names} chosen={chosen} onChoose={setChosen} open={place.report} />
      </div>
      <DraftOne month={month} clients={clients} properties={properties} onMade={(report) => change({ report })} />
      <Questions questions={clientQuestions} />
    </>
  );
}

/** How many are how far; what only lies in the outbox folder was not sent. */
function countsOf(reports: ReportsPageQuery['waterReports']) {
  const counted = (state: string): number => reports.filter((report) => report.state === state).length;
  const written = reports.filter(({ state, mails }) => state === 'sent' && isOnlyWritten(mails)).length;
  return { draft: counted('draft'), approved: counted('approved'), sent: counted('sent') - written, written, count: reports.length };
}

/** What whoever runs the server should set before mails leave. */
function MailingNote({ mailing: { hasLinks, hasServer } }: { readonly mailing: ReportsPageQuery['reportMailing'] }) {
  if (hasLinks) return null;
  return (
    <p className="soft mailing-note" role="note">
      <FormattedMessage id={hasServer ? 'reports.mailing.noLinks' : 'reports.mailing.outbox'} />
    </p>
  );
}

/** The addresses of the client whose report it is. */
const emailsOf = ({ waterReports, clients }: ReportsPageQuery, reportId: string): readonly string[] => {
  const clientId = waterReports.find(({ id }) => id === reportId)?.clientId;
  return clients.find(({ id }) => id === clientId)?.emails ?? [];
};
