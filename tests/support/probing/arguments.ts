import { randomUUID } from 'node:crypto';
import {
  type GraphQLArgument,
  type GraphQLInputField,
  type GraphQLInputType,
  isEnumType,
  isInputObjectType,
  isListType,
  isNonNullType,
} from 'graphql';

/** Whose things the arguments name, by table. */
export type Ids = Readonly<Record<string, string>>;

/** Values of scalars, and of strings whose name says what they are. */
const SCALARS: Readonly<Record<string, unknown>> = {
  String: 'probe',
  Int: 1,
  Float: 1,
  Boolean: true,
  Date: '2026-06-15',
  Month: '2026-06',
  DateTime: '2026-06-15T12:00:00Z',
};

const table = (name: string): string => name.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`).replace(/^_/, '');

/** The days of what is planted. */
const DAYS: Readonly<Record<string, string>> = { from: '2026-06-01', day: '2026-06-01', until: '2026-06-30' };

/** Words of arguments that name a table by another word. */
const ALSO: Readonly<Record<string, string>> = {
  supplier: 'water_supplier',
  station: 'weather_station',
  thing: 'property',
  replaces: 'reading',
  job: 'background_job',
};

/** The tables that an id argument may be about: by its own name, the operation's, or what stands there after the verb. */
function about(argument: string, operation: string): string[] {
  const own = table(argument.replace(/Ids?$/, ''));
  const names = own === 'id' ? [table(operation), table(operation.replace(/^[a-z]+(?=[A-Z])/, ''))] : [own];
  return names.flatMap((name) => [name, ALSO[name] ?? name]);
}

/** The table of the thing that an operation is about, if its `id` argument names one of these. */
export const ownTable = (operation: string, ids: Ids): string | undefined => about('id', operation).find((name) => name in ids);

function idFor(argument: string, operation: string, ids: Ids): string {
  const known = about(argument, operation).find((name) => name in ids);
  return (known && ids[known]) ?? randomUUID();
}

/** Arguments whose name says more than their type. */
function named(name: string, ids: Ids): unknown {
  if (name === 'deviceRecordId') return randomUUID();
  if (name === 'email' || name === 'emails') return `probe-${randomUUID()}@example.test`;
  return name === 'link' ? `/invitation/${ids['organization']}.${'A'.repeat(43)}` : undefined;
}

/** A value of an argument's type, with ids of somebody's things. */
export function valueFor(type: GraphQLInputType, name: string, operation: string, ids: Ids): unknown {
  if (isNonNullType(type)) return valueFor(type.ofType as GraphQLInputType, name, operation, ids);
  if (isListType(type)) return [valueFor(type.ofType as GraphQLInputType, name, operation, ids)];
  if (isEnumType(type)) return type.getValues()[0]!.name;
  if (isInputObjectType(type)) return valuesFor(Object.values(type.getFields()), operation, ids);
  const plain = type.name === 'ID' ? idFor(name, operation, ids) : SCALARS[type.name];
  return named(name, ids) ?? (type.name === 'Date' ? (DAYS[name] ?? plain) : plain);
}

/** Values of all arguments or fields. */
export const valuesFor = (inputs: readonly (GraphQLArgument | GraphQLInputField)[], operation: string, ids: Ids): Record<string, unknown> =>
  Object.fromEntries(inputs.map((input) => [input.name, valueFor(input.type, input.name, operation, ids)]));
