import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { MonthOfYearFragment } from '../../graphql/__generated__/graphql.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import type { Names } from '../../says/names.js';
import { AccountGauge } from './AccountGauge.js';
import { scrolls } from '../../ui/tables/scrolls.js';
import { useMaskedList } from '../use-masked.js';
import { useNarrowColumn } from '../use-volume-column.js';
import { isWholeMonth } from '../values/whole-month.js';
import '../page.css';

export const monthOfYear = graphql(`
  fragment MonthOfYear on MonthAccount {
    id
    month
    through
    rainMm
    ...GaugedAccount
    allowed {
      litres
    }
    needed {
      litres
    }
    programmed {
      litres
    }
    metered {
      litres
      estimatedShare
    }
  }
`);

interface Props {
  readonly accounts: readonly FragmentType<MonthOfYearFragment>[];
  /** The month that the page is about. */
  readonly chosen: string | null;
  readonly names: Names;
  readonly hrefOf?: (month: string) => string;
}

const MARKS = ['allowed', 'needed', 'programmed', 'metered'] as const;

const HEAD_WIDTH = 92;
const MONTH_WIDTH = 80;

/** Where not all months fit, the newest are in sight. */
const toTheNewest = (place: HTMLElement | null, name: string): void => {
  if (!place) return;
  place.scrollLeft = place.scrollWidth;
  scrolls(place, name);
};

/** Twelve small gauges on one scale, with rain hanging from the top, and what was metered in figures. */
export function YearOfGauges({ accounts, chosen, names, hrefOf }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const name = intl.formatMessage({ id: 'property.year.table' });
  const months = useMaskedList(monthOfYear, accounts);
  const top = Math.max(0, ...months.flatMap((account) => MARKS.map((mark) => account[mark].litres ?? 0)));
  const column = useNarrowColumn(top);
  return (
    <div className="scroll" ref={(place) => toTheNewest(place, name)}>
      <table className="twelve" style={{ minInlineSize: HEAD_WIDTH + months.length * MONTH_WIDTH }} aria-label={name}>
        <thead>
          <GaugeRow months={months} names={names} top={top} />
          <tr>
            <td />
            {months.map(({ id, month, through }) => (
              <th key={id} scope="col" aria-current={month === chosen ? 'date' : undefined}>
                <MonthName month={month} through={through} href={hrefOf?.(month)} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <FigureRow
            head={intl.formatMessage({ id: 'property.year.metered' }, { unit: column.unit })}
            figures={months.map(({ id, metered }) => [id, column.figure(metered.litres)])}
          />
          <FigureRow
            head={intl.formatMessage({ id: 'property.year.rainFigure' }, { unit: formats.unitOf('depth') })}
            figures={months.map(({ id, rainMm }) => [id, formats.figureOf('depth', rainMm)])}
          />
        </tbody>
      </table>
    </div>
  );
}

interface GaugeRowProps {
  readonly months: readonly MonthOfYearFragment[];
  readonly names: Names;
  readonly top: number;
}

/** Where it hardly rained, a shower must not look like a flood. [mm] */
const LEAST_RAIN_TOP_MM = 25;
const HEADROOM = 1.06;

function GaugeRow({ months, names, top }: GaugeRowProps) {
  const fullMm = Math.max(LEAST_RAIN_TOP_MM, ...months.map(({ rainMm }) => rainMm ?? 0));
  return (
    <tr className="gauges">
      <td className="lab">
        <span>
          <FormattedMessage id="property.year.rain" />
        </span>
        <span>
          <FormattedMessage id="property.year.water" />
        </span>
      </td>
      {months.map((account) => (
        <td key={account.id}>
          <AccountGauge
            account={account}
            size="month"
            names={names}
            {...(top > 0 ? { scaleTopLitres: top * HEADROOM } : {})}
            {...(typeof account.rainMm === 'number' ? { rain: { depthMm: account.rainMm, fullMm } } : {})}
          />
        </td>
      ))}
    </tr>
  );
}

function FigureRow({ head, figures }: { readonly head: string; readonly figures: readonly (readonly [string, string])[] }) {
  return (
    <tr>
      <th scope="row">{head}</th>
      {figures.map(([id, figure]) => (
        <td key={id} className="num">
          {figure}
        </td>
      ))}
    </tr>
  );
}

interface NameProps {
  readonly month: string;
  readonly through: string;
  readonly href: string | undefined;
}

/** The month; its year where the year begins; how far it goes where it is under way. */
function MonthName({ month, through, href }: NameProps) {
  const formats = useFormats();
  const words = month.endsWith('-01') ? `${formats.monthShort(month)} ${month.slice(0, 4)}` : formats.monthShort(month);
  return (
    <>
      {href ? <Link to={href}>{words}</Link> : words}
      {!isWholeMonth(through) && (
        <span className="soft">
          {' '}
          <FormattedMessage id="property.year.toDay" values={{ day: Number(through.slice(8)) }} />
        </span>
      )}
    </>
  );
}
