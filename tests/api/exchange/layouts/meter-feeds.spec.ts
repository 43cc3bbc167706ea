import { describe, expect, it } from 'vitest';
import { instantFrom, scaled } from '../../../../apps/api/src/features/exchange/layouts/meter-feed/feed-rows.js';
import { known } from '../imports-in-memory.js';
import { entry, feed, interval, laidOut, MIDNIGHT } from './built-files.js';

const OAK = { property: 'Oak', meter: 'M1' };
const at = (iso: string): number => Date.parse(iso);
const problems = async (text: string | Buffer, meaning: object = OAK) => (await laidOut({ 'feed.xml': text }, meaning)).problems;

describe('intervals of a feed', () => {
  it('become usage at their instants, whatever order the feed has its parts in', async () => {
    const outcome = await laidOut({ 'feed.xml': feed() }, OAK);
    expect(outcome.problems).toEqual([]);
    // 1234 · 10^-1 gal.
    expect(outcome.values.usage).toMatchObject([
      { property: 'Oak', meter: 'M1', start: at('2024-06-01T07:00Z'), end: at('2024-06-01T08:00Z'), volume: 123.4, volumeUnit: 'gal' },
      { start: at('2024-06-01T08:00Z'), volume: 123.5 },
      { start: at('2024-06-01T09:00Z'), end: at('2024-06-01T10:00Z'), volume: 123.6 },
    ]);
    expect(outcome.values.usage?.[0]?.litres).toBeCloseTo(123.4 * 3.785411784, 9);
  });

  it.each([
    ['42', 'm3', 1000],
    ['119', 'ft3', 28.316846592],
    ['128', 'gal', 3.785411784],
    // An imperial gallon is 4.54609 L exactly, and no US gallon.
    ['130', 'L', 4.54609],
    ['134', 'L', 1],
  ])('are counted in the unit of code %s', async (uom, unit, litres) => {
    const { values } = await laidOut({ f: feed({ type: { uom, powerOfTenMultiplier: '0' }, readings: interval(MIDNIGHT, 10) }) }, OAK);
    expect(values.usage).toMatchObject([{ volumeUnit: unit, litres: expect.closeTo(10 * litres, 9) }]);
  });

  it.each([
    ['3', 2, 2000],
    ['-3', 1234, 1.234],
    [null, 7, 7],
  ])('are multiplied by ten to the power of %s', async (powerOfTenMultiplier, value, volume) => {
    const { values } = await laidOut({ f: feed({ type: { powerOfTenMultiplier }, readings: interval(MIDNIGHT, value) }) }, OAK);
    expect(values.usage).toMatchObject([{ volume }]);
  });

  it('that are estimated are kept and told; those that failed a check are left out and told', async () => {
    const readings = ['8', '9', '10', '0'].map((quality, hour) => interval(MIDNIGHT + hour * 3600, hour, quality)).join('\n');
    const outcome = await laidOut({ f: feed({ readings }) }, OAK);
    expect(outcome.values.usage?.map(({ volume }) => volume)).toEqual([0, 0.1, 0.3]);
    expect(outcome.warnings.map((one) => one.split(' ')[1])).toEqual(['READING_FAILED_CHECK', 'READING_ESTIMATED', 'READING_ESTIMATED']);
    expect(outcome.problems).toEqual([]);
  });

  it('of a series whose readings all failed a check give nothing', async () => {
    const outcome = await laidOut({ f: feed({ type: { defaultQuality: '10' } }) }, OAK);
    expect(outcome.values.usage ?? []).toEqual([]);
    expect(outcome.warnings).toHaveLength(3);
  });

  it('that overlap are refused: water is not counted twice', async () => {
    const outcome = await laidOut({ f: feed({ readings: interval(MIDNIGHT, 1) + interval(MIDNIGHT + 1800, 1) }) }, OAK);
    expect(outcome.values.usage).toHaveLength(1);
    expect(outcome.problems).toEqual([expect.stringMatching(/USAGE_OVERLAPS/)]);
    expect(outcome.rejected['usage']).toMatchObject([
      { cells: ['Oak', 'M1', '2024-06-01T07:30:00.000Z', '2024-06-01T08:30:00.000Z', '0.1', 'gal'] },
    ]);
  });

  it('are the same however the bytes arrive', async () => {
    const whole = await laidOut({ f: feed() }, OAK);
    for (const piece of [1, 7, 333]) expect((await laidOut({ f: feed() }, OAK, known, piece)).values).toEqual(whole.values);
  });
});

