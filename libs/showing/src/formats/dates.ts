import { type Language, localeOf, NOT_KNOWN } from './numbers.js';

type Words = string | null | undefined;

export interface DateFormats {
  /** A calendar day: Mon 28 Sep. */
  readonly day: (day: Words) => string;
  /** With its year: Mon 28 Sep 2026. */
  readonly dayOfYear: (day: Words) => string;
  /** In a sentence: Thursday 24 September. */
  readonly dayInWords: (day: Words) => string;
  /** 1 to 24 September 2026, or 28 September to 2 October 2026. */
  readonly days: (from: Words, until: Words) => string;
  /** September 2026. */
  readonly month: (month: Words) => string;
  /** Sep. */
  readonly monthShort: (month: Words) => string;
  /** 6:50 am, on the clocks of the place. */
  readonly time: (instant: Words, timeZone?: string) => string;
  /** Thu 24 Sep, 6:50 am, on the clocks of the place. */
  readonly moment: (instant: Words, timeZone?: string) => string;
}

type Part = 'weekday' | 'day' | 'month' | 'year' | 'hour' | 'minute' | 'dayPeriod';

/** Dates without time are days of a calendar, not instants: no time zone may move them. */
const dayAsInstant = (day: string): Date => new Date(`${day}T00:00:00Z`);

/** What each is written with; made when it is first needed, for making one is what takes long. */
const OPTIONS = {
  day: { weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' },
  long: { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' },
  dayAt: { weekday: 'short', day: 'numeric', month: 'short' },
  clock: { hour: 'numeric', minute: '2-digit', hour12: true },
} as const satisfies Readonly<Record<string, Intl.DateTimeFormatOptions>>;

type Writer = keyof typeof OPTIONS;

function writersOf(locale: string): (writer: Writer, timeZone: string) => Intl.DateTimeFormat {
  const made = new Map<string, Intl.DateTimeFormat>();
  return (writer, timeZone) => {
    const key = `${writer} ${timeZone}`;
    const known = made.get(key) ?? new Intl.DateTimeFormat(locale, { ...OPTIONS[writer], timeZone });
    made.set(key, known);
    return known;
  };
}

const parts = (writer: Intl.DateTimeFormat, at: Date): Partial<Record<Part, string>> =>
  Object.fromEntries(writer.formatToParts(at).map(({ type, value }) => [type, value.replace(/\.$/, '')]));

const inOrder = (found: Partial<Record<Part, string>>, order: readonly Part[], link = ' '): string =>
  order
    .filter((part) => found[part])
    .map((part, at) => (at > 0 && (part === 'month' || part === 'year') ? link : at > 0 ? ' ' : '') + found[part])
    .join('');

/** What stands between day, month and year where they are written out. */
const links = { en: ' ', es: ' de ' } as const;

const until = { en: 'to', es: 'al' } as const;

/** Days and times in one language; an instant is told on the clocks of `timeZone` unless another place's are named. */
export function dateFormats(language: Language, timeZone: string): DateFormats {
  const writerOf = writersOf(localeOf(language));
  const ofDay = (text: Words, writer: 'day' | 'long', order: readonly Part[]): string =>
    text ? inOrder(parts(writerOf(writer, 'UTC'), dayAsInstant(text)), order, writer === 'long' ? links[language] : ' ') : NOT_KNOWN;
  const ofMonth = (text: Words, writer: 'day' | 'long', order: readonly Part[]): string =>
    ofDay(text && `${text.slice(0, 7)}-01`, writer, order);
  const clock = (instant: Words, zone = timeZone): string => {
    if (!instant) return NOT_KNOWN;
    const found = parts(writerOf('clock', zone), new Date(instant));
    // Without its points, which at the end of a sentence would come twice.
    return `${found.hour}:${found.minute} ${found.dayPeriod?.toLowerCase().replace(/[.\s]/g, '') ?? ''}`.trim();
  };
  const dayAt = (instant: string, zone: string): string =>
    inOrder(parts(writerOf('dayAt', zone), new Date(instant)), ['weekday', 'day', 'month']);
  return {
    day: (text) => ofDay(text, 'day', ['weekday', 'day', 'month']),
    dayOfYear: (text) => ofDay(text, 'day', ['weekday', 'day', 'month', 'year']),
    dayInWords: (text) => ofDay(text, 'long', ['weekday', 'day', 'month']),
    days: (from, last) => {
      if (!from || !last) return NOT_KNOWN;
      const sameYear = from.slice(0, 4) === last.slice(0, 4);
      const order: Part[] = from.slice(0, 7) === last.slice(0, 7) ? ['day'] : sameYear ? ['day', 'month'] : ['day', 'month', 'year'];
      return `${ofDay(from, 'long', order)} ${until[language]} ${ofDay(last, 'long', ['day', 'month', 'year'])}`;
    },
    month: (text) => ofMonth(text, 'long', ['month', 'year']),
    monthShort: (text) => ofMonth(text, 'day', ['month']),
    time: clock,
    moment: (instant, zone = timeZone) => (instant ? `${dayAt(instant, zone)}, ${clock(instant, zone)}` : NOT_KNOWN),
  };
}
