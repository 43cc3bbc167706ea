import { GraphQLError, GraphQLScalarType, Kind, type ValueNode } from 'graphql';

const DATE = /^(19|20|21)\d\d-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;
const MONTH = /^(19|20|21)\d\d-(0[1-9]|1[0-2])$/;
const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:\d\d)$/;

const text = (node: ValueNode): unknown => (node.kind === Kind.STRING ? node.value : undefined);

function dated(name: string, form: string, fits: (value: string) => boolean): GraphQLScalarType<string, string> {
  const parse = (value: unknown): string => {
    if (typeof value !== 'string' || !fits(value))
      throw new GraphQLError(`${name}: found ${JSON.stringify(value)}, expected ${form}.`, {
        extensions: { code: 'VALUE_REFUSED', details: { field: name, found: value, expected: form } },
      });
    return value;
  };
  return new GraphQLScalarType({
    name,
    description: `As ${form}.`,
    serialize: (value) => String(value),
    parseValue: parse,
    parseLiteral: (node) => parse(text(node)),
  });
}

const realDate = (value: string): boolean => DATE.test(value) && new Date(`${value}T00:00:00Z`).toISOString().startsWith(value);

/** A calendar day, YYYY-MM-DD. */
export const DateScalar = dated('Date', 'YYYY-MM-DD', realDate);

/** A calendar month, YYYY-MM. */
export const MonthScalar = dated('Month', 'YYYY-MM', (value) => MONTH.test(value));

const parseInstant = (value: unknown): Date => {
  // A day that does not exist would roll over into another month.
  const instant = typeof value === 'string' && INSTANT.test(value) && realDate(value.slice(0, 10)) ? new Date(value) : null;
  if (!instant || Number.isNaN(instant.getTime()))
    throw new GraphQLError(`DateTime: found ${JSON.stringify(value)}, expected an ISO 8601 instant with its offset.`, {
      extensions: {
        code: 'VALUE_REFUSED',
        details: { field: 'DateTime', found: value, expected: 'an ISO 8601 instant with its offset' },
      },
    });
  return instant;
};

/** An instant, ISO 8601 with its offset. */
export const DateTimeScalar = new GraphQLScalarType<Date, string>({
  name: 'DateTime',
  description: 'An instant, ISO 8601 with its offset.',
  serialize: (value) => (value instanceof Date ? value : new Date(String(value))).toISOString(),
  parseValue: parseInstant,
  parseLiteral: (node) => parseInstant(text(node)),
});

/** Data of a shape that depends on its code: details, evidence. */
export const JsonScalar = new GraphQLScalarType<unknown, unknown>({
  name: 'JSON',
  description: 'Data whose shape depends on the code beside it. Never an input.',
  serialize: (value) => value,
});