describe('registers of a feed', () => {
  const bulk = { accumulationBehaviour: '1', powerOfTenMultiplier: '0' };
  it('become readings at the end of their period, not differenced here', async () => {
    const readings = interval(MIDNIGHT, 1000, '', 0) + interval(MIDNIGHT + 86_400, 1040, '', 3600);
    const { values, problems: found } = await laidOut({ f: feed({ type: bulk, readings }) }, OAK);
    expect(found).toEqual([]);
    expect(values.readings).toMatchObject([
      { property: 'Oak', meter: 'M1', readAt: at('2024-06-01T07:00Z'), register: 1000, source: 'feed' },
      { readAt: at('2024-06-02T08:00Z'), register: 1040 },
    ]);
    expect(values.usage).toBeUndefined();
  });

  it('are divided by what the meter multiplies them with', async () => {
    const meters = [{ property: 'Oak', meter: 'M1', unit: 'gal' as const, multiplier: 10 }];
    const { values } = await laidOut({ f: feed({ type: bulk, readings: interval(MIDNIGHT, 12_340) }) }, OAK, { ...known, meters });
    expect(values.readings).toMatchObject([{ register: 1234 }]);
  });

  it('in another unit than the meter counts in are refused', async () => {
    expect(await problems(feed({ type: { ...bulk, uom: '42' } }))).toEqual(['feed.xml::uom REGISTER_IN_OTHER_UNIT']);
    expect(await problems(feed({ type: { ...bulk, uom: '130' } }))).toEqual(['feed.xml::uom REGISTER_IN_OTHER_UNIT']);
  });
});

describe('a feed that is not of one meter’s water is refused', () => {
  const series = (number: number, type: string): string =>
    entry(
      `UsagePoint/1/MeterReading/${number}`,
      'UsagePoint/1/MeterReading',
      [`UsagePoint/1/MeterReading/${number}/IntervalBlock`, `ReadingType/${type}`],
      '<MeterReading/>',
    );

  it.each([
    ['electricity by its service', feed({ service: '0' }), ['feed.xml::ServiceCategory FEED_NOT_WATER']],
    ['gas by its commodity', feed({ type: { commodity: '7' } }), ['feed.xml::commodity FEED_NOT_WATER']],
    ['waste water', feed({ type: { commodity: '11' } }), ['feed.xml::commodity FEED_NOT_WATER']],
    ['a flow, not a volume', feed({ type: { kind: '155', uom: '129' } }), ['feed.xml::kind FEED_CODE_NOT_READ']],
    ['a rate by its unit', feed({ type: { uom: '125' } }), ['feed.xml::uom FEED_CODE_NOT_READ']],
    ['a unit of energy', feed({ type: { uom: '72' } }), ['feed.xml::uom FEED_CODE_NOT_READ']],
    ['water that runs back', feed({ type: { flowDirection: '19' } }), ['feed.xml::flowDirection FEED_CODE_NOT_READ']],
    ['a peak', feed({ type: { accumulationBehaviour: '6' } }), ['feed.xml::accumulationBehaviour FEED_CODE_NOT_READ']],
    [
      'a power of ten that is no number',
      feed({ type: { powerOfTenMultiplier: 'x' } }),
      ['feed.xml::powerOfTenMultiplier FEED_CODE_NOT_READ'],
    ],
    ['no reading', feed({ readings: '' }), ['feed.xml:: FEED_WITHOUT_READINGS']],
    ['two series of intervals', feed({ more: series(2, '1') }), ['feed.xml:: FEED_OF_SEVERAL_METERS']],
  ])('%s', async (_, text, expected) => {
    expect(await problems(text)).toEqual(expected);
  });

  it('whose type is not there at all', async () => {
    const text = feed().replace(/<ReadingType[\s\S]*<\/ReadingType>/, '');
    expect(await problems(text)).toEqual(['feed.xml:: FEED_WITHOUT_TYPE']);
  });

  it('beside a series of electricity, the water alone is read', async () => {
    const other = `${series(2, '2')}${entry('ReadingType/2', 'ReadingType', [], '<ReadingType><commodity>1</commodity><uom>72</uom></ReadingType>')}${entry('UsagePoint/1/MeterReading/2/IntervalBlock/1', 'UsagePoint/1/MeterReading/2/IntervalBlock', [], `<IntervalBlock>${interval(MIDNIGHT, 999)}</IntervalBlock>`)}`;
    const { values, problems: found } = await laidOut({ f: feed({ more: other }) }, OAK);
    expect(found).toEqual([]);
    expect(values.usage?.map(({ volume }) => volume)).toEqual([123.4, 123.5, 123.6]);
  });
});

