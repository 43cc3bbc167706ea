import { FormattedMessage, useIntl } from 'react-intl';
import type { CompanyMonthQuery } from '../../../graphql/__generated__/graphql.js';
import type { MessageId } from '../../../i18n/catalogue.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useSays } from '../../../says/use-says.js';
import { Section } from '../../../ui/frame/Section.js';
import { Head, Table } from '../../../ui/tables/Table.js';

/** Findings by kind: how many began and ended in the month, and what those still open cost. */
export function FindingsOfMonth({ findings }: Pick<CompanyMonthQuery['ownersMonth'], 'findings'>) {
  const intl = useIntl();
  const { money } = useFormats();
  const { volume } = useSays();
  // Nothing is a dash; what is not known is said to be so.
  const ofOpen = (value: number | null | undefined, says: (value: number) => string): string =>
    typeof value !== 'number' ? intl.formatMessage({ id: 'company.notKnown' }) : value > 0 ? says(value) : '–';
  const open = findings.reduce((sum, each) => sum + each.open, 0);
  return (
    <Section heading={intl.formatMessage({ id: 'company.findings' }, { open })}>
      {findings.length > 0 && (
        <Table
          name={intl.formatMessage({ id: 'company.findings.table' })}
          head={
            <tr>
              <Head>
                <FormattedMessage id="company.kind" />
              </Head>
              {(['opened', 'resolved', 'open', 'litres', 'lacking', 'money'] as const).map((head) => (
                <Head key={head} isNumber>
                  <FormattedMessage id={`company.${head}`} />
                </Head>
              ))}
            </tr>
          }
        >
          {findings.map((each) => (
            <tr key={each.kind}>
              <td>{intl.formatMessage({ id: `kind.${each.kind}` as MessageId })}</td>
              <td className="num">{each.opened}</td>
              <td className="num">{each.resolved}</td>
              <td className="num">{each.open}</td>
              <td className="num">{ofOpen(each.litres, volume)}</td>
              <td className="num">{ofOpen(each.lackingLitres, volume)}</td>
              <td className="num">{ofOpen(each.money, money)}</td>
            </tr>
          ))}
        </Table>
      )}
    </Section>
  );
}
