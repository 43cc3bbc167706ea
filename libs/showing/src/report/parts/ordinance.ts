import type { VolumeFigures, Writer } from '../figures.js';
import { type PeriodSums, sum } from '../period-sums.js';
import type { GivenAllowance, GivenProperty, GivenZone } from '../report-input.js';
import type { ReportPage, ReportRow, ReportTable } from '../report-model.js';
import { withNotes } from '../table-notes.js';

/** What a statement is of. */
interface Stated {
  readonly property: GivenProperty;
  readonly period: string;
  readonly sums: PeriodSums;
  readonly volumes: VolumeFigures;
}

/** The statement that an ordinance or a contract asks for: allowance, use, what the allowance is made of, and the hydrozones with their need. */
export function ordinanceOf(writer: Writer, { property, period, sums, volumes }: Stated): ReportPage['ordinance'] {
  const { allowance } = property;
  if (!allowance) return null;
  const { say, because } = writer.words;
  const { allowed, metered, aboveAllowed } = sums;
  const { said, between } = volumes;
  const gap = between(aboveAllowed.litres, metered.litres, allowed.litres);
  const statement =
    gap === null
      ? say('ordinance.unknown', { period, reason: because(allowed.reason ?? metered.reason) })
      : say(`ordinance.${allowance.from}`, {
          period,
          allowed: said(allowed.litres),
          metered: said(metered.litres),
          judgement: say(gap > 0 ? 'ordinance.over' : 'ordinance.within', { gap: said(gap) }),
        });
  const budget = allowance.from === 'ordinance' ? [budgetTable(writer, allowance, property.zones)] : [];
  const tables = [...budget, hydrozones(writer, property, sums, volumes)];
  return { title: say('ordinance.title'), says: `${statement} ${say('ordinance.advice')}`, tables };
}

/** What the ordinance's allowance is made of, beside the reference evapotranspiration of the period. */
function budgetTable(writer: Writer, allowance: GivenAllowance & { from: 'ordinance' }, zones: readonly GivenZone[]): ReportTable {
  const { say, because } = writer.words;
  const { etaf, specialLandscapeAreaM2 } = allowance;
  const of = (part: string, label: string) => ({ id: `ordinance.${part}`, label, reason: because('no-allowance') });
  const special = Math.min(specialLandscapeAreaM2, areaOf(zones));
  const figures = [
    writer.plain(of('etaf', say('ordinance.etaf')), etaf, 2),
    writer.quantity(of('area', say('ordinance.area')), 'area', areaOf(zones)),
    writer.quantity(of('special', say('ordinance.specialArea')), 'area', special),
  ];
  const rows = figures.map((figure) => ({
    label: figure.unit ? `${figure.label}, ${figure.unit}` : figure.label,
    cells: [figure],
    isTotal: false,
  }));
  const table = { id: 'budget', title: say('ordinance.madeOf'), heads: [say('period.what'), say('period.value')], rows };
  return withNotes(table, (count) => say('table.more', { count }));
}

const areaOf = (zones: readonly GivenZone[]): number => zones.reduce((total, { areaM2 }) => total + areaM2, 0);

function hydrozones(writer: Writer, { zones }: GivenProperty, { months }: PeriodSums, volumes: VolumeFigures): ReportTable {
  const { say, because, of: word } = writer.words;
  const needs = zones.map(({ id }) => sum(months.map((month) => month.zones.find(({ zoneId }) => zoneId === id)?.neededLitres ?? null)));
  const isCounted = zones.map(({ id }) => months.some((month) => month.zones.some((zone) => zone.zoneId === id && zone.isCounted)));
  const total = sum(needs.filter((_, at) => isCounted[at]));
  // Their total is the property's need: it is written as the page writes it.
  const { column, largestLitres } = volumes;
  const ofZones = writer.volumes(Math.max(0, ...needs.map((litres) => litres ?? 0)), largestLitres);
  const row = (
    id: string,
    name: string,
    { areaM2, plantFactor }: Pick<GivenZone, 'areaM2' | 'plantFactor'>,
    needed: number | null,
  ): ReportRow => {
    const of = (part: string, label: string) => ({
      id: `zone.${id}.${part}`,
      label: `${name}, ${label}`,
      reason: because('volume-absent'),
    });
    return {
      label: name,
      cells: [
        writer.quantity(of('area', say('figure.area')), 'area', areaM2),
        writer.plain(of('plantFactor', say('figure.plantFactor')), plantFactor, 2),
        (id === 'all' ? volumes : ofZones).figure(of('needed', say('figure.needed')), needed),
      ],
      isTotal: id === 'all',
    };
  };
  const described = ({ name, plants, method }: GivenZone, at: number): string =>
    [name, plants && word('plants', plants), word('method', method), !isCounted[at] && say('ordinance.notMetered')]
      .filter(Boolean)
      .join(' · ');
  const area = areaOf(zones);
  const meanFactor = zones.reduce((share, { areaM2, plantFactor }) => share + (areaM2 * plantFactor) / area, 0);
  const rows = zones.map((zone, at) => row(zone.id, described(zone, at), zone, needs[at] ?? null));
  if (zones.length > 1)
    rows.push(
      row('all', say(isCounted.every(Boolean) ? 'total' : 'ordinance.totalMetered'), { areaM2: area, plantFactor: meanFactor }, total),
    );
  const heads = [
    say('ordinance.zone'),
    `${say('figure.area')}, ${writer.formats.unitOf('area')}`,
    say('figure.plantFactor'),
    `${say('figure.needed')}, ${column.unit}`,
  ];
  return withNotes({ id: 'hydrozones', title: say('ordinance.hydrozones'), heads, rows }, (count) => say('table.more', { count }));
}
