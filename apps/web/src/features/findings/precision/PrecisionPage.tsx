import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { FindingPrecisionQuery } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../page/Fetched.js';
import { paths } from '../../../page/paths.js';
import { sentenceCase } from '../../../page/values/sentence-case.js';
import { useSays } from '../../../says/use-says.js';
import { PageHead } from '../../../ui/frame/PageHead.js';
import { EmptyState } from '../../../ui/states/States.js';
import { Head, Num, Table } from '../../../ui/tables/Table.js';

const findingPrecisionDocument = graphql(`
  query FindingPrecision {
    findingPrecision {
      kind
      decided
      ledToWork
      confirmed
      share
      isSeldomUseful
    }
  }
`);

/** How often findings of each kind were worth a look, of those that this organization decided. */
export function PrecisionPage() {
  const query = useQuery(findingPrecisionDocument, { fetchPolicy: 'cache-and-network' });
  return <Fetched query={query}>{({ findingPrecision }) => <Precision kinds={findingPrecision} />}</Fetched>;
}

function Precision({ kinds }: { readonly kinds: FindingPrecisionQuery['findingPrecision'] }) {
  const intl = useIntl();
  const formats = useFormats();
  const { word } = useSays();
  const decided = kinds.reduce((sum, kind) => sum + kind.decided, 0);
  const useful = kinds.reduce((sum, kind) => sum + kind.ledToWork + kind.confirmed, 0);
  return (
    <>
      <PageHead
        crumb={
          <Link to={paths.findings}>
            <FormattedMessage id="findings.title" />
          </Link>
        }
        sentence={intl.formatMessage({ id: 'precision.sentence' }, { decided, useful })}
        tab={intl.formatMessage({ id: 'precision.link' })}
        lede={<FormattedMessage id="precision.lede" />}
      />
      {kinds.length === 0 ? (
        <EmptyState sentence={intl.formatMessage({ id: 'precision.empty' })}>
          {intl.formatMessage({ id: 'precision.empty.how' })}
        </EmptyState>
      ) : (
        <Table
          name={intl.formatMessage({ id: 'precision.link' })}
          head={
            <tr>
              <Head>
                <FormattedMessage id="findings.kind" />
              </Head>
              {(['decided', 'work', 'confirmed', 'share'] as const).map((what) => (
                <Head key={what} isNumber>
                  <FormattedMessage id={`precision.${what}`} />
                </Head>
              ))}
            </tr>
          }
        >
          {kinds.map(({ kind, decided: own, ledToWork, confirmed, share, isSeldomUseful }) => (
            <tr key={kind}>
              <td>
                {sentenceCase(word('kind', kind))}
                {isSeldomUseful && (
                  <strong className="seldom">
                    <FormattedMessage id="precision.seldom" />
                  </strong>
                )}
              </td>
              <Num>{formats.number(own)}</Num>
              <Num>{formats.number(ledToWork)}</Num>
              <Num>{formats.number(confirmed)}</Num>
              <Num>{formats.percent(share)}</Num>
            </tr>
          ))}
        </Table>
      )}
    </>
  );
}
