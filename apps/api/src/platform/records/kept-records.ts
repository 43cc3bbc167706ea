import { randomUUID } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import { Injectable } from '@nestjs/common';
import type { DeepPartial, EntityTarget, FindOptionsWhere } from 'typeorm';
import { platformProblems } from '../problems/platform.problems.js';
import { ChangeRow } from './change.entity.js';
import { Events } from './events.js';
import type { KeptRow } from './kept-row.js';
import type { OrganizationTransaction } from '../database/organization-transaction.js';
import { RecordChanged } from './record-changed.event.js';
import { isUuid } from './uuid.js';

/** Somebody changed the thing since it was read. */
export class VersionConflict {
  constructor(
    readonly id: string,
    readonly version: number,
    readonly changedBy: string | null,
    readonly changedAt: Date | null,
  ) {}
}

const SILENT = new Set(['organizationId', 'id', 'version', 'typed']);

const same = (a: unknown, b: unknown): boolean => (a ?? null) === (b ?? null) || JSON.stringify(a ?? null) === JSON.stringify(b ?? null);

/** The columns that differ, before and after. */
function difference(before: object, after: object): { before: Record<string, unknown>; after: Record<string, unknown> } {
  const was = before as Record<string, unknown>;
  const is = after as Record<string, unknown>;
  const names = Object.keys(is).filter((name) => !SILENT.has(name) && !same(was[name], is[name]));
  return {
    before: Object.fromEntries(names.map((name) => [name, was[name] ?? null])),
    after: Object.fromEntries(names.map((name) => [name, is[name] ?? null])),
  };
}

/** A row of its first version. */
const asNew = <Row extends KeptRow>(tx: OrganizationTransaction, row: EntityTarget<Row>, values: DeepPartial<Row>): Row =>
  tx.of(row).create({
    ...values,
    organizationId: tx.organizationId,
    id: (values as Partial<KeptRow>).id ?? randomUUID(),
    version: 1,
    retiredAt: null,
    typed: (values as Partial<KeptRow>).typed ?? {},
  } as DeepPartial<Row>);

/** Creates, changes and retires things: with a version against lost updates, and a record of what changed, by whom and when. */
@Injectable()
export class KeptRecords {
  constructor(private readonly events: Events) {}

  /** Keeps a new thing. */
  async create<Row extends KeptRow>(tx: OrganizationTransaction, row: EntityTarget<Row>, values: DeepPartial<Row>): Promise<Row> {
    const table = tx.of(row);
    const made = asNew(tx, row, values);
    await table.insert(made as never);
    await this.note(tx, table.metadata.tableName, made, 'create', { before: {}, after: difference({}, made).after });
    return made;
  }

  /** The thing that was made under this id by the same values, as it stands now; null where nothing was. Other values under it are refused. */
  async madeBefore<Row extends KeptRow>(
    tx: OrganizationTransaction,
    row: EntityTarget<Row>,
    id: string,
    values: DeepPartial<Row>,
  ): Promise<Row | null> {
    if (!isUuid(id)) throw platformProblems.valueRefused({ field: 'deviceRecordId', found: id, expected: 'a UUID made by the device' });
    const table = tx.of(row);
    const present = await table.findOneBy({ organizationId: tx.organizationId, id } as FindOptionsWhere<Row>);
    if (!present) return null;
    const first = await tx
      .of(ChangeRow)
      .findOneBy({ organizationId: tx.organizationId, thing: table.metadata.tableName, thingId: id, deed: 'create' });
    const sent = JSON.parse(JSON.stringify(difference({}, asNew(tx, row, values)).after)) as object;
    if (isDeepStrictEqual(first?.after, sent)) return present;
    throw platformProblems.valueRefused({ field: 'deviceRecordId', found: id, expected: 'a UUID of its own for each record' });
  }

