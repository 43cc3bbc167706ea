import { randomUUID } from 'node:crypto';
import { Injectable, type OnModuleInit } from '@nestjs/common';
import type { FindingCandidate } from '@rillbook/metering/detection/finding-candidate.js';
import type { Thresholds } from '@rillbook/metering/detection/thresholds.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Events } from '../../../platform/records/events.js';
import { AccountsComputed } from '../../accounts/accounts-computed.event.js';
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
    this.events.on(AccountsComputed, (tx, event) => this.run(tx, event));
  }

  async run(tx: OrganizationTransaction, event: AccountsComputed): Promise<void> {
    const candidates = candidatesOf(event, await thresholdsOf(tx));
    const kept = await findings.list(tx, { propertyIds: [event.propertyId] });
    const matched = new Set<string>();
    for (const candidate of candidates) {
      const present =
        kept.find((row) => row.causeKey === candidate.causeKey && !matched.has(row.id)) ??
        kept.find((row) => !matched.has(row.id) && becomes(row, candidate, candidates));
      if (present) {
        matched.add(present.id);
        await this.follow(tx, present, candidate, event);
      } else await this.open(tx, candidate, event);
    }
    for (const row of kept) if (!matched.has(row.id)) await this.clear(tx, row);
  }

  private async open(tx: OrganizationTransaction, candidate: FindingCandidate, event: AccountsComputed): Promise<void> {
    await findings.insert(tx, {
      id: randomUUID(),
      propertyId: event.propertyId,
      state: 'open',
      openedAt: event.newest.at,
      cameBack: 0,
      version: 1,
      ...said(candidate),
    });
  }

  private async follow(tx: OrganizationTransaction, row: FindingRow, candidate: FindingCandidate, event: AccountsComputed): Promise<void> {
    if (row.state === 'open' || row.state === 'in work') {
      await findings.update(tx, row.id, said(candidate));
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
