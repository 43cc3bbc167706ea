// Arrays as the database's wire has them: one parameter holds a column of many rows, and nothing is written out as text and read again.

const OID = { bytea: 17, text: 25, float8: 701, date: 1082, uuid: 2950 } as const;
/** The database's first day is 2000-01-01, as days since 1970-01-01. */
const FIRST_DAY = 10_957;
const HEADER_BYTES = 20;
const LENGTH_BYTES = 4;
const NULL_LENGTH = -1;

type Write<Value> = (into: Buffer, at: number, value: Value) => void;

/** An array of one dimension: its head, then each value with its length before it. */
function array<Value>(oid: number, values: readonly (Value | null)[], bytesOf: (value: Value) => number, write: Write<Value>): Buffer {
  let size = HEADER_BYTES;
  for (const value of values) size += LENGTH_BYTES + (value === null ? 0 : bytesOf(value));
  const into = Buffer.allocUnsafe(size);
  const isEmpty = values.length === 0;
  into.writeInt32BE(isEmpty ? 0 : 1, 0);
  into.writeInt32BE(values.includes(null) ? 1 : 0, 4);
  into.writeInt32BE(oid, 8);
  if (isEmpty) return into.subarray(0, 12);
  into.writeInt32BE(values.length, 12);
  into.writeInt32BE(1, 16);
  let at = HEADER_BYTES;
  for (const value of values) {
    const bytes = value === null ? NULL_LENGTH : bytesOf(value);
    into.writeInt32BE(bytes, at);
    at += LENGTH_BYTES;
    if (value === null) continue;
    write(into, at, value);
    at += bytes;
  }
  return into;
}

/** A parameter for `$n::uuid[]`. */
export const uuidArray = (values: readonly (string | null)[]): Buffer =>
  array(
    OID.uuid,
    values,
    () => 16,
    (into, at, value) => into.write(value.replaceAll('-', ''), at, 'hex'),
  );

/** A parameter for `$n::float8[]`. */
export const float8Array = (values: readonly (number | null)[]): Buffer =>
  array(
    OID.float8,
    values,
    () => 8,
    (into, at, value) => into.writeDoubleBE(value, at),
  );

/** A parameter for `$n::date[]`, of 'YYYY-MM-DD'. */
export const dateArray = (values: readonly (string | null)[]): Buffer =>
  array(
    OID.date,
    values,
    () => 4,
    (into, at, value) => into.writeInt32BE(Date.parse(value) / 86_400_000 - FIRST_DAY, at),
  );

/** A parameter for `$n::text[]`. */
export const textArray = (values: readonly (string | null)[]): Buffer =>
  array(
    OID.text,
    values,
    (value) => Buffer.byteLength(value),
    (into, at, value) => into.write(value, at, 'utf8'),
  );

/** A parameter for `$n::bytea[]`. */
export const byteaArray = (values: readonly (Buffer | null)[]): Buffer =>
  array(
    OID.bytea,
    values,
    (value) => value.length,
    (into, at, value) => value.copy(into, at),
  );
