import type { ReportWord } from '../../words/en/report.js';
import { isWithin } from './drawings.js';
import type { FigureOf, VolumeFigures, Writer } from '../figures.js';
import type { PeriodSums } from '../period-sums.js';
import type { GivenMonth } from '../report-input.js';
import type { Figure, ReportRow, ReportTable } from '../report-model.js';
import { moneyOf } from './money-of.js';
import { withNotes } from '../table-notes.js';

const VOLUMES = ['allowed', 'needed', 'programmed', 'metered'] as const;

/** The figures of the period, as the table and the files have them. */
export function periodFigures(writer: Writer, sums: PeriodSums, volumes: VolumeFigures, confidence: number): Figure[] {
  const { figure, between } = volumes;
  const of = (id: string, reason: string | null = null): FigureOf => ({
    id,
    label: writer.words.say(`figure.${id}` as ReportWord),
    reason: reason === null ? null : writer.words.because(reason),
  });
  return [
    ...VOLUMES.map((name) => figure(of(name, sums[name].reason), sums[name].litres)),
    figure(
      of('aboveNeed', sums.metered.reason ?? sums.needed.reason),
      between(sums.aboveNeed.litres, sums.metered.litres, sums.needed.litres),
    ),
    gapMoney(writer, { id: 'aboveNeedMoney', label: writer.words.say('figure.aboveNeedMoney') }, { sums, volumes, confidence }),
    figure(
      of('aboveAllowed', sums.metered.reason ?? sums.allowed.reason),
      between(sums.aboveAllowed.litres, sums.metered.litres, sums.allowed.litres),
    ),
    writer.quantity(of('rain', 'weather-missing'), 'depth', sums.rainMm),
    writer.quantity(of('eto', 'weather-missing'), 'depth', sums.etoMm),
  ];
}

/** A difference to the need, and how it is written. */
interface ToNeed {
  readonly sums: PeriodSums;
  readonly volumes: VolumeFigures;
  readonly confidence: number;
}

/** What a difference to the need is worth, as it is written; of one that may be chance nothing is said. */
export function gapMoney(writer: Writer, of: Omit<FigureOf, 'reason'>, { sums, volumes, confidence }: ToNeed): Figure {
  const { aboveNeed, metered, needed } = sums;
  const isChance = isWithin(aboveNeed, confidence);
  const priced = aboveNeed.money === null ? 'no-price' : 'prices-differ';
  const reason = isChance ? 'within-measure' : (metered.reason ?? needed.reason ?? priced);
  const money = moneyOf(aboveNeed, volumes.between(aboveNeed.litres, metered.litres, needed.litres));
  return writer.money({ ...of, reason: writer.words.because(reason) }, isChance ? null : money);
}

/** Page 2: figures of the period, one under the other. */
export function periodTable(writer: Writer, figures: readonly Figure[]): ReportTable {
  const { say } = writer.words;
  const rows = figures.map((figure) => ({ label: withUnit(figure), cells: [figure], isTotal: false }));
  return withNotes({ id: 'period', title: say('period.title'), heads: [say('period.what'), say('period.value')], rows }, (count) =>
    say('table.more', { count }),
  );
}

const withUnit = ({ label, unit }: Figure): string => (unit && !/^[A-Z]{3}$/.test(unit) ? `${label}, ${unit}` : label);

/** Page 2: the months, the newest last, in one unit and one rounding, and what they add up to. */
export function monthTable(writer: Writer, months: readonly GivenMonth[], volumes: VolumeFigures): ReportTable {
  const { say } = writer.words;
  const { figure, column, between } = volumes;
  const label = (id: string): string => say(`figure.${id}` as ReportWord);
  const depth = writer.formats.unitOf('depth');
  const table = {
    id: 'months',
    title: say('table.title'),
    heads: [
      say('table.month'),
      ...VOLUMES.map((name) => `${label(name)}, ${column.unit}`),
      `${label('aboveNeed')}, ${column.unit}`,
      `${label('rain')}, ${depth}`,
      `${label('etoShort')}, ${depth}`,
    ],
    rows: months.map((month): ReportRow => {
      const of = (id: string, reason: string | null): FigureOf => ({
        id: `month.${month.month}.${id}`,
        label: `${writer.formats.month(month.month)}, ${label(id)}`,
        reason: reason === null ? null : writer.words.because(reason),
      });
      return {
        label: writer.formats.month(month.month),
        cells: [
          ...VOLUMES.map((name) => figure(of(name, month[name].reason), month[name].litres)),
          figure(
            of('aboveNeed', month.metered.reason ?? month.needed.reason),
            between(month.aboveNeed.litres, month.metered.litres, month.needed.litres),
          ),
          writer.quantity(of('rain', 'weather-missing'), 'depth', month.rainMm),
          writer.quantity(of('eto', 'weather-missing'), 'depth', month.etoMm),
        ],
        isTotal: false,
      };
    }),
  };
  return withNotes(table, (count) => say('table.more', { count }));
}
