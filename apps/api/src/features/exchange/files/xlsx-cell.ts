/** How a number in a sheet is shown, as far as it matters: as itself, as a date, as a time, or both. */
export type NumberForm = 'number' | 'date';

/** The workbook's first day: spreadsheets count from 1900, or from 1904 in workbooks of one older kind. */
export type DateSystem = 1900 | 1904;

const MS_PER_DAY = 86_400_000;
const FIRST_1904 = Date.UTC(1904, 0, 1);
/** Day 0 as seen from 1 March 1900 on; before it the calendar of spreadsheets holds a 29 February 1900 that never was. */
const FIRST_1900 = Date.UTC(1899, 11, 30);
const NEVER_WAS = 60;
const LAST_SERIAL = 2_958_466; // 10000-01-01
/** The built-in formats that show dates or times (ECMA-376 part 1, 18.8.30; from memory). */
const BUILT_IN_DATES: readonly (readonly [number, number])[] = [
  [14, 22],
  [27, 36],
  [45, 47],
  [50, 58],
];

/** Whether a number format shows a date or a time: by its built-in number, or by the letters of its code. */
export function formOfNumber(id: number, code: string | undefined): NumberForm {
  if (code === undefined) return BUILT_IN_DATES.some(([from, to]) => id >= from && id <= to) ? 'date' : 'number';
  const firstSection = code.split(';')[0] ?? '';
  const letters = firstSection.replace(/"[^"]*"|\\.|_.|\*.|\[[^\]]*\]/g, '');
  return /[ymdhs]/i.test(letters) && !/general/i.test(letters) ? 'date' : 'number';
}

/** A date, a time of day or both, as ISO 8601 text; a number that is none stays itself and is refused by its column. */
export function dateText(serial: number, system: DateSystem): string {
  if (!(serial >= 0 && serial < LAST_SERIAL)) return numberText(serial);
  const seconds = Math.round(serial * 86_400);
  const day = Math.floor(seconds / 86_400);
  const time = timeText(seconds - day * 86_400);
  if (serial < 1 && day === 0 && system === 1900) return time ?? '00:00';
  return time === null ? dayText(day, system) : `${dayText(day, system)}T${time}`;
}

function dayText(day: number, system: DateSystem): string {
  if (system === 1904) return isoDay(FIRST_1904 + day * MS_PER_DAY);
  if (day === NEVER_WAS) return '1900-02-29';
  return isoDay(FIRST_1900 + (day < NEVER_WAS ? day + 1 : day) * MS_PER_DAY);
}

function isoDay(milliseconds: number): string {
  return new Date(milliseconds).toISOString().slice(0, 10);
}

function timeText(seconds: number): string | null {
  if (seconds === 0) return null;
  const parts = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60].map((part) => String(part).padStart(2, '0'));
  return (seconds % 60 === 0 ? parts.slice(0, 2) : parts).join(':');
}

/** A number written out in full, to the fifteen digits that a spreadsheet keeps: without the noise of its binary form. */
export function numberText(value: number): string {
  const kept = Number(value.toPrecision(15));
  const text = String(kept);
  if (!text.includes('e')) return text;
  return Math.abs(kept) < 1 ? kept.toFixed(20).replace(/0+$/, '') : BigInt(kept).toString();
}
