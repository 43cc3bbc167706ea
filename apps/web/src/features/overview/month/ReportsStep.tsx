import { FormattedMessage } from 'react-intl';
import type { MonthPageQuery } from '../../../graphql/__generated__/graphql.js';

interface Props {
  readonly reports: MonthPageQuery['waterReports'];
  readonly month: string;
}

/** The last step: what the clients get. A report counts in the month in which its time ends. */
export function ReportsStep({ reports, month }: Props) {
  const own = reports.filter(({ untilOn }) => untilOn.startsWith(month));
  const sent = own.filter(({ state }) => state === 'sent').length;
  return (
    <li>
      <div className="t">
        <h2 className="minor">
          <FormattedMessage id="overview.step.reports" />
        </h2>
        <span>
          <FormattedMessage id="overview.step.of" values={{ done: sent, total: own.length, b: (words) => <b key="done">{words}</b> }} />
        </span>
      </div>
      <p className="w">
        {own.length > 0 ? (
          <FormattedMessage id="overview.step.reports.drafts" values={{ count: own.length - sent }} />
        ) : (
          <FormattedMessage id="overview.step.reports.none" />
        )}
      </p>
    </li>
  );
}
