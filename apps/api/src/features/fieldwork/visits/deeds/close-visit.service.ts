import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Permission, roleIncludes } from '../../../../platform/identity/permission.js';
import { judgeValues, text } from '../../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import { personNameOfId } from '../../../../platform/records/person-name.loader.js';
import type { VisitRow } from '../visit.entity.js';
import { visits } from '../visit.repository.js';
import { requireVisit } from './require-visit.js';

/** What was done at a visit, what is left, and when it ended. */
export interface Closing {
  readonly closedAt: Date;
  readonly doneNote: string | null;
  readonly leftNote: string | null;
}

/** Ends a visit: once for each version that was read, and the same ending sent again is the same. */
@Injectable()
export class CloseVisit {
  async run(tx: OrganizationTransaction, id: string, version: number, closing: Closing): Promise<VisitRow> {
    judgeValues(closing, { doneNote: text, leftNote: text });
    const visit = await requireVisit(tx, id);
    const mine = visit.personId !== null && visit.personId === tx.actor.personId;
    if (!mine && !roleIncludes(tx.actor.role, Permission.CloseOthersStops))
      throw platformProblems.notAllowed({ permission: Permission.CloseOthersStops });
    if (isSame(visit, closing)) return visit;
    if (visit.version !== version) {
      throw fieldworkProblems.changedSinceRead({
        thing: 'visit',
        id,
        version: visit.version,
        changedBy: visit.personId && (await personNameOfId.of(tx).load(visit.personId)),
      });
    }
    if (closing.closedAt < visit.arrivedAt)
      throw platformProblems.valueRefused({
        field: 'closedAt',
        found: closing.closedAt.toISOString(),
        expected: `the arrival (${visit.arrivedAt.toISOString()}) or later`,
      });
    const values = { ...closing, version: version + 1 };
    await visits.update(tx, id, values);
    return { ...visit, ...values };
  }
}

const isSame = (visit: VisitRow, closing: Closing): boolean =>
  visit.closedAt?.getTime() === closing.closedAt.getTime() && visit.doneNote === closing.doneNote && visit.leftNote === closing.leftNote;
