import { randomUUID } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import { Injectable, type OnModuleInit } from '@nestjs/common';
import type { FindingCandidate } from '@rillbook/metering/detection/finding-candidate.js';
import type { Thresholds } from '@rillbook/metering/detection/thresholds.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Events } from '../../../platform/records/events.js';
import { type AccountsComputed, PropertiesComputed } from '../../accounts/accounts-computed.event.js';
import type { FindingRow } from '../finding.entity.js';
import { findings } from '../finding.repository.js';
import { candidatesOf } from './candidates.js';

const THRESHOLDS = Symbol('thresholds');

/** How a finding is closed when what it said is no longer so. */
const CLEARED = 'no longer seen';

/**
 * Opens and closes findings when accounts are computed: one for each cause, however often it is seen.
 *
 * An open one follows the numbers; one in work waits for its order; a dismissed one is silent until it has cleared;
 * a resolved one comes back when a month that began after it was resolved still shows it.
 */
@Injectable()
export class OpenFindings implements OnModuleInit {
  constructor(private readonly events: Events) {}

  onModuleInit(): void {
    this.events.on(PropertiesComputed, (tx, event) => this.run(tx, event.properties));
  }

  async run(tx: OrganizationTransaction, computed: readonly AccountsComputed[]): Promise<void> {
    const thresholds = await thresholdsOf(tx);
    const kept = await findings.ofProperties(
      tx,
      computed.map(({ propertyId }) => propertyId),
    );
    const opened: Partial<FindingRow>[] = [];
    for (const event of computed) opened.push(...(await this.ofProperty(tx, event, kept.get(event.propertyId) ?? [], thresholds)));
    await findings.insert(tx, opened);
  }

  /** Follows and clears what is there; gives what is to be opened. */
  private async ofProperty(
    tx: OrganizationTransaction,
    event: AccountsComputed,
    kept: readonly FindingRow[],
    thresholds: Thresholds,
  ): Promise<Partial<FindingRow>[]> {
    const candidates = candidatesOf(event, thresholds);
    const opened: Partial<FindingRow>[] = [];
    const matched = new Set<string>();
    for (const candidate of candidates) {
      const present =
        kept.find((row) => row.causeKey === candidate.causeKey && !matched.has(row.id)) ??
        kept.find((row) => !matched.has(row.id) && becomes(row, candidate, candidates));
      if (present) {
        matched.add(present.id);
        await this.follow(tx, present, candidate, event);
      } else opened.push(asOpened(candidate, event));
    }
    for (const row of kept) if (!matched.has(row.id)) await this.clear(tx, row);
    return opened;
  }

  private async follow(tx: OrganizationTransaction, row: FindingRow, candidate: FindingCandidate, event: AccountsComputed): Promise<void> {
    if (row.state === 'open' || row.state === 'in work') {
      const now = said(candidate);
      if (!saysTheSame(row, now)) await findings.update(tx, row.id, now);
      return;
    }
    const decidedOn = row.decidedAt?.toISOString().slice(0, 10) ?? '';
    const cleared = row.evidence['clearedOn'] !== undefined || row.decidedBy === null;
    // Numbers of the month in which it was settled still hold what ran before.
    const back = row.state === 'dismissed' ? row.evidence['clearedOn'] !== undefined : cleared || candidate.fromDate > decidedOn;
    if (back)
      await findings.update(tx, row.id, {
        ...said(candidate),
        state: 'open',
        cameBack: row.cameBack + 1,
        openedAt: event.newest.at,
        dismissedWhy: null,
        resolvedWith: null,
        decidedBy: null,
        decidedAt: null,
        version: row.version + 1,
      });
  }

  private async clear(tx: OrganizationTransaction, row: FindingRow): Promise<void> {
    if (row.state === 'open')
      await findings.update(tx, row.id, {
        state: 'resolved',
        resolvedWith: CLEARED,
        decidedBy: null,
        decidedAt: new Date(),
        version: row.version + 1,
      });
    else if (row.state === 'dismissed' && row.evidence['clearedOn'] === undefined)
      await findings.update(tx, row.id, { evidence: { ...row.evidence, clearedOn: new Date().toISOString().slice(0, 10) } });
  }
}

/** An overwatered finding becomes what its cause turns out to be, and an unexplained one may become it again. */
function becomes(row: FindingRow, candidate: FindingCandidate, all: readonly FindingCandidate[]): boolean {
  const sameFamily = row.evidence['causeFamily'] === candidate.causeFamily;
  const stillItself = all.some((other) => other.causeKey === row.causeKey);
  return (
    sameFamily &&
    !stillItself &&
    (row.state === 'open' || row.state === 'in work') &&
    (row.kind === 'overwatered' || candidate.kind === 'overwatered')
  );
}

const asOpened = (candidate: FindingCandidate, event: AccountsComputed): Partial<FindingRow> => ({
  id: randomUUID(),
  propertyId: event.propertyId,
  state: 'open',
  openedAt: event.newest.at,
  cameBack: 0,
  version: 1,
  ...said(candidate),
});

/** Whether a finding's row already says it; as the database keeps it, which knows no undefined. */
function saysTheSame(row: FindingRow, now: Partial<FindingRow>): boolean {
  return Object.entries(now).every(([key, value]) => isDeepStrictEqual(row[key as keyof FindingRow], asKept(value)));
}

const asKept = (value: unknown): unknown =>
  typeof value === 'object' && value !== null ? JSON.parse(JSON.stringify(value)) : (value ?? null);

/** What a candidate says, as columns. */
function said(candidate: FindingCandidate): Partial<FindingRow> {
  return {
    kind: candidate.kind,
    causeKey: candidate.causeKey,
    meterId: candidate.meterId,
    controllerId: candidate.controllerId,
    zoneId: candidate.zoneIds.length === 1 ? candidate.zoneIds[0]! : null,
    fromOn: candidate.fromDate,
    untilOn: candidate.untilDate,
    litres: candidate.litres,
    money: candidate.money,
    confidence: candidate.confidence,
    says: candidate.says,
    evidence: { ...candidate.evidence, zoneIds: candidate.zoneIds, sdLitres: candidate.sdLitres, causeFamily: candidate.causeFamily },
  };
}

async function thresholdsOf(tx: OrganizationTransaction): Promise<Thresholds> {
  const present = tx.kept.get(THRESHOLDS) as Thresholds | undefined;
  if (present) return present;
  const [row] = await tx.query<Thresholds>(
    'select least_confidence as "minConfidence", least_litres as "minLitres", least_money as "minMoney" from organization where id = $1',
    [tx.organizationId],
  );
  tx.kept.set(THRESHOLDS, row);
  return row!;
}
