import { useQuery } from '@apollo/client/react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { MonthPageQuery } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../page/Fetched.js';
import { MonthSelect } from '../../../page/MonthSelect.js';
import { sentenceCase } from '../../../page/values/sentence-case.js';
import { RainLink } from '../../../page/work/RainLink.js';
import { useAddress } from '../../../page/use-address.js';
import { PageHead } from '../../../ui/frame/PageHead.js';
import '../../../ui/tables/tables.css';
import '../overview.css';
import { NoProperties } from '../NoProperties.js';
import { monthSteps } from './month-steps.js';
import { MonthStrip } from './MonthStrip.js';
import { ReportsStep } from './ReportsStep.js';
import { RhythmStep } from './RhythmStep.js';
import { StepKey } from './StepMarks.js';
import { monthAddress } from './urls.js';

export const monthPageDocument = graphql(`
  query MonthPage($month: Month) {
    monthBoard(month: $month) {
      month
      properties
      readingsIn
      accountsComputed
      findingsOpen
      findingsDecided
      workGivenOut
      workDone
      workWaitingForApproval
    }
    portfolio(month: $month, sort: money, first: 500) {
      month
      months
      through
      rows {
        findingCount
        property {
          id
          name
        }
        account {
          id
          ...GaugedAccount
          metered {
            litres
          }
          needed {
            litres
          }
        }
        topFinding {
          id
          state
        }
      }
    }
    findings(state: ["open"]) {
      id
      money
      fromOn
      untilOn
    }
    workOrders(state: ["waiting for approval", "open", "given out"]) {
      id
      state
      day
      property {
        id
        name
      }
    }
    waterReports {
      id
      fromOn
      untilOn
      state
    }
  }
`);

/** How far this month is; each count opens its list. */
export function MonthPage() {
  const [{ month }, change] = useAddress(monthAddress);
  const query = useQuery(monthPageDocument, { variables: { month }, fetchPolicy: 'cache-and-network' });
  const shown = { ...query, data: query.data ?? query.previousData };
  return (
    <Fetched query={shown}>
      {(data) =>
        data.monthBoard.properties === 0 ? <NoProperties /> : <Month data={data} onMonth={(chosen) => change({ month: chosen })} />
      }
    </Fetched>
  );
}

function Month({ data, onMonth }: { readonly data: MonthPageQuery; readonly onMonth: (month: string) => void }) {
  const intl = useIntl();
  const formats = useFormats();
  const { monthBoard: board, portfolio } = data;
  const sentence = intl.formatMessage(
    { id: 'overview.month.title' },
    { month: formats.month(board.month), findings: board.findingsOpen, accounts: board.properties - board.accountsComputed },
  );
  return (
    <>
      <PageHead
        sentence={sentenceCase(sentence)}
        tab={intl.formatMessage({ id: 'overview.month.tab' })}
        actions={<MonthSelect months={portfolio.months} shown={portfolio.month} through={portfolio.through} onChange={onMonth} />}
      />
      <RainLink />
      <MonthStrip month={board.month} through={portfolio.through ?? null} />
      <ol className="rhythm">
        {monthSteps(data).map((step) => (
          <RhythmStep key={step.name} step={step} data={data} />
        ))}
        <ReportsStep reports={data.waterReports} month={board.month} />
      </ol>
      <StepKey />
    </>
  );
}
