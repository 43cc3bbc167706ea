import { isAlike } from '../is-alike.js';
import { isWithin, largestOf, periodGauge, yearOfGauges } from './drawings.js';
import type { FigureOf, Writer } from '../figures.js';
import { type NamedSums, type PeriodSums, sumsOfAll } from '../period-sums.js';
import type { GivenMonth, ReportInput } from '../report-input.js';
import type { ReportLine, ReportOfAll, ReportRow, ReportSection, ReportTable } from '../report-model.js';
import type { ReportWord } from '../../words/en/report.js';
import { withNotes } from '../table-notes.js';
import type { PageVolumes } from './page-volumes.js';
import type { Savings } from './savings.js';
import { savingOfAll } from './savings-of-all.js';
import { gapMoney } from './tables.js';

const SHOWN = ['metered', 'needed', 'aboveNeed'] as const;
const MOST_RECOMMENDED = 4;

/** A property's sums, and how its own page writes them. */
interface WrittenSums extends NamedSums {
  readonly volumes: PageVolumes['ofPeriod'];
}

/** What a page of all properties is made from. */
interface Given {
  readonly input: ReportInput;
  readonly all: readonly WrittenSums[];
  readonly savings: readonly Savings[];
  readonly sections: readonly (readonly ReportSection[])[];
}

/** A client's first page: all properties together, side by side, and what matters most. */
export function ofAllProperties(writer: Writer, { input, all, savings, sections }: Given): ReportOfAll {
  const { words } = writer;
  const sums = sumsOfAll(all.map((each) => each.sums));
  const { confidence, properties } = input;
  const volumes = writer.volumes(largestOf([sums]));
  const isKnown = sums.metered.litres !== null && sums.needed.litres !== null;
  const months = monthsOfAll(properties.map((property) => property.months));
  const section = (id: ReportSection['id'], lines: readonly ReportLine[]): ReportSection => ({
    id,
    title: words.say(`${id}.title`),
    lines,
    none: words.say(id === 'saved' ? 'saved.noneOfAll' : 'recommended.none'),
  });
  return {
    why: whoseIsOff(writer, all, confidence),
    gauge: isKnown ? periodGauge(writer, sums, volumes, confidence) : null,
    year:
      months.length > 1
        ? yearOfGauges(writer, months, { until: input.period.until, confidence, volumes: writer.volumes(largestOf(months)) })
        : null,
    table: summaryTable(writer, all, sums, confidence),
    sections: [section('saved', savingOfAll(writer, savings, properties)), section('recommended', recommendedOfAll(all, sections))],
  };
}

/** Which took more, which less, which about what their plants needed, and of which that cannot be said: a thirsty property never hides a drowned one. */
function whoseIsOff({ words }: Writer, all: readonly WrittenSums[], confidence: number): string {
  const known = all.filter(({ sums }) => sums.aboveNeed.litres !== null);
  const isChance = ({ sums }: WrittenSums): boolean => isWithin(sums.aboveNeed, confidence) || sums.aboveNeed.litres === 0;
  const isNear = ({ sums }: WrittenSums): boolean => isAlike(sums.aboveNeed.litres ?? 0, sums.needed.litres ?? 0);
  const bySize = (a: WrittenSums, b: WrittenSums): number =>
    Math.abs(b.sums.aboveNeed.litres ?? 0) - Math.abs(a.sums.aboveNeed.litres ?? 0);
  const told = (word: 'above' | 'below' | 'near' | 'unsure', list: readonly WrittenSums[]): string[] => {
    const names = [...list].sort(bySize).map(({ name, sums, volumes }) => {
      const { said, between } = volumes();
      const { aboveNeed, metered, needed } = sums;
      const gap = said(between(aboveNeed.litres, metered.litres, needed.litres));
      return word === 'near' || word === 'unsure' ? name : words.say('why.all.one', { name, gap });
    });
    if (names.length === 0) return [];
    return [words.say(names.length === 1 ? `why.all.${word}One` : `why.all.${word}`, { names: names.join(', ') })];
  };
  const off = known.filter((each) => !isChance(each));
  const chance = known.filter(isChance);
  return [
    ...told(
      'above',
      off.filter(({ sums }) => (sums.aboveNeed.litres ?? 0) > 0),
    ),
    ...told(
      'below',
      off.filter(({ sums }) => (sums.aboveNeed.litres ?? 0) < 0),
    ),
    ...told('near', chance.filter(isNear)),
    ...told(
      'unsure',
      chance.filter((each) => !isNear(each)),
    ),
  ].join(' ');
}

/** The months that every property has an account of, summed. */
function monthsOfAll(lists: readonly (readonly GivenMonth[])[]): GivenMonth[] {
  const [first = [], ...rest] = lists;
  return first.flatMap((month) => {
    const same = [month, ...rest.flatMap((list) => list.find((each) => each.month === month.month) ?? [])];
    if (same.length < lists.length) return [];
    const { months: _, ...sums } = sumsOfAll(same.map((each) => ({ ...each, months: [each] })));
    return [{ ...month, ...sums, rainMm: month.rainMm, etoMm: month.etoMm, zones: [] }];
  });
}

/** The first of each property in turn, then the second, so that no property hides another; each says whose it is. */
function recommendedOfAll(all: readonly NamedSums[], sections: readonly (readonly ReportSection[])[]): ReportLine[] {
  const lists = sections.map((list) => list.find(({ id }) => id === 'recommended')?.lines ?? []);
  const longest = Math.max(0, ...lists.map(({ length }) => length));
  return Array.from({ length: longest }, (_, at) =>
    lists.flatMap((lines, property): ReportLine[] => {
      const line = lines[at];
      return line ? [{ ...line, says: `${all[property]?.name}: ${line.says}`, figures: [] }] : [];
    }),
  )
    .flat()
    .slice(0, MOST_RECOMMENDED);
}

/** The client's properties side by side, and what they add up to. */
function summaryTable(writer: Writer, all: readonly WrittenSums[], together: PeriodSums, confidence: number): ReportTable {
  const { say, because } = writer.words;
  const widest = largestOf([together, ...all.map(({ sums }) => sums)]);
  const { column } = writer.volumes(widest);
  const row = ({ id, name, sums, volumes }: WrittenSums, isTotal: boolean): ReportRow => {
    const written = volumes(widest);
    const { figure, between } = written;
    const reason = because(sums.metered.reason ?? sums.needed.reason ?? 'volume-absent');
    const of = (part: string): FigureOf => ({
      id: `summary.${id}.${part}`,
      label: `${name}, ${say(`figure.${part}` as ReportWord)}`,
      reason,
    });
    return {
      label: name,
      cells: [
        ...(['metered', 'needed'] as const).map((part) => figure(of(part), sums[part].litres)),
        figure(of('aboveNeed'), between(sums.aboveNeed.litres, sums.metered.litres, sums.needed.litres)),
        gapMoney(writer, of('aboveNeedMoney'), { sums, volumes: written, confidence }),
      ],
      isTotal,
    };
  };
  const ofTogether: WrittenSums['volumes'] = (of) => writer.volumes(largestOf([together]), of);
  const total = row({ id: 'all', name: say('total'), sums: together, volumes: ofTogether }, true);
  const rows = [...all.map((each) => row(each, false)), total];
  const heads = [say('property'), ...SHOWN.map((id) => `${say(`figure.${id}`)}, ${column.unit}`), say('figure.aboveNeedMoney')];
  return withNotes({ id: 'summary', title: say('summary'), heads, rows }, (count) => say('table.more', { count }));
}
