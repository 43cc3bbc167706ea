import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { todayOf } from '../../../platform/jobs/clock.js';
import { judgeValues, text } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { VersionConflict } from '../../../platform/records/kept-records.js';
import { requireProperty } from '../../portfolio/properties/property-scope.service.js';
import { nameOfPerson } from './decided-by.js';
import type { FindingRow } from '../finding.entity.js';
import { findings } from '../finding.repository.js';
import { findingsProblems } from '../findings.problems.js';

/** Until when a finding is silent (null: until it clears), and what was noted. */
export interface Acknowledgement {
  readonly version: number;
  readonly until: string | null;
  readonly note: string;
}

/** Somebody has seen a finding, and it is silent until a date or until it clears; then it is told anew. */
@Injectable()
export class AcknowledgeFinding {
  async run(tx: OrganizationTransaction, id: string, how: Acknowledgement): Promise<FindingRow | VersionConflict> {
    const present = await findings.locked(tx, id);
    if (!present) throw platformProblems.notFound({ thing: 'finding', id });
    await requireProperty(tx, present.propertyId);
    // The same sent twice is one.
    if (isSaid(present, how)) return present;
    if (present.version !== how.version)
      return new VersionConflict(
        id,
        present.version,
        await nameOfPerson(tx, present.decidedBy ?? present.acknowledgedBy),
        present.decidedAt,
      );
    if (present.state !== 'open' && present.state !== 'in work') throw findingsProblems.notOpen({ id, state: present.state });
    check(how, todayOf(await organizations.own(tx)));
    const values = {
      acknowledgedAt: new Date(),
      acknowledgedBy: tx.actor.personId,
      acknowledgedNote: how.note.trim(),
      acknowledgedUntil: how.until,
      version: present.version + 1,
    };
    await findings.update(tx, [{ id, values }]);
    return { ...present, ...values };
  }
}

const isSaid = ({ acknowledgedAt, acknowledgedUntil, acknowledgedNote }: FindingRow, { until, note }: Acknowledgement): boolean =>
  acknowledgedAt !== null && acknowledgedUntil === until && acknowledgedNote === note.trim();

function check({ until, note }: Acknowledgement, today: string): void {
  if (until !== null && until < today)
    throw platformProblems.valueRefused({ field: 'until', found: until, expected: 'today or a later day' });
  if (!note.trim()) throw platformProblems.valueRefused({ field: 'note', found: note, expected: 'a few words on why it can wait' });
  judgeValues({ note }, { note: text });
}
