import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { FindingsWeekQuery } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../page/Fetched.js';
import { paths } from '../../../page/paths.js';
import { RainLink } from '../../../page/work/RainLink.js';
import { PageHead } from '../../../ui/frame/PageHead.js';
import { Section } from '../../../ui/frame/Section.js';
import { seldomUsefulOf } from '../list/seldom-useful.js';
import { FindingsOfWeek } from './FindingsOfWeek.js';
import { PacesOfWeek } from './PacesOfWeek.js';

const findingsWeekDocument = graphql(`
  query FindingsWeek {
    findingsWeek {
      from
      through
      stillWaiting
      stillWaitingMoney
      paces {
        shortShare
        longShare
        verdict
        through
        property {
          id
          name
        }
      }
      begun {
        id
        kind
        ...FindingOfWeek
      }
      cameBack {
        id
        kind
        ...FindingOfWeek
      }
      ended {
        id
        kind
        ...FindingOfWeek
      }
    }
    findingPrecision {
      kind
      isSeldomUseful
    }
  }
`);

/** What the last seven days brought, to be read once a week: where to go now, what is new, what came back, what ended. */
export function WeekPage() {
  const query = useQuery(findingsWeekDocument, { fetchPolicy: 'cache-and-network' });
  return (
    <Fetched query={query}>
      {({ findingsWeek, findingPrecision }) => <Week week={findingsWeek} seldomUseful={seldomUsefulOf(findingPrecision)} />}
    </Fetched>
  );
}

interface Props {
  readonly week: FindingsWeekQuery['findingsWeek'];
  readonly seldomUseful: ReadonlySet<string>;
}

function Week({ week, seldomUseful }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const { begun, cameBack, ended, paces, stillWaiting, stillWaitingMoney } = week;
  const money = typeof stillWaitingMoney === 'number' ? formats.money(stillWaitingMoney) : 'none';
  return (
    <>
      <PageHead
        crumb={
          <>
            <Link to={paths.findings}>
              <FormattedMessage id="findings.title" />
            </Link>
            {' · '}
            {intl.formatMessage({ id: 'week.crumb' }, { from: formats.day(week.from), through: formats.day(week.through) })}
          </>
        }
        sentence={intl.formatMessage({ id: 'week.sentence' }, { begun: begun.length, back: cameBack.length, ended: ended.length })}
        tab={intl.formatMessage({ id: 'week.link' })}
        lede={intl.formatMessage({ id: 'week.lede' }, { count: stillWaiting, money })}
      />
      <RainLink />
      {paces.length > 0 && <PacesOfWeek paces={paces} />}
      {(['begun', 'cameBack', 'ended'] as const).map((what) =>
        week[what].length === 0 ? null : (
          <Section key={what} heading={intl.formatMessage({ id: `week.${what}` }, { count: week[what].length })}>
            <FindingsOfWeek
              name={intl.formatMessage({ id: `week.${what}` }, { count: week[what].length })}
              findings={week[what]}
              seldomUseful={seldomUseful}
            />
          </Section>
        ),
      )}
    </>
  );
}
