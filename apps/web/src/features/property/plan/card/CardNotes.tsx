import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { clockInWords } from '../../../../programs/days-in-words.js';
import type { CardMonth, CardProgram } from './card-document.js';

/** A start after this is nobody's night. */
const MORNING = '06:00';
/** What a month gets may be this much of its need before the card says that it is too much. [–] */
const FAR_OVER = 1.25;
/** And this little before it says that it is too little. [–] */
const FAR_UNDER = 0.75;

/** Which night a start after midnight is in, told by the earliest; nothing where every day is watered, or none starts so early. */
export function NightOfStarts({ programs }: { readonly programs: readonly CardProgram[] }) {
  const formats = useFormats();
  const [earliest] = programs
    .filter(({ days }) => days !== 'daily')
    .flatMap(({ starts }) => starts)
    .filter((clock) => clock < MORNING)
    .sort();
  if (earliest === undefined) return null;
  return (
    <p className="soft">
      <FormattedMessage id="card.night" values={{ clock: clockInWords(formats, earliest) }} />
    </p>
  );
}

/** Whose weather the card is made from: the years, and whether any month stands on one alone. */
export function WeatherOfCard({ months }: { readonly months: readonly CardMonth[] }) {
  const intl = useIntl();
  const years = [...new Set(months.flatMap(({ needMonths }) => needMonths.map((month) => month.slice(0, 4))))].sort();
  const counts = months.map(({ needMonths }) => needMonths.length);
  const values = {
    years: intl.formatList(years, { type: 'conjunction' }),
    fewest: Math.min(...counts),
    most: Math.max(...counts),
  };
  return <FormattedMessage id="card.weather" values={values} />;
}

/** Months in which percents and days give far more or far less than is needed: what would fit them better. */
export function MonthsMissed({ months }: { readonly months: readonly CardMonth[] }) {
  const missed = (isMissed: (used: number, needed: number) => boolean) =>
    months.filter(({ isOff, neededLitres, usedLitres }) => !isOff && typeof usedLitres === 'number' && isMissed(usedLitres, neededLitres));
  return (
    <>
      <MonthsNote id="card.over" months={missed((used, needed) => used > FAR_OVER * needed)} />
      <MonthsNote id="card.under" months={missed((used, needed) => used < FAR_UNDER * needed)} />
    </>
  );
}

function MonthsNote({ id, months }: { readonly id: 'card.over' | 'card.under'; readonly months: readonly CardMonth[] }) {
  const intl = useIntl();
  if (months.length === 0) return null;
  const names = months.map(({ month }) => intl.formatDate(`${month}-15`, { month: 'long', timeZone: 'UTC' }));
  return (
    <p className="planned">
      <FormattedMessage id={id} values={{ count: months.length, months: intl.formatList(names, { type: 'conjunction' }) }} />
    </p>
  );
}