describe('whose water it is', () => {
  it.each([
    ['nobody said, of three meters', {}, ['feed.xml:: METER_NOT_CHOSEN']],
    ['a name that two properties have', { meter: 'M1' }, ['feed.xml:: METER_NOT_CHOSEN']],
    ['the only meter of its property', { property: 'Elm' }, []],
    ['a name that only one property has', { meter: 'M2' }, []],
    ['a property that is not there', { property: 'Ash' }, ['feed.xml::property UNKNOWN_NAME']],
    ['a meter that is not there', { property: 'Oak', meter: 'M9' }, ['feed.xml::meter UNKNOWN_NAME']],
  ])('%s', async (_, meaning, expected) => {
    expect(await problems(feed(), meaning)).toEqual(expected);
  });
});

describe('hostile XML', () => {
  const bomb = '<!DOCTYPE feed [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>';
  it.each([
    ['a document type with entities', feed({ prolog: bomb, readings: interval(MIDNIGHT, '&b;') }), /XML_DTD/],
    ['an external entity', feed({ prolog: '<!DOCTYPE feed SYSTEM "file:///etc/passwd">' }), /XML_DTD/],
    ['an entity that nobody declared', feed({ readings: interval(MIDNIGHT, '&b;') }), /XML_DTD/],
    ['a feed that breaks off', feed().slice(0, -400), /XML_DAMAGED/],
    ['very many links and types', feed({ more: entry('X', 'X', [], '<ReadingType/>'.repeat(5000)) }), /XML_DAMAGED/],
    ['an element that another one closes', feed().replace('</IntervalBlock>', '</IntervalBlok>'), /XML_DAMAGED/],
    ['elements very deep within each other', feed({ readings: `${'<a>'.repeat(200)}${'</a>'.repeat(200)}` }), /XML_DAMAGED/],
    ['text without end', feed({ readings: `${interval(MIDNIGHT, 1)}${'x'.repeat(3_000_000)}` }), /XML_DAMAGED/],
  ])('%s is refused as a whole', async (_, text, expected) => {
    const outcome = await laidOut({ 'feed.xml': text }, OAK);
    expect(outcome.problems).toEqual([expect.stringMatching(expected)]);
    expect(outcome.values).toEqual({});
  });

  it('of another kind is left aside', async () => {
    expect(await problems('<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"/>')).toEqual([
      'feed.xml:: UNKNOWN_FILE',
      '*:: NOTHING_TO_IMPORT',
    ]);
  });

  it.each([
    ['no value', interval(MIDNIGHT, ''), 'value MISSING_VALUE'],
    ['a value in words', interval(MIDNIGHT, 'NaN'), 'value NOT_A_NUMBER'],
    ['a value beyond all meters', interval(MIDNIGHT, '999999999999999'), 'value OUT_OF_RANGE'],
    ['water that runs back', interval(MIDNIGHT, -1), 'value OUT_OF_RANGE'],
    ['no start', interval('', 1), 'start MISSING_VALUE'],
    ['a start before 1970', interval(-5, 1), 'start NOT_A_NUMBER'],
    ['a start in milliseconds', interval('1717225200000', 1), 'start NOT_A_NUMBER'],
    ['a start beyond the calendar', interval('9999999999', 1), 'start OUT_OF_RANGE'],
    ['an interval of no length', interval(MIDNIGHT, 1, '', 0), 'duration END_NOT_AFTER_START'],
    ['an interval of a lifetime', interval(MIDNIGHT, 1, '', 999_999_999), 'duration OUT_OF_RANGE'],
  ])('with %s refuses that reading by its line', async (_, reading, expected) => {
    const outcome = await laidOut({ f: feed({ readings: `\n${reading}\n${interval(MIDNIGHT + 86_400, 5)}` }) }, OAK);
    expect(outcome.problems).toEqual([`f:6:${expected}`]);
    expect(outcome.values.usage).toHaveLength(1);
  });
});

it('scales without the error of a factor below one', () => {
  expect([scaled(1234, -1), scaled(3, -1), scaled(5, 2)]).toEqual([123.4, 0.3, 500]);
  expect(new Date(instantFrom(1_330_578_000).wallMs).toISOString()).toBe('2012-03-01T05:00:00.000Z');
});
