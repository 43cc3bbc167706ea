import { type Problem, problemAt } from '../../problems/problem.js';
import { codeWords, type EspiList, type FeedUnit, feedUnits, meaningOf, WATER } from './espi-codes.js';
import type { FeedOutline } from './feed-outline.js';
import type { FeedThing } from './feed-reader.js';

/** A series of readings of water, and how its values are read. */
export interface WaterSeries {
  readonly thing: FeedThing | null;
  readonly accumulates: 'delta' | 'bulk';
  readonly unit: FeedUnit;
  /** The code of the unit, for a sentence. */
  readonly uom: string;
  readonly powerOfTen: number;
  readonly defaultQuality: string | null;
}

const POWER = /^-?\d{1,2}$/;

/** The series of a feed that count one meter's water, at most one of each kind; or why there are none. */
export function waterSeries(fileName: string, outline: FeedOutline): readonly WaterSeries[] | readonly Problem[] {
  const all: readonly (FeedThing | null)[] = outline.meterReadings.length > 0 ? outline.meterReadings : [null];
  const judged = all.map((thing) => judge(fileName, outline, thing));
  const series = judged.flatMap((one) => ('unit' in one ? [one] : []));
  if (series.length === 0) return judged.filter((one): one is Problem => 'code' in one);
  const points = new Set(series.map(({ thing }) => outline.usagePointOf(thing)));
  const deltas = series.filter(({ accumulates }) => accumulates === 'delta').length;
  if (points.size > 1 || deltas > 1 || series.length - deltas > 1)
    return [problemAt({ file: fileName, line: null }, 'FEED_OF_SEVERAL_METERS', { found: String(series.length) })];
  return series;
}

function judge(fileName: string, outline: FeedOutline, thing: FeedThing | null): WaterSeries | Problem {
  const type = outline.typeOf(thing);
  const at = { file: fileName, line: null };
  if (!type) return problemAt(at, 'FEED_WITHOUT_TYPE', { found: thing?.self ?? '' });
  const service = outline.usagePointOf(thing)?.fields['ServiceCategory.kind'];
  return notWater(at, type, service) ?? wrongCode(at, type) ?? seriesOf(thing, type);
}

function notWater(at: { file: string; line: null }, { fields }: FeedThing, service: string | undefined): Problem | null {
  const { commodity } = fields;
  if (service !== undefined && service !== WATER.service)
    return problemAt(at, 'FEED_NOT_WATER', { column: 'ServiceCategory', found: codeWords('serviceKind', service) });
  const isWater = commodity === undefined ? service === WATER.service : (WATER.commodities as readonly string[]).includes(commodity);
  return isWater ? null : problemAt(at, 'FEED_NOT_WATER', { column: 'commodity', found: codeWords('commodity', commodity ?? '') });
}

/** A field of a reading type: the codes with which its values can be read as water through a meter. */
interface ReadCodes {
  readonly list: EspiList;
  readonly codes: readonly string[];
  /** Whether a feed may leave the field out. */
  readonly isOptional: boolean;
}

const READ: readonly ReadCodes[] = [
  { list: 'kind', codes: [WATER.volume], isOptional: true },
  { list: 'flowDirection', codes: [WATER.forward], isOptional: true },
  { list: 'accumulationBehaviour', codes: [WATER.delta, WATER.bulk], isOptional: false },
  { list: 'uom', codes: Object.keys(feedUnits), isOptional: false },
];

function wrongCode(at: { file: string; line: null }, { fields }: FeedThing): Problem | null {
  const wrong = READ.find(({ list, codes, isOptional }) => !(fields[list] === undefined ? isOptional : codes.includes(fields[list])));
  if (wrong) {
    const { list, codes } = wrong;
    const expected = codes.map((code) => codeWords(list, code)).join(', ');
    return problemAt(at, 'FEED_CODE_NOT_READ', { column: list, found: codeWords(list, fields[list] ?? ''), expected });
  }
  const power = fields['powerOfTenMultiplier'] ?? '0';
  if (POWER.test(power)) return null;
  return problemAt(at, 'FEED_CODE_NOT_READ', { column: 'powerOfTenMultiplier', found: power, expected: '≥ -99, ≤ 99' });
}

function seriesOf(thing: FeedThing | null, { fields }: FeedThing): WaterSeries {
  const uom = fields['uom'] ?? '';
  return {
    thing,
    accumulates: fields['accumulationBehaviour'] === WATER.bulk ? 'bulk' : 'delta',
    unit: feedUnits[uom]!,
    uom: meaningOf('uom', uom),
    powerOfTen: Number(fields['powerOfTenMultiplier'] ?? '0'),
    defaultQuality: fields['defaultQuality'] ?? null,
  };
}