  /** Changes a thing if it still has the version that was read. A thing that would not change keeps its version. */
  async change<Row extends KeptRow>(
    tx: OrganizationTransaction,
    row: EntityTarget<Row>,
    id: string,
    version: number,
    values: DeepPartial<Row>,
  ): Promise<Row | VersionConflict> {
    const present = await this.present(tx, row, id);
    if (present.version !== version) return this.conflict(tx, present);
    staysOnItsProperty(present, values);
    const wished = { ...present, ...values } as Row;
    const what = difference(present, wished);
    const renewed = Object.keys(what.after);
    if (!renewed.length) return present;
    // What was typed in a file no longer says what the row says.
    wished.typed = (values as Partial<KeptRow>).typed ?? {};
    return this.write(tx, row, { before: present, after: wished, deed: 'change', what });
  }

  /** Takes a thing out of use; it stays for the past. */
  async retire<Row extends KeptRow>(
    tx: OrganizationTransaction,
    row: EntityTarget<Row>,
    id: string,
    version: number,
  ): Promise<Row | VersionConflict> {
    const present = await this.present(tx, row, id);
    if (present.version !== version) return this.conflict(tx, present);
    if (present.retiredAt) return present;
    const wished = { ...present, retiredAt: new Date() } as Row;
    return this.write(tx, row, { before: present, after: wished, deed: 'retire', what: difference(present, wished) });
  }

  private async write<Row extends KeptRow>(
    tx: OrganizationTransaction,
    row: EntityTarget<Row>,
    deed: { before: Row; after: Row; deed: 'change' | 'retire'; what: { before: object; after: object } },
  ): Promise<Row> {
    const table = tx.of(row);
    const { before, after } = deed;
    after.version = before.version + 1;
    const { organizationId, id, ...columns } = after;
    await table.update({ organizationId, id, version: before.version } as FindOptionsWhere<Row>, columns as never);
    const kept = table.create(after as unknown as DeepPartial<Row>);
    await this.note(tx, table.metadata.tableName, kept, deed.deed, deed.what);
    return kept;
  }

  /** The row as it stands, locked until the transaction ends. */
  private async present<Row extends KeptRow>(tx: OrganizationTransaction, row: EntityTarget<Row>, id: string): Promise<Row> {
    const table = tx.of(row);
    const present = await table.findOne({
      where: { organizationId: tx.organizationId, id } as FindOptionsWhere<Row>,
      lock: { mode: 'pessimistic_write' },
    });
    if (!present) throw platformProblems.notFound({ thing: table.metadata.tableName.replaceAll('_', ' '), id });
    return present;
  }

  private async conflict(tx: OrganizationTransaction, present: KeptRow): Promise<VersionConflict> {
    const [by] = await tx.query<{ name: string | null; at: Date }>(
      'select person.name, change.at from change left join person on person.id = change.person_id where change.organization_id = $1 and change.thing_id = $2 order by change.at desc limit 1',
      [tx.organizationId, present.id],
    );
    return new VersionConflict(present.id, present.version, by?.name ?? null, by?.at ?? null);
  }

  private async note(
    tx: OrganizationTransaction,
    thing: string,
    row: KeptRow,
    deed: ChangeRow['deed'],
    what: { before: object; after: object },
  ): Promise<void> {
    await tx.of(ChangeRow).insert({
      organizationId: tx.organizationId,
      id: randomUUID(),
      thing,
      thingId: row.id,
      thingVersion: row.version,
      deed,
      before: what.before as never,
      after: what.after as never,
      personId: tx.actor.personId,
      way: tx.actor.way,
    });
    await this.events.emit(tx, new RecordChanged(thing, row, deed));
  }
}

/** What stands on a property stays there: its past accounts and findings are that property's. */
function staysOnItsProperty(present: object, values: object): void {
  const [was, is] = [(present as { propertyId?: string }).propertyId, (values as { propertyId?: string }).propertyId];
  if (was && is && was.toLowerCase() !== is.toLowerCase())
    throw platformProblems.valueRefused({
      field: 'propertyId',
      found: is,
      expected: 'the property it stands on; retire it there and create it here',
    });
}
