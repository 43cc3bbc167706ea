import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { personNameOfId } from '../../../platform/records/person-name.loader.js';
import { RecordReading } from '../../metering/readings/record-reading.service.js';
import { RecordSettings } from '../../settings/facts/record-settings.service.js';
import type { Body } from './body.js';
import { APPLIED, type DoneOperation, type SaidBefore } from './done-operation.js';
import { readingOf, settingsOf } from './records-of-body.js';

/** Records of what was read and found: they are never edited, so what stands there already stays beside what was sent. */
@Injectable()
export class DoRecord {
  constructor(
    private readonly readings: RecordReading,
    private readonly facts: RecordSettings,
  ) {}

  async reading(tx: OrganizationTransaction, key: string, body: Body): Promise<DoneOperation> {
    const { outcome, kept } = await this.readings.run(tx, readingOf(key, body));
    if (outcome === 'kept') return APPLIED;
    const { register, readAt, note } = kept;
    const other = { register, readAt: readAt.toISOString(), note, by: await nameOf(tx, kept.personId) };
    return { verdict: 'conflict', other, before: before('reading', kept) };
  }

  async settings(tx: OrganizationTransaction, key: string, body: Body): Promise<DoneOperation> {
    const { outcome, kept } = await this.facts.run(tx, settingsOf(key, body));
    if (outcome === 'kept') return APPLIED;
    const { record, state, effectiveAt, programs } = kept;
    const other = { record, state, effectiveAt: effectiveAt.toISOString(), programs, by: await nameOf(tx, kept.personId) };
    return { verdict: 'conflict', other, before: before('settings', kept) };
  }
}

interface Kept {
  readonly personId: string | null;
  readonly recordedAt: Date;
  readonly deviceRecordId: string | null;
}

const before = (kind: string, { personId, recordedAt, deviceRecordId }: Kept): SaidBefore => ({
  ...{ kind, personId },
  at: recordedAt,
  id: deviceRecordId,
});

const nameOf = async (tx: OrganizationTransaction, personId: string | null): Promise<string | null> =>
  personId ? personNameOfId.of(tx).load(personId) : null;
