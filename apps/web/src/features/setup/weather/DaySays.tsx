import { FormattedMessage, useIntl } from 'react-intl';
import type { WeatherDayRowFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { sentenceCase } from '../../../page/values/sentence-case.js';
import { wordOf } from '../../../says/saying.js';

type Marks = WeatherDayRowFragment['marks'];

/** Marks of one reason, with the values that have it. */
const byReason = (marks: Marks): readonly { readonly reason: string; readonly effect: string; readonly values: readonly string[] }[] =>
  [...new Set(marks.map(({ reason }) => reason))].map((reason) => {
    const same = marks.filter((mark) => mark.reason === reason);
    return { reason, effect: same[0]!.effect, values: [...new Set(same.map(({ value }) => value))] };
  });

/** What is said of a day: its marks, where an estimate is from, why there is no value. */
export function DaySays({ day }: { readonly day: WeatherDayRowFragment }) {
  const intl = useIntl();
  const { quantity } = useFormats();
  const { marks, filling, etoReason, rainFromNeighbour, reckonedRainSdMm } = day;
  return (
    <>
      {byReason(marks).map(({ reason, effect, values }) => (
        <span key={reason} className="mend">
          {sentenceCase(intl.formatList(values.map((value) => wordOf(intl, 'weather.value', value))))}:{' '}
          {wordOf(intl, 'weather.reason', reason)} ({wordOf(intl, 'weather.effect', effect)}).
        </span>
      ))}
      {filling && (
        <span className="mend">
          <FormattedMessage
            id={filling.source === 'neighbour' ? 'weather.filled.neighbour' : 'weather.filled.normals'}
            values={{ station: filling.stationName ?? '', days: filling.days }}
          />
        </span>
      )}
      {rainFromNeighbour && (
        <span className="mend">
          <FormattedMessage id="weather.filled.rain" values={{ depth: quantity('depth', reckonedRainSdMm) }} />
        </span>
      )}
      {etoReason && <span className="mend">{wordOf(intl, 'weather.none', etoReason)}</span>}
    </>
  );
}
