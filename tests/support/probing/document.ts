import {
  getNamedType,
  type GraphQLField,
  type GraphQLNamedType,
  type GraphQLOutputType,
  isEnumType,
  isLeafType,
  isObjectType,
  isUnionType,
} from 'graphql';
import { type Ids, valuesFor } from './arguments.js';
import type { Operation } from './operations.js';

const DEEPEST = 4;
/** Below the limits of the product: fields of a document, and its tokens. */
const MOST_FIELDS = 380;

/** A value as a literal of the language. */
function literal(value: unknown, isEnum: boolean): string {
  if (isEnum) return String(value);
  if (Array.isArray(value)) return `[${value.map((one) => literal(one, false)).join(', ')}]`;
  return JSON.stringify(value);
}

const writeArguments = (field: GraphQLField<unknown, unknown>, ids: Ids): string => {
  const needed = field.args.filter((argument) => argument.type.toString().endsWith('!'));
  const values = valuesFor(needed, field.name, ids);
  return needed.length
    ? `(${needed.map((argument) => `${argument.name}: ${literal(values[argument.name], isEnumType(getNamedType(argument.type)))}`).join(', ')})`
    : '';
};

interface Writing {
  readonly ids: Ids;
  left: number;
}

/** Everything that can be asked of a type, down to a depth; each field under a name of its own, so that members of a union do not collide. */
function selection(type: GraphQLNamedType, depth: number, writing: Writing, above: readonly string[]): string {
  if (isLeafType(type)) return '';
  if (isUnionType(type))
    return ` { __typename ${type
      .getTypes()
      .map((one) => `... on ${one.name}${selection(one, depth, writing, above)}`)
      .join(' ')} }`;
  if (!isObjectType(type)) return '';
  const within = [...above, type.name];
  const fields = Object.values(type.getFields()).sort(
    (a, b) => Number(isLeafType(getNamedType(b.type))) - Number(isLeafType(getNamedType(a.type))),
  );
  const asked = fields.flatMap((field) => {
    const next = getNamedType(field.type as GraphQLOutputType);
    const closed = !isLeafType(next) && (depth >= DEEPEST || within.includes(next.name));
    if (closed || writing.left <= 0) return [];
    writing.left -= 1;
    return [`${type.name}_${field.name}: ${field.name}${writeArguments(field, writing.ids)}${selection(next, depth + 1, writing, within)}`];
  });
  return ` { __typename ${asked.join(' ')} }`;
}

/**
 * A whole request: the operation with its arguments, and everything that can be asked of its answer.
 *
 * @param bare leaves out the arguments that may be left out
 */
export function documentFor(operation: Operation, ids: Ids, bare = false): { query: string; variables: Record<string, unknown> } {
  const { kind, name, field } = operation;
  const given = field.args.filter((argument) => !bare || argument.type.toString().endsWith('!'));
  const heads = given.map((argument) => `$${argument.name}: ${argument.type.toString()}`);
  const passed = given.map((argument) => `${argument.name}: $${argument.name}`);
  const wrap = (parts: string[]): string => (parts.length ? `(${parts.join(', ')})` : '');
  const body = selection(getNamedType(field.type), 1, { ids, left: MOST_FIELDS }, []);
  return { query: `${kind} Probe${wrap(heads)} { ${name}${wrap(passed)}${body} }`, variables: valuesFor(given, name, ids) };
}
