import { Inject, type Type } from '@nestjs/common';
import { Args, ID, Int, Mutation, Resolver, createUnionType } from '@nestjs/graphql';
import type { DeepPartial } from 'typeorm';
import type { OrganizationTransaction } from '../database/organization-transaction.js';
import { Allow } from '../identity/allow.js';
import { Permission } from '../identity/permission.js';
import { Tx } from '../identity/tx.js';
import { brokenConstraint } from '../problems/constraint-problems.js';
import { KeptRecords, VersionConflict } from '../records/kept-records.js';
import type { KeptRow } from '../records/kept-row.js';
import { ChangedMeanwhile, NameTaken, StillInUse, changedMeanwhile, nameTaken, stillInUse } from '../graphql/outcomes.type.js';

type Outcome = object;

const SENT_AGAIN = 'made by the device: sent again after a lost answer, the same thing is answered and no second one is made';

/** What the three mutations of a kept thing need to know of it. */
export interface KeptThing<Row extends KeptRow, Shown extends object, Input extends object> {
  /** the GraphQL name, such as 'Meter' */
  readonly name: string;
  readonly row: Type<Row>;
  readonly type: Type<Shown>;
  readonly input: Type<Input>;
  /** the row as the screens see it; must return an instance of `type` */
  readonly show: (row: Row) => Shown;
  readonly permission?: Permission;
  /** what the row keeps of an input; the input as it is when left out */
  readonly keep?: (input: Input) => DeepPartial<Row>;
  /** refuses values that the database cannot judge alone; throws a problem. The id is of the thing that is changed, null for a new one */
  readonly judge?: (tx: OrganizationTransaction, input: Input, id: string | null) => Promise<void>;
  /** what the thing is called when another has taken it; the input's name when left out */
  readonly called?: (input: Input) => string;
  /** what still needs the thing, asked before it is retired */
  readonly needs?: (tx: OrganizationTransaction, id: string) => Promise<{ by: string; count: number } | null>;
  /** what else is kept with it, after it was created or changed */
  readonly then?: (tx: OrganizationTransaction, row: Row, input: Input) => Promise<void>;
}

/** The mutations that `keptThingResolver` gives. */
export interface KeptThingMutations<Input extends object> {
  create(tx: OrganizationTransaction, input: Input, id: string | null): Promise<Outcome>;
  change(tx: OrganizationTransaction, id: string, version: number, input: Input): Promise<Outcome>;
  retire(tx: OrganizationTransaction, id: string, version: number): Promise<Outcome>;
}

/** Fields that were left out or are null become null columns; undefined would keep what stood there. */
function columns<Row extends KeptRow, Input extends object>(thing: KeptThing<Row, object, Input>, input: Input): DeepPartial<Row> {
  return (thing.keep ? thing.keep(input) : { ...input }) as DeepPartial<Row>;
}

const outcomeOf =
  <Row extends KeptRow, Shown extends object, Input extends object>(thing: KeptThing<Row, Shown, Input>) =>
  async (tx: OrganizationTransaction, input: Input, work: () => Promise<Row | VersionConflict>): Promise<Outcome> => {
    try {
      const row = await tx.attempt(work);
      if (row instanceof VersionConflict) return changedMeanwhile(row);
      await thing.then?.(tx, row, input);
      return thing.show(row);
    } catch (problem) {
      const broken = brokenConstraint(problem);
      if (broken?.kind === 'unique') return nameTaken(thing.called?.(input) ?? String((input as { name?: string }).name ?? broken.name));
      throw problem;
    }
  };

/**
 * The mutations create, change and retire of one kind of thing: versioned, recorded, with their expected outcomes in the schema.
 *
 * @returns a class to extend: `class MeterResolver extends keptThingResolver(meter)`
 */
export function keptThingResolver<Row extends KeptRow, Shown extends object, Input extends object>(
  thing: KeptThing<Row, Shown, Input>,
): abstract new (
  ...args: never[]
) => KeptThingMutations<Input> {
  const permission = thing.permission ?? Permission.WritePortfolio;
  const Result = createUnionType({
    name: `${thing.name}Result`,
    types: () => [thing.type, ChangedMeanwhile, NameTaken, StillInUse] as const,
    resolveType: (value: object) => value.constructor as Type,
  });

  const outcome = outcomeOf(thing);

  @Resolver({ isAbstract: true })
  abstract class KeptThingResolver implements KeptThingMutations<Input> {
    @Inject(KeptRecords)
    protected readonly records: KeptRecords;

    @Allow(permission)
    @Mutation(() => Result, { name: `create${thing.name}` })
    async create(
      @Tx() tx: OrganizationTransaction,
      @Args('input', { type: () => thing.input }) input: Input,
      @Args('deviceRecordId', { type: () => ID, nullable: true, description: SENT_AGAIN }) id: string | null,
    ): Promise<Outcome> {
      const values = { ...columns(thing, input), ...(id && { id: id.toLowerCase() }) } as DeepPartial<Row>;
      const before = async (): Promise<Row | null> => (id ? this.records.madeBefore(tx, thing.row, id.toLowerCase(), values) : null);
      const made = await before();
      if (made) return thing.show(made);
      await thing.judge?.(tx, input, null);
      const told = await outcome(tx, input, () => this.records.create(tx, thing.row, values));
      if (!(told instanceof NameTaken)) return told;
      // Another request with the same thing was quicker.
      const quicker = await before();
      return quicker ? thing.show(quicker) : told;
    }

    @Allow(permission)
    @Mutation(() => Result, { name: `change${thing.name}` })
    async change(
      @Tx() tx: OrganizationTransaction,
      @Args('id', { type: () => ID }) id: string,
      @Args('version', { type: () => Int }) version: number,
      @Args('input', { type: () => thing.input }) input: Input,
    ): Promise<Outcome> {
      await thing.judge?.(tx, input, id);
      return outcome(tx, input, () => this.records.change(tx, thing.row, id, version, columns(thing, input)));
    }

    @Allow(permission)
    @Mutation(() => Result, { name: `retire${thing.name}` })
    async retire(
      @Tx() tx: OrganizationTransaction,
      @Args('id', { type: () => ID }) id: string,
      @Args('version', { type: () => Int }) version: number,
    ): Promise<Outcome> {
      const needed = await thing.needs?.(tx, id);
      if (needed) return stillInUse(needed.by, needed.count);
      const row = await this.records.retire(tx, thing.row, id, version);
      return row instanceof VersionConflict ? changedMeanwhile(row) : thing.show(row);
    }
  }
  return KeptThingResolver as never;
}
