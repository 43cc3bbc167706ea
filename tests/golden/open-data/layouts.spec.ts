import { describe, expect, it } from 'vitest';
import { espiCodes, type EspiList, meaningOf } from '../../../apps/api/src/features/exchange/layouts/meter-feed/espi-codes.js';
import { type FeedReading, FeedReader } from '../../../apps/api/src/features/exchange/layouts/meter-feed/feed-reader.js';
import { instantFrom } from '../../../apps/api/src/features/exchange/layouts/meter-feed/feed-rows.js';
import { daylightRadiation, daymet } from '../../../apps/api/src/features/exchange/layouts/networks/daymet.js';
import { FLAGGED_COLUMNS, hourlyFlagged } from '../../../apps/api/src/features/exchange/layouts/networks/hourly-flagged.js';
import { type Heading, plainHeading, understoodHeading } from '../../../apps/api/src/features/exchange/layouts/station/heading.js';
import { StationLine } from '../../../apps/api/src/features/exchange/layouts/station/station-line.js';
import { expectGolden, given, type GoldenCheck } from '../golden-check.js';
import { checks } from './values.js';

const codesOf = (check: GoldenCheck): string[] => String(check.inputs['codes']?.[0]).split('|');

describe('Code lists of ESPI', () => {
  it.each([
    ['od-001', 'commodity'],
    ['od-003', 'uom'],
    ['od-004', 'kind'],
  ] as const)('%s: what the codes of %s mean', (id, list) => {
    expectGolden(checks[id], {
      meaning: codesOf(checks[id])
        .map((code) => meaningOf(list, code))
        .join('|'),
    });
  });

  it('od-006: how readings accumulate, and what is said of them', () => {
    const lists: Readonly<Record<string, EspiList>> = { accumulation: 'accumulationBehaviour', quality: 'quality' };
    const meaning = codesOf(checks['od-006']).map((words) => {
      const [list = '', code = ''] = words.split(' ');
      return meaningOf(lists[list]!, code);
    });
    expectGolden(checks['od-006'], { meaning: meaning.join('|') });
  });

  it('has the units of volume as standards list them: 42 m3, 119 ft3, 128 US gal, 130 imperial gal, 134 L', () => {
    expect(['42', '119', '128', '130', '134'].map((code) => meaningOf('uom', code))).toEqual(['m3', 'ft3', 'US gal', 'imperial gal', 'L']);
    expect(Object.keys(espiCodes.serviceKind)).toEqual(['0', '1', '2']);
  });
});

it('od-007: the start of an interval is in seconds since 1970, in UTC', () => {
  const check = checks['od-007'];
  const [start, duration, value] = ['start', 'duration', 'value'].map((name) => given(check, name));
  const met: FeedReading[] = [];
  const reader = new FeedReader({ reading: (reading) => met.push(reading) });
  reader.push(
    Buffer.from(
      `<IntervalBlock><IntervalReading><timePeriod><duration>${duration}</duration><start>${start}</start></timePeriod><value>${value}</value></IntervalReading></IntervalBlock>`,
    ),
  );
  reader.end();
  expect(met).toMatchObject([{ duration: '900', value: '282' }]);
  const utc = new Date(instantFrom(Number(met[0]?.start)).wallMs).toISOString().replace('.000Z', 'Z');
  expectGolden(check, { utc });
});

describe('Daymet', () => {
  it('od-009: the published columns and units are read without a question', () => {
    const check = checks['od-009'];
    const published = String(check.expected['columns']?.[0]).split(',');
    const understood = understoodHeading('cell.csv', daymet, 1, published);
    expect(understood).toMatchObject({ problems: [], notices: [] });
    const placed = new Set([...(understood?.heading.places.values() ?? [])].map(({ place }) => place));
    // The snow is of no use here; every other column has its place.
    const columns = published.filter((cell, at) => daymet.unused.includes(plainHeading(cell)) || placed.has(at));
    expect(placed.size).toBe(8);
    expectGolden(check, { columns: columns.join(',') });
  });

  it('od-010: the radiation of a day from its mean over the daylight', () => {
    const check = checks['od-010'];
    expectGolden(check, { Rs: daylightRadiation(given(check, 'srad'), given(check, 'dayl')) });
  });
});

it('od-012: 24 columns, and the verdicts after which a value is missing', () => {
  const check = checks['od-012'];
  const understood = understoodHeading('hours.csv', hourlyFlagged, 1, FLAGGED_COLUMNS);
  expect(understood).toMatchObject({ problems: [], notices: [] });
  const isMissing = (verdict: string): boolean => {
    const cells = FLAGGED_COLUMNS.map((column, at) => (column === 'qc' ? (at === 13 ? verdict : '') : '20'));
    cells.splice(0, 4, '77', '6/1/2024', '1300', '153');
    const piece = hourlyFlagged.read(new StationLine({ line: 2, cells }, understood?.heading as Heading, hourlyFlagged, null));
    return piece?.values['tair'] === null;
  };
  expect(isMissing(' ')).toBe(false);
  const published = String(check.expected['flags_treated_missing']?.[0]).split(',');
  const others = Array.from({ length: 26 }, (_, at) => String.fromCharCode(65 + at)).filter((letter) => !published.includes(letter));
  expectGolden(check, {
    n_columns: FLAGGED_COLUMNS.length,
    flags_treated_missing: [...published, ...others].filter(isMissing).join(','),
  });
});
