import { FormattedMessage } from 'react-intl';
import { Link } from 'react-router';
import type { MonthPageQuery } from '../../../graphql/__generated__/graphql.js';
import type { MessageId } from '../../../i18n/catalogue.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { paths } from '../../../page/paths.js';
import type { Step, StepName } from './month-steps.js';
import { NameList } from './NameList.js';
import { StepMarks } from './StepMarks.js';

interface Props {
  readonly step: Step;
  readonly data: MonthPageQuery;
}

const HEADS: Readonly<Record<StepName, MessageId>> = {
  readings: 'overview.step.readings',
  accounts: 'overview.step.accounts',
  findings: 'overview.step.findings',
  work: 'overview.step.work',
  done: 'overview.step.done',
};

const listOf = (name: StepName, month: string): string =>
  ({
    readings: `/?why=not+counted&month=${month}`,
    accounts: `/?why=not+counted&month=${month}`,
    findings: paths.findings,
    work: `${paths.findings}?state=in+work`,
    done: paths.routes,
  })[name];

/** One step of the month: its count, which opens its list; a mark for each property; what holds it up, in words. */
export function RhythmStep({ step, data }: Props) {
  const { name, done, total, cells } = step;
  return (
    <li>
      <div className="t">
        <h2 className="minor">
          <FormattedMessage id={HEADS[name]} />
        </h2>
        <Link to={listOf(name, data.monthBoard.month)}>
          <FormattedMessage id="overview.step.of" values={{ done, total, b: (words) => <b key="done">{words}</b> }} />
        </Link>
      </div>
      <StepMarks cells={cells} />
      <p className="w">
        <StepWords step={step} data={data} />
      </p>
    </li>
  );
}

function StepWords({ step: { name, lacking }, data }: Props) {
  const { month } = data.monthBoard;
  const names = <NameList properties={lacking} month={month} />;
  switch (name) {
    case 'readings':
    case 'accounts':
      return lacking.length === 0 ? (
        <FormattedMessage id={`overview.step.${name}.all`} />
      ) : (
        <FormattedMessage id={`overview.step.${name}.lack`} values={{ names }} />
      );
    case 'findings':
      return <OpenFindings findings={data.findings.filter(hadBegunBy(month))} />;
    case 'work':
      return (
        <>
          {lacking.length === 0 ? (
            <FormattedMessage id="overview.step.work.all" />
          ) : (
            <FormattedMessage id="overview.step.work.lack" values={{ names }} />
          )}{' '}
          {data.monthBoard.workWaitingForApproval > 0 && (
            <FormattedMessage id="overview.step.work.approval" values={{ count: data.monthBoard.workWaitingForApproval }} />
          )}
        </>
      );
    case 'done':
      return lacking.length === 0 ? (
        <FormattedMessage id="overview.step.done.none" />
      ) : (
        <FormattedMessage id="overview.step.done.next" values={{ names }} />
      );
  }
}

/** What begins after a month was not there to be decided in it. */
const hadBegunBy =
  (month: string) =>
  ({ fromOn, untilOn }: MonthPageQuery['findings'][number]): boolean =>
    (fromOn ?? untilOn ?? '').slice(0, 7) <= month;

function OpenFindings({ findings }: Pick<MonthPageQuery, 'findings'>) {
  const formats = useFormats();
  const dearest = [...findings].sort((one, other) => (other.money ?? 0) - (one.money ?? 0))[0];
  if (!dearest) return <FormattedMessage id="overview.step.findings.none" />;
  const sum = findings.reduce((total, { money }) => total + (money ?? 0), 0);
  return (
    <>
      <FormattedMessage
        id="overview.step.findings.open"
        values={{ count: findings.length, money: sum > 0 ? formats.money(sum) : 'none' }}
      />
      <Link to={paths.finding(dearest.id)}>
        <FormattedMessage id="overview.step.findings.start" />
      </Link>
    </>
  );
}
