import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import type { FindingsWeekQuery } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { paths } from '../../../page/paths.js';
import { Section } from '../../../ui/frame/Section.js';
import { Head, Num, Table } from '../../../ui/tables/Table.js';

type Paces = FindingsWeekQuery['findingsWeek']['paces'];

/** Places that use water faster than they are allowed: first those where somebody has to go now. */
export function PacesOfWeek({ paces }: { readonly paces: Paces }) {
  const intl = useIntl();
  const formats = useFormats();
  const urgent = paces.filter(({ verdict }) => verdict === 'act now').length;
  const name = intl.formatMessage({ id: 'week.paces' }, { urgent, count: paces.length });
  return (
    <Section heading={name} note={intl.formatMessage({ id: 'week.paces.note' })}>
      <Table
        name={name}
        isTight
        head={
          <tr>
            <Head>
              <FormattedMessage id="week.paces.property" />
            </Head>
            <Head isNumber>
              <FormattedMessage id="week.paces.short" />
            </Head>
            <Head isNumber>
              <FormattedMessage id="week.paces.long" />
            </Head>
            <Head>
              <FormattedMessage id="week.paces.what" />
            </Head>
          </tr>
        }
      >
        {paces.map(({ property, shortShare, longShare, verdict, through }) => (
          <tr key={property.id}>
            <td>
              <Link to={paths.property(property.id)}>{property.name}</Link>{' '}
              <span className="soft xs">
                <FormattedMessage id="week.paces.through" values={{ day: formats.day(through) }} />
              </span>
            </td>
            <Num>{formats.percent(shortShare)}</Num>
            <Num>{formats.percent(longShare)}</Num>
            <td>
              {verdict === 'act now' ? (
                <b className="clay">{intl.formatMessage({ id: 'week.paces.now' })}</b>
              ) : (
                <FormattedMessage id="week.paces.watch" />
              )}
            </td>
          </tr>
        ))}
      </Table>
    </Section>
  );
}
