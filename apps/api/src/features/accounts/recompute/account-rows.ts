import type { MonthAccount, Volumes } from '@rillbook/metering/account/month-account.js';
import { type AccountColumns, columnPlaces, GAP_NUMBERS } from '@rillbook/metering/columns/account-columns.js';
import type { JudgedMonth } from '@rillbook/metering/detection/episodes/judged-month.js';
import type { FindingCandidate } from '@rillbook/metering/detection/finding-candidate.js';
import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { AccountDetail } from '../months/packed-columns.js';
import type { NewAccount } from '../months/month-account.repository.js';
import { packedColumns } from '../months/packed-columns.js';
import { packed } from '../months/packed-value.js';

/** What the rows of one month have in common. */
export interface AccountFrame {
  readonly propertyId: string;
  readonly version: string;
  readonly pricePerLitre: number | null;
  readonly etoMm: number | null;
  readonly rainMm: number | null;
}

type Kept = Pick<NewAccount, 'meterId' | 'detail' | 'judged'>;

function row(frame: AccountFrame, account: MonthAccount, volumes: Volumes, kept: Kept): NewAccount {
  const above = volumes.meteredOverNeeded.litres;
  return {
    propertyId: frame.propertyId,
    ...kept,
    month: account.firstDate,
    throughOn: account.throughDate ?? account.firstDate,
    allowedL: volumes.allowed.litres,
    allowedSdL: volumes.allowed.sdLitres,
    neededL: volumes.needed.litres,
    neededSdL: volumes.needed.sdLitres,
    programmedL: volumes.programmed.litres,
    programmedSdL: volumes.programmed.sdLitres,
    meteredL: volumes.metered.litres,
    meteredSdL: volumes.metered.sdLitres,
    overL: volumes.settingsGap.overLitres,
    underL: volumes.settingsGap.underLitres,
    aboveNeedL: above,
    aboveNeedSdL: volumes.meteredOverNeeded.sdLitres,
    aboveNeedMoney: above === null || frame.pricePerLitre === null ? null : above * frame.pricePerLitre,
    inputsVersion: frame.version,
  };
}

/** The rows of a month: the property's, and one for each meter where it has several. */
export function accountRows(frame: AccountFrame, account: MonthAccount, judged: JudgedMonth): NewAccount[] {
  const detail: AccountDetail = { account, pricePerLitre: frame.pricePerLitre, etoMm: frame.etoMm, rainMm: frame.rainMm };
  const property = row(frame, account, account.property, { meterId: null, detail: packed(detail), judged: packedMonth(judged) });
  if (account.meters.length < 2) return [property];
  // The whole account stands in the property's row; a meter's row keeps its own part.
  return [
    property,
    ...account.meters.map((meter) =>
      row(frame, account, meter, { meterId: meter.meterId, detail: packed({ ...detail, account: partOf(account, meter) }), judged: null }),
    ),
  ];
}

function partOf(account: MonthAccount, meter: MonthAccount['meters'][number]): MonthAccount {
  const zones = account.zones.filter((zone) => zone.meterId === meter.meterId);
  return { ...account, property: meter, meters: [], controllers: [], zones, notes: [] };
}

/** A month as later computations put it together with others: its evidence stands in the account. */
function packedMonth({ candidates, allowance, ...month }: JudgedMonth): Buffer {
  const bare = (candidate: FindingCandidate): FindingCandidate => ({ ...candidate, evidence: {} });
  return packed({ ...month, candidates: candidates.map(bare), allowance: allowance && bare(allowance) });
}

/** The place of metered less needed among the gaps of `Volumes`. */
const ABOVE_NEED = 3;

/** The row of a month in columns: the property's, as its only meter has no row of its own. */
export function columnRow(frame: AccountFrame, columns: AccountColumns, judged: JudgedMonth): NewAccount {
  const { numbers, notAllowed, firstDay, days } = columns;
  const { over, under, gaps } = columnPlaces(columns.frame.zones.length, columns.frame.controllerIds.length);
  const aboveNeed = gaps + ABOVE_NEED * GAP_NUMBERS;
  const above = numbers[aboveNeed]!;
  return {
    propertyId: frame.propertyId,
    meterId: null,
    month: dateOfDayNumber(firstDay),
    throughOn: dateOfDayNumber(firstDay + days - 1),
    allowedL: notAllowed ? null : numbers[0]!,
    allowedSdL: notAllowed ? null : numbers[1]!,
    neededL: numbers[3]!,
    neededSdL: numbers[4]!,
    programmedL: numbers[6]!,
    programmedSdL: numbers[7]!,
    meteredL: numbers[9]!,
    meteredSdL: numbers[10]!,
    overL: numbers[over]!,
    underL: numbers[under]!,
    aboveNeedL: above,
    aboveNeedSdL: numbers[aboveNeed + 1]!,
    aboveNeedMoney: frame.pricePerLitre === null ? null : above * frame.pricePerLitre,
    detail: packedColumns(columns, frame),
    judged: packedMonth(judged),
    inputsVersion: frame.version,
  };
}
