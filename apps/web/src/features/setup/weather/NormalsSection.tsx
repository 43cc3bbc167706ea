import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { NormalsSectionFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../page/use-masked.js';
import { sentenceCase } from '../../../page/values/sentence-case.js';
import { Section } from '../../../ui/frame/Section.js';
import { Head, Num, Table } from '../../../ui/tables/Table.js';
import { useColumnFigure } from './use-column-figure.js';

const normalsSection = graphql(`
  fragment NormalsSection on WeatherStation {
    id
    normals {
      month
      days
      etoMm
      tmaxC
      tminC
      reason
    }
  }
`);

/** What is usual at the station in each month, from its own days. */
export function NormalsSection({ station }: { readonly station: FragmentType<NormalsSectionFragment> }) {
  const intl = useIntl();
  const { monthShort, number, unitOf } = useFormats();
  const inColumn = useColumnFigure();
  const { normals } = useMasked(normalsSection, station);
  const heading = intl.formatMessage({ id: 'weather.normals.heading' }, { known: normals.filter(({ reason }) => reason === null).length });
  const units = { temperature: unitOf('temperature'), depth: unitOf('depth') };
  return (
    <Section heading={heading} note={<FormattedMessage id="weather.normals.note" />}>
      <div className="narrow">
        <Table
          isTight
          name={heading}
          head={
            <tr>
              <Head>
                <FormattedMessage id="weather.head.month" />
              </Head>
              <Head isNumber>
                <FormattedMessage id="weather.head.days" />
              </Head>
              <Head isNumber>
                <FormattedMessage id="weather.head.high" values={units} />
              </Head>
              <Head isNumber>
                <FormattedMessage id="weather.head.low" values={units} />
              </Head>
              <Head isNumber>
                <FormattedMessage id="weather.head.etoOfDay" values={units} />
              </Head>
            </tr>
          }
        >
          {normals.map(({ month, days, etoMm, tmaxC, tminC }) => (
            <tr key={month}>
              <td>{sentenceCase(monthShort(`2000-${String(month).padStart(2, '0')}`))}</td>
              <Num>{number(days)}</Num>
              <Num>{inColumn('temperature', tmaxC)}</Num>
              <Num>{inColumn('temperature', tminC)}</Num>
              <Num>{inColumn('depth', etoMm)}</Num>
            </tr>
          ))}
        </Table>
      </div>
    </Section>
  );
}
