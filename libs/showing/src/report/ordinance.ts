import { largestOf } from './drawings.js';
import type { Writer } from './figures.js';
import type { PeriodSums } from './period-sums.js';
import { sum } from './period-sums.js';
import type { GivenProperty } from './report-input.js';
import type { ReportPage, ReportTable } from './report-model.js';

/** The statement that an ordinance or a contract asks for: allowance, use, and the hydrozones with their need. */
export function ordinanceOf(writer: Writer, property: GivenProperty, period: string, sums: PeriodSums): ReportPage['ordinance'] {
  const { allowanceFrom } = property;
  if (allowanceFrom !== 'ordinance' && allowanceFrom !== 'contract') return null;
  const { say, because } = writer.words;
  const { allowed, metered, aboveAllowed } = sums;
  const { said, between } = writer.volumes(largestOf([sums]));
  const gap = between(aboveAllowed.litres, metered.litres, allowed.litres);
  const statement =
    gap === null
      ? say('ordinance.unknown', { period, reason: because(allowed.reason ?? metered.reason) })
      : say(`ordinance.${allowanceFrom}`, {
          period,
          allowed: said(allowed.litres),
          metered: said(metered.litres),
          judgement: say(gap > 0 ? 'ordinance.over' : 'ordinance.within', { gap: said(gap) }),
        });
  return { title: say('ordinance.title'), says: `${statement} ${say('ordinance.advice')}`, table: hydrozones(writer, property, sums) };
}

function hydrozones(writer: Writer, { zones }: GivenProperty, { months }: PeriodSums): ReportTable {
  const { say, because } = writer.words;
  const needs = zones.map(({ id }) => sum(months.map((month) => month.zones.find(({ zoneId }) => zoneId === id)?.neededLitres ?? null)));
  const { figure, column } = writer.volumes(Math.max(0, ...needs.map((litres) => litres ?? 0)));
  return {
    id: 'hydrozones',
    title: say('ordinance.hydrozones'),
    heads: [
      say('ordinance.zone'),
      `${say('figure.area')}, ${writer.formats.unitOf('area')}`,
      say('figure.plantFactor'),
      `${say('figure.needed')}, ${column.unit}`,
    ],
    rows: zones.map(({ id, name, areaM2, plantFactor, isSpecial }, at) => {
      const of = (part: string, label: string) => ({
        id: `zone.${id}.${part}`,
        label: `${name}, ${label}`,
        reason: because('volume-absent'),
      });
      return {
        label: isSpecial ? say('ordinance.special', { name }) : name,
        cells: [
          writer.quantity(of('area', say('figure.area')), 'area', areaM2),
          writer.plain(of('plantFactor', say('figure.plantFactor')), plantFactor, 2),
          figure(of('needed', say('figure.needed')), needs[at] ?? null),
        ],
        isTotal: false,
      };
    }),
  };
}
