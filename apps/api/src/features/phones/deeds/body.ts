import { platformProblems } from '../../../platform/problems/platform.problems.js';

type Fields = Readonly<Record<string, unknown>>;

/** So much of what was found is told again, in whole characters. */
const LONGEST_FOUND = 80;

const refuse = (field: string, found: unknown, expected: string): never => {
  throw platformProblems.valueRefused({
    field,
    found: typeof found === 'string' ? [...found.slice(0, 2 * LONGEST_FOUND)].slice(0, LONGEST_FOUND).join('') : (found ?? null),
    expected,
  });
};

const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null && !Array.isArray(value);

/** The body of an operation, asked field by field: what is not of the kind that is needed is refused by its name. */
export class Body {
  private constructor(private readonly fields: Fields) {}

  static of(json: string): Body {
    let value: unknown;
    try {
      value = JSON.parse(json);
    } catch (problem) {
      if (problem instanceof SyntaxError) return refuse('body', json, 'JSON');
      throw problem;
    }
    return isFields(value) ? new Body(value) : refuse('body', json, 'an object');
  }

  text(name: string): string {
    const value = this.fields[name];
    // Half of a character of two, as a field cut short leaves behind, is no reason to lose the words before it.
    return typeof value === 'string' ? Buffer.from(value).toString() : refuse(name, value, 'text');
  }

  textOrNull(name: string): string | null {
    return (this.fields[name] ?? null) === null ? null : this.text(name);
  }

  number(name: string): number {
    const value = this.fields[name];
    return typeof value === 'number' && Number.isFinite(value) ? value : refuse(name, value, 'a number');
  }

  numberOrNull(name: string): number | null {
    return (this.fields[name] ?? null) === null ? null : this.number(name);
  }

  flag(name: string): boolean {
    const value = this.fields[name] ?? false;
    return typeof value === 'boolean' ? value : refuse(name, value, 'true or false');
  }

  instant(name: string): Date {
    const text = this.text(name);
    const value = new Date(text);
    return /^\d{4}-\d\d-\d\dT.*(Z|[+-]\d\d:\d\d)$/.test(text) && !Number.isNaN(value.getTime())
      ? value
      : refuse(name, text, 'an ISO 8601 instant with its offset');
  }

  list(name: string): readonly Body[] {
    const value = this.fields[name] ?? [];
    if (!Array.isArray(value)) return refuse(name, value, 'a list');
    return value.map((one: unknown) => (isFields(one) ? new Body(one) : refuse(name, one, 'a list of objects')));
  }

  /** An object within, read by its own fields; null and undefined stay what they are. */
  record<T>(name: string, read: (inner: Body) => T): T | null | undefined {
    const value = this.fields[name];
    if (value === undefined || value === null) return value;
    return isFields(value) ? read(new Body(value)) : refuse(name, value, 'an object');
  }

  numbers(name: string): number[] {
    const value = this.fields[name] ?? [];
    return Array.isArray(value) && value.every((one) => typeof one === 'number' && Number.isFinite(one))
      ? (value as number[])
      : refuse(name, value, 'a list of numbers');
  }

  texts(name: string): string[] {
    const value = this.fields[name] ?? [];
    return Array.isArray(value) && value.every((one) => typeof one === 'string')
      ? (value as string[])
      : refuse(name, value, 'a list of texts');
  }
}
