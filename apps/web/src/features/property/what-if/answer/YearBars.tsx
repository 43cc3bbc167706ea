import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useNarrowColumn } from '../../../../page/use-volume-column.js';

interface Props {
  readonly months: readonly string[];
  readonly now: readonly (number | null)[];
  readonly then: readonly (number | null)[];
}

const Bar = ({
  kind,
  litres,
  top,
}: {
  readonly kind: 'now' | 'then';
  readonly litres: number | null | undefined;
  readonly top: number;
}) => <span className={litres ? `bar ${kind}` : 'bar none'} style={{ blockSize: `${litres ? (100 * litres) / top : 0}%` }} />;

/** Twelve months on one scale: what is needed now as an open bar, what would be needed filled before it; both in figures. */
export function YearBars({ months, now, then }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const top = Math.max(0, ...now.map((litres) => litres ?? 0), ...then.map((litres) => litres ?? 0));
  const { unit, figure } = useNarrowColumn(top);
  const [asNow, asThen] = [intl.formatMessage({ id: 'whatIf.bars.now' }), intl.formatMessage({ id: 'whatIf.bars.then' })];
  return (
    <>
      <p className="bars-key xs soft">
        <span className="bar now" aria-hidden="true" /> {asNow}
        <span className="bar then" aria-hidden="true" /> {asThen}
        <span>
          <FormattedMessage id="whatIf.bars.unit" values={{ unit }} />
        </span>
      </p>
      <ol className="year-bars" aria-label={intl.formatMessage({ id: 'whatIf.bars' }, { unit })}>
        {months.map((month, at) => (
          <li key={month}>
            <span className="pair" aria-hidden="true">
              <Bar kind="now" litres={now[at]} top={top} />
              <Bar kind="then" litres={then[at]} top={top} />
            </span>
            <span className="month">{formats.monthShort(month)}</span>
            <span className="soft">
              <span className="vh">{asNow} </span>
              {figure(now[at])}
            </span>
            <span>
              <span className="vh">{asThen} </span>
              {figure(then[at])}
            </span>
          </li>
        ))}
      </ol>
    </>
  );
}
