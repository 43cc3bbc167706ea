import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { Temporal } from 'temporal-polyfill';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { brokenConstraint } from '../../../platform/problems/constraint-problems.js';
import type { FindingRow } from '../finding.entity.js';
import { findings, type NewFinding } from '../finding.repository.js';

/** The kind of all that a crew saw with its own eyes. */
export const SEEN_ON_SITE = 'seen on site';

/** What a crew saw at a visit: a broken head, a leak. */
export interface SeenOnSite {
  readonly propertyId: string;
  readonly zoneId: string | null;
  readonly visitId: string;
  readonly seenAt: Date;
  readonly timeZone: string;
  /** in the words of a zone walk */
  readonly what: string;
  readonly count: number;
  readonly word: string | null;
  readonly repaired: boolean;
}

/** Which finding something is: where it is and what. What has no name of its own is another one at each visit. */
function causeOf({ what, zoneId, visitId }: Pick<SeenOnSite, 'what' | 'zoneId' | 'visitId'>): string {
  return [SEEN_ON_SITE, what, zoneId ?? 'property', ...(what === 'other' ? [visitId] : [])].join(' ');
}

/** How a finding is closed that was repaired where it was seen. */
const REPAIRED = 'repaired on the spot';

/** Makes a finding of what a crew saw, already resolved where it was repaired on the spot. Seen again it is the same finding, and says so. */
@Injectable()
export class SeeOnSite {
  async run(tx: OrganizationTransaction, seen: SeenOnSite): Promise<void> {
    if (!(await this.follow(tx, seen)) && !(await this.open(tx, seen))) await this.follow(tx, seen);
  }

  private async follow(tx: OrganizationTransaction, seen: SeenOnSite): Promise<boolean> {
    const present = await findings.ofCause(tx, seen.propertyId, causeOf(seen));
    const row = present && (await findings.locked(tx, present.id));
    if (!row) return false;
    await findings.update(tx, [{ id: row.id, values: { ...said(row, seen), ...lived(tx, row, seen) } }]);
    return true;
  }

  /** @returns false where another phone was faster */
  private async open(tx: OrganizationTransaction, seen: SeenOnSite): Promise<boolean> {
    try {
      await tx.attempt(() => findings.insert(tx, [opened(tx, seen)]));
      return true;
    } catch (problem) {
      if (brokenConstraint(problem)?.name === 'finding_one_per_cause') return false;
      throw problem;
    }
  }

  /** @returns the id of the finding that was made of what was seen; null where nothing of it was told */
  async find(tx: OrganizationTransaction, seen: Pick<SeenOnSite, 'propertyId' | 'what' | 'zoneId' | 'visitId'>): Promise<string | null> {
    return (await findings.ofCause(tx, seen.propertyId, causeOf(seen)))?.id ?? null;
  }
}

const settled = (tx: OrganizationTransaction, { word, seenAt }: SeenOnSite) => ({
  state: 'resolved' as const,
  resolvedWith: word ? `${REPAIRED}: ${word}` : REPAIRED,
  decidedBy: tx.actor.personId,
  decidedAt: seenAt,
  clearedAt: seenAt,
});

const REOPENED = {
  state: 'open' as const,
  resolvedWith: null,
  dismissedWhy: null,
  dismissedReason: null,
  decidedBy: null,
  decidedAt: null,
  clearedAt: null,
  acknowledgedAt: null,
  acknowledgedBy: null,
  acknowledgedNote: null,
  acknowledgedUntil: null,
};

function opened(tx: OrganizationTransaction, seen: SeenOnSite): NewFinding {
  const day = dayOf(seen);
  return {
    ...{ id: randomUUID(), propertyId: seen.propertyId, zoneId: seen.zoneId, kind: SEEN_ON_SITE, causeKey: causeOf(seen) },
    ...{ state: 'open' as const, openedAt: seen.seenAt, fromOn: day, untilOn: day, confidence: 1, cameBack: 0, version: 1 },
    ...words(seen),
    ...(seen.repaired && settled(tx, seen)),
  };
}

/** The newest sighting is what a finding says; one that comes late changes nothing but when it began. */
function said(row: FindingRow, seen: SeenOnSite): Partial<FindingRow> {
  const day = dayOf(seen);
  const isLate = row.untilOn !== null && day < row.untilOn && row.evidence['visitId'] !== seen.visitId;
  const fromOn = row.fromOn !== null && row.fromOn < day ? row.fromOn : day;
  return isLate ? { fromOn } : { ...words(seen), fromOn, untilOn: day };
}

/** What becomes of it: repaired now it is resolved; seen at a later visit than the one that ended it, it has come back. */
function lived(tx: OrganizationTransaction, row: FindingRow, seen: SeenOnSite): Partial<FindingRow> {
  const next = { version: row.version + 1 };
  if (row.state === 'open' || row.state === 'in work') return seen.repaired ? { ...next, ...settled(tx, seen) } : {};
  if (row.evidence['visitId'] !== seen.visitId) return isBack(row, seen) ? { ...next, ...cameBack(tx, row, seen) } : {};
  if (!(row.resolvedWith ?? '').startsWith(REPAIRED)) return {};
  // Told otherwise at the same visit: it was a slip of the finger, or there is more to say.
  return { ...next, ...(seen.repaired ? settled(tx, seen) : REOPENED) };
}

const isBack = ({ decidedAt }: FindingRow, { seenAt }: SeenOnSite): boolean => decidedAt === null || decidedAt < seenAt;
const cameBack = (tx: OrganizationTransaction, row: FindingRow, seen: SeenOnSite): Partial<FindingRow> => ({
  ...REOPENED,
  openedAt: seen.seenAt,
  cameBack: row.cameBack + 1,
  ...(seen.repaired && settled(tx, seen)),
});

const words = ({ what, count, word, zoneId, visitId }: SeenOnSite) => ({
  says: { code: SEEN_ON_SITE, details: { what, count, word, zoneId } },
  evidence: { what, count, word, visitId },
});

const dayOf = ({ seenAt, timeZone }: SeenOnSite): string =>
  Temporal.Instant.fromEpochMilliseconds(seenAt.getTime()).toZonedDateTimeISO(timeZone).toPlainDate().toString();
