import { Injectable } from '@nestjs/common';
import { type DismissReason, dismissReasons } from '@rillbook/metering/detection/life/kept-finding.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { judgeValues, text } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { VersionConflict } from '../../../platform/records/kept-records.js';
import { standingProperties } from '../../accounts/standing/standing-properties.service.js';
import { requireProperty } from '../../portfolio/properties/property-scope.service.js';
import type { FindingRow } from '../finding.entity.js';
import { findings } from '../finding.repository.js';
import { nameOfPerson } from './decided-by.js';
import { isWorkedOn } from './is-worked-on.js';

/** Why a finding is none: one of a few reasons, and words. */
export interface Dismissal {
  readonly why: string;
  readonly reason: string;
}

const isReason = (word: string): word is DismissReason => (dismissReasons as readonly string[]).includes(word);

/** Moves a finding through its life: open, in work, resolved, dismissed. */
@Injectable()
export class SettleFinding {
  /** It has a work order. */
  toWork(tx: OrganizationTransaction, id: string, version: number): Promise<FindingRow | VersionConflict> {
    return this.move(tx, id, version, () => ({ ...UNSAID, state: 'in work' }));
  }

  /** It was looked at, with what was found. */
  async resolve(tx: OrganizationTransaction, id: string, how: { with: string; version?: number }): Promise<FindingRow | VersionConflict> {
    const { with: found, version } = how;
    if (!found.trim()) throw platformProblems.valueRefused({ field: 'with', found, expected: 'what was found, in words' });
    judgeValues({ with: found }, { with: text });
    return this.move(tx, id, version, () => ({ ...UNSAID, state: 'resolved', resolvedWith: found.trim() }));
  }

  /** It is none, and why: the detector learns from the reason, and the organization's precision by kind is counted from it. */
  async dismiss(tx: OrganizationTransaction, id: string, version: number, how: Dismissal): Promise<FindingRow | VersionConflict> {
    const { why, reason } = how;
    if (!isReason(reason))
      throw platformProblems.valueRefused({ field: 'reason', found: reason, expected: `one of: ${dismissReasons.join(', ')}` });
    if (reason === 'other' && !why.trim())
      throw platformProblems.valueRefused({ field: 'why', found: why, expected: 'the reason in words' });
    judgeValues({ why }, { why: text });
    return this.move(tx, id, version, () => ({
      ...UNSAID,
      state: 'dismissed',
      dismissedWhy: why.trim() || reason,
      dismissedReason: reason,
    }));
  }

  /** It is looked at again: in work where work for it is still to be done. A silence that was to last until it clears ended when it was resolved. */
  async reopen(tx: OrganizationTransaction, id: string, version: number): Promise<FindingRow | VersionConflict> {
    const state = (await isWorkedOn(tx, id)) ? 'in work' : 'open';
    return this.move(tx, id, version, (present) => ({ ...UNSAID, state, ...(present.state === 'resolved' && HEARD) }));
  }

  private async move(
    tx: OrganizationTransaction,
    id: string,
    version: number | undefined,
    decision: (present: FindingRow) => Partial<FindingRow>,
  ): Promise<FindingRow | VersionConflict> {
    const present = await findings.locked(tx, id);
    if (!present) throw platformProblems.notFound({ thing: 'finding', id });
    await requireProperty(tx, present.propertyId);
    const to = decision(present);
    // The same decision sent twice is one decision.
    if (isDecided(present, to)) return present;
    if (version !== undefined && present.version !== version)
      return new VersionConflict(id, present.version, await nameOfPerson(tx, present.decidedBy), present.decidedAt);
    const values = { ...to, decidedBy: tx.actor.personId, decidedAt: new Date(), version: present.version + 1 };
    await findings.update(tx, [{ id, values }]);
    await standingProperties.forget(tx, present.propertyId);
    return { ...present, ...values } as FindingRow;
  }
}

/** What another state's decision said is not said of this one. */
const UNSAID = { dismissedWhy: null, dismissedReason: null, resolvedWith: null } as const;

const HEARD = { acknowledgedAt: null, acknowledgedBy: null, acknowledgedNote: null, acknowledgedUntil: null } as const;

const isDecided = (present: FindingRow, to: Partial<FindingRow>): boolean =>
  Object.entries(to).every(([key, value]) => present[key as keyof FindingRow] === value);
