import { platformProblems } from './platform.problems.js';

/** What a field may hold: answers null when a value is one, else what was expected instead. */
export type Rule = (value: never) => string | null;

const LONGEST_NAME = 200;
const LONGEST_TEXT = 5000;
/** Cannot be seen, and make two names that look the same differ, or turn the text around. Joiners of scripts and emoji are left. */
const INVISIBLE = /[\p{Cc}\u00ad\u061c\u180e\u200b\u200e\u200f\u2028-\u202e\u2060-\u2069\ufeff\ufff9-\ufffb]/u;
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]/u;

/** A name by which rows of imported files find each other. */
export const name =
  (...reserved: readonly string[]): Rule =>
  (value: string) => {
    if (!value.trim() || value.length > LONGEST_NAME) return `a name of 1 to ${LONGEST_NAME} characters`;
    if (INVISIBLE.test(value)) return 'a name without characters that cannot be seen';
    return reserved.includes(value.trim().toLowerCase()) ? `another name: ${reserved.join(', ')} has a meaning of its own` : null;
  };

/** Free text; line breaks are kept. */
export const text: Rule = (value: string) => {
  if (value.length > LONGEST_TEXT) return `at most ${LONGEST_TEXT} characters`;
  return CONTROL.test(value) ? 'text without control characters' : null;
};

/** One of a list of words. */
export const oneOf =
  (...words: readonly string[]): Rule =>
  (value: string) =>
    words.includes(value) ? null : `one of ${words.join(', ')}`;

/** Several of a list of words, separated by commas. */
export const someOf =
  (...words: readonly string[]): Rule =>
  (value: string) =>
    value.split(',').every((word) => words.includes(word.trim())) ? null : `some of ${words.join(', ')}, separated by commas`;

/** A number within a range, both ends included. */
export const between =
  (least: number, most: number, unit = ''): Rule =>
  (value: number) =>
    value >= least && value <= most ? null : `${least} to ${most}${unit && ` ${unit}`}`;

/** A number above one end of a range, up to the other. */
export const above =
  (least: number, most: number, unit = ''): Rule =>
  (value: number) =>
    value > least && value <= most ? null : `above ${least} and at most ${most}${unit && ` ${unit}`}`;

/** A share of a whole: 0 or more, below 1. */
export const shareBelowOne: Rule = (value: number) => (value >= 0 && value < 1 ? null : '0 or more and below 1');

/** Twelve numbers, January to December. */
export const twelve =
  (rule: Rule): Rule =>
  (values: readonly number[]) => {
    if (values.length !== 12) return 'twelve numbers, January to December';
    const wrong = values.map((value) => rule(value as never)).find((expected) => expected !== null);
    return wrong === undefined ? null : `twelve numbers, each ${wrong}`;
  };

/** A local time of day, HH:MM. */
export const timeOfDay: Rule = (value: string) =>
  /^([01]\d|2[0-3]):[0-5]\d$/.test(value) ? null : 'a local time of day as HH:MM, 00:00 to 23:59';

/** A time zone by its IANA name; abbreviations and bare offsets do not know when clocks change. */
export const timeZone: Rule = (value: string) => {
  const expected = 'a time zone by its IANA name, such as America/Los_Angeles';
  if (!/^(?:[A-Za-z]+(?:\/[A-Za-z0-9_+-]+){1,2}|UTC)$/.test(value)) return expected;
  try {
    new Intl.DateTimeFormat('en', { timeZone: value });
    return null;
  } catch (problem) {
    if (problem instanceof RangeError) return expected;
    throw problem;
  }
};

/** Judges the fields of an input, the first wrong one by name; fields that were left out or are null pass. */
export function judgeValues<Input extends object>(input: Input, rules: { readonly [Field in keyof Input]?: Rule }): void {
  for (const [field, rule] of Object.entries(rules) as [string, Rule][]) {
    const found = (input as Record<string, unknown>)[field];
    const expected = found === null || found === undefined ? null : rule(found as never);
    if (expected !== null)
      throw platformProblems.valueRefused({ field, found: typeof found === 'string' ? found.slice(0, 80) : found, expected });
  }
}

/** Refuses an end that comes before its start; days are YYYY-MM-DD. */
export function judgeOrder(field: string, start: string | null | undefined, end: string | null | undefined, startIs: string): void {
  if (start && end && end < start)
    throw platformProblems.valueRefused({ field, found: end, expected: `a day not before ${startIs} (${start})` });
}
