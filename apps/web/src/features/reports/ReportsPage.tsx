import { useQuery } from '@apollo/client/react';
import { useState } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { ReportsPageQuery } from '../../graphql/__generated__/graphql.js';
import { Fetched } from '../../page/Fetched.js';
import { MonthSelect } from '../../page/MonthSelect.js';
import { useAddress } from '../../page/use-address.js';
import { PageHead } from '../../ui/frame/PageHead.js';
import { DraftAll } from './DraftAll.js';
import { OneReport } from './one/OneReport.js';
import { Questions } from './Questions.js';
import { ReportTable } from './ReportTable.js';
import './reports.css';
import { reportsAddress } from './urls.js';

export const reportsDocument = graphql(`
  query ReportsPage {
    waterReports {
      id
      untilOn
      state
      ...ReportRow
    }
    clients {
      id
      name
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
  }
`);

/** What the clients get: drafts for all in one go, a look at each, approval, sending, and what became of each mail. */
export function ReportsPage() {
  const query = useQuery(reportsDocument, { fetchPolicy: 'cache-and-network' });
  return <Fetched query={query}>{(data) => <Reports data={data} />}</Fetched>;
}

function Reports({ data }: { readonly data: ReportsPageQuery }) {
  const intl = useIntl();
  const [place, change] = useAddress(reportsAddress);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const { portfolio, waterReports, clients, clientQuestions } = data;
  const month = place.month ?? portfolio.month;
  const reports = waterReports.filter(({ untilOn }) => untilOn.startsWith(month));
  const counted = (state: string): number => reports.filter((report) => report.state === state).length;
  const values = { draft: counted('draft'), approved: counted('approved'), sent: counted('sent'), count: reports.length };
  return (
    <>
      <PageHead
        sentence={intl.formatMessage({ id: 'reports.title' }, values)}
        lede={intl.formatMessage({ id: 'reports.lede' })}
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
      <DraftAll month={month} chosen={chosen.filter((id) => reports.some((report) => report.id === id))} onDone={() => setChosen([])} />
      <ReportTable
        reports={reports}
        names={new Map(clients.map(({ id, name }) => [id, name]))}
        chosen={chosen}
        onChoose={setChosen}
        open={place.report}
        onOpen={(report) => change({ report })}
      />
      {place.report && <OneReport key={place.report} id={place.report} onClose={() => change({ report: null })} />}
      <Questions questions={clientQuestions} />
    </>
  );
}
