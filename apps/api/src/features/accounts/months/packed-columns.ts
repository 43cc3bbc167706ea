// An account in columns as bytes: what the months of a property have in common, packed once; what is told in words, packed; then numbers as
// they stand in memory, the lowest byte first.
import type { MonthAccount } from '@rillbook/metering/account/month-account.js';
import { type AccountColumns, type AccountFrame, columnPlaces } from '@rillbook/metering/columns/account-columns.js';
import { accountOfColumns } from '@rillbook/metering/columns/account-of-columns.js';
import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { packed, unpacked } from './packed-value.js';

/** The first byte of a detail in columns: those of `packed-value.ts` begin otherwise. */
const COLUMNS = 2;
/** The kind, and how long the frame and the words are. */
const HEAD_BYTES = 9;
/** Runs, minutes and estimated shares come last: mostly small whole numbers, or nothing at all. */
const LAST_COLUMNS = 3;
const Last = { zeros: 0, whole: 1, any: 2 } as const;
const LARGEST_WHOLE = 65_535;

/** What the account's screens show beside the volumes. */
export interface AccountDetail {
  readonly account: MonthAccount;
  /** what a litre more costs; null when neither the supplier's rates nor the meter's price is known [money/L] */
  readonly pricePerLitre: number | null;
  /** sums of the days covered; null when a day is not known [mm] */
  readonly etoMm: number | null;
  readonly rainMm: number | null;
}

/** What is shown beside the account. */
export type BesideAccount = Omit<AccountDetail, 'account'>;

/** The frame of many months is packed once. */
const frames = new WeakMap<AccountFrame, Buffer>();

function packedFrame(frame: AccountFrame): Buffer {
  const present = frames.get(frame);
  if (present) return present;
  const { meterId, controllerIds, zones } = frame;
  const bytes = packed([
    meterId,
    controllerIds,
    zones.map((zone) => [
      zone.id,
      controllerIds.indexOf(zone.controllerId),
      zone.station,
      zone.isDerived,
      zone.assumed,
      zone.establishedShare,
    ]),
  ]);
  frames.set(frame, bytes);
  return bytes;
}

type PackedZone = [string, number, number, boolean, AccountFrame['zones'][number]['assumed'], number | null];

function frameOf(bytes: Buffer): AccountFrame {
  const [meterId, controllerIds, zones] = unpacked(bytes) as [string, string[], PackedZone[]];
  return {
    meterId,
    controllerIds,
    zones: zones.map(([id, controller, station, isDerived, assumed, establishedShare]) => ({
      id,
      controllerId: controllerIds[controller]!,
      station,
      isDerived,
      assumed,
      establishedShare,
    })),
  };
}

type Words = [
  number,
  number,
  number,
  string | null,
  AccountColumns['notAllowed'],
  AccountColumns['programSets'],
  AccountColumns['notes'],
  number | null,
  number | null,
  number | null,
];

/** Room to write in; what is given away is a copy of its beginning. */
let room = Buffer.allocUnsafeSlow(1 << 14);

/** An account in columns, with what is shown beside it. */
export function packedColumns(columns: AccountColumns, beside: BesideAccount): Buffer {
  const { firstDay, days, daysInMonth, meteredThrough, notAllowed, programSets, programSet, notes, numbers, causes } = columns;
  const frame = packedFrame(columns.frame);
  const { pricePerLitre, etoMm, rainMm } = beside;
  const words: Words = [firstDay, days, daysInMonth, meteredThrough, notAllowed, programSets, notes, pricePerLitre, etoMm, rainMm];
  const told = packed(words);
  const zones = programSet.length;
  const most = HEAD_BYTES + frame.length + told.length + causes.byteLength + zones + numbers.byteLength + LAST_COLUMNS;
  if (most > room.length) room = Buffer.allocUnsafeSlow(2 * most);
  room[0] = COLUMNS;
  room.writeUInt32LE(frame.length, 1);
  room.writeUInt32LE(told.length, 5);
  let at = HEAD_BYTES;
  const add = (bytes: Uint8Array) => {
    room.set(bytes, at);
    at += bytes.length;
  };
  add(frame);
  add(told);
  add(new Uint8Array(causes.buffer, causes.byteOffset, causes.byteLength));
  add(programSet);
  const floats = numbers.length - LAST_COLUMNS * zones;
  add(new Uint8Array(numbers.buffer, numbers.byteOffset, 8 * floats));
  for (let column = 0; column < LAST_COLUMNS; column += 1)
    at = addLast(numbers.subarray(floats + column * zones, floats + (column + 1) * zones), at);
  return Buffer.from(room.subarray(0, at));
}

function addLast(values: Float64Array, from: number): number {
  const kind = kindOf(values);
  let at = from + 1;
  room[from] = kind;
  if (kind === Last.whole) for (const value of values) at = room.writeUInt16LE(value, at);
  if (kind === Last.any) for (const value of values) at = room.writeDoubleLE(value, at);
  return at;
}

function kindOf(values: Float64Array): number {
  if (values.every((value) => value === 0)) return Last.zeros;
  return values.every((value) => Number.isInteger(value) && value >= 0 && value <= LARGEST_WHOLE) ? Last.whole : Last.any;
}

/** Whether bytes are an account in columns. */
export const isInColumns = (bytes: Buffer): boolean => bytes[0] === COLUMNS;

/** What was packed. */
export function detailOfColumns(bytes: Buffer): AccountDetail {
  let at = HEAD_BYTES;
  const take = (length: number) => {
    at += length;
    return bytes.subarray(at - length, at);
  };
  const frame = frameOf(take(bytes.readUInt32LE(1)));
  const [firstDay, days, daysInMonth, meteredThrough, notAllowed, programSets, notes, pricePerLitre, etoMm, rainMm] = unpacked(
    take(bytes.readUInt32LE(5)),
  ) as Words;
  const zones = frame.zones.length;
  const places = columnPlaces(zones, frame.controllerIds.length);
  // Copies: numbers in memory begin at a multiple of their length.
  const causes = new Int16Array(Uint8Array.from(take(2 * places.causes)).buffer);
  const programSet = Uint8Array.from(take(zones));
  const numbers = new Float64Array(places.length);
  const floats = places.length - LAST_COLUMNS * zones;
  numbers.set(new Float64Array(Uint8Array.from(take(8 * floats)).buffer));
  for (let column = 0; column < LAST_COLUMNS; column += 1) {
    const kind = take(1)[0]!;
    const width = kind === Last.zeros ? 0 : kind === Last.whole ? 2 : 8;
    const values = take(width * zones);
    for (let zone = 0; zone < zones && width > 0; zone += 1)
      numbers[floats + column * zones + zone] = width === 2 ? values.readUInt16LE(2 * zone) : values.readDoubleLE(8 * zone);
  }
  const month = dateOfDayNumber(firstDay).slice(0, 'YYYY-MM'.length);
  const told = { month, firstDay, days, daysInMonth, meteredThrough, notAllowed, programSets, notes };
  return { account: accountOfColumns({ ...told, frame, programSet, numbers, causes }), pricePerLitre, etoMm, rainMm };
}
