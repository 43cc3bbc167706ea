import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { between, judgeValues, name, text } from '../../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import { personNameOfId } from '../../../../platform/records/person-name.loader.js';
import type { Material, VisitRow } from '../visit.entity.js';
import { visits } from '../visit.repository.js';
import { requireOwn } from './require-own.js';
import { requirePossibleTime } from './require-possible-time.js';
import { workedVisit } from './require-visit.js';

/** What was done at a visit, what is left, and when it ended. */
export interface Closing {
  readonly closedAt: Date;
  readonly doneNote: string | null;
  readonly leftNote: string | null;
  /** hands at work, all persons together; null where nobody counted */
  readonly workedMinutes?: number | null;
  readonly materials?: readonly Material[];
}

/** A crew of ten for two days. */
const LONGEST_MINUTES = 10 * 2 * 24 * 60;

/** Ends a visit: once for each version that was read, and the same ending sent again is the same. */
@Injectable()
export class CloseVisit {
  async run(tx: OrganizationTransaction, id: string, version: number, closing: Closing): Promise<VisitRow> {
    judge(closing);
    await requirePossibleTime(tx, 'closedAt', closing.closedAt);
    const visit = await workedVisit(tx, id);
    await requireOwn(tx, visit);
    if (isSameClosing(visit, closing)) return visit;
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
    const values = { ...said(visit, closing), closedBy: tx.actor.personId, version: version + 1 };
    await visits.update(tx, visit.id, values);
    return { ...visit, ...values };
  }
}

/** What a closing does not tell of stays as it was. */
function said({ workedMinutes, materials }: VisitRow, closing: Closing) {
  return { workedMinutes, ...closing, materials: [...(closing.materials ?? materials)] };
}

function judge(closing: Closing): void {
  judgeValues(closing, { doneNote: text, leftNote: text, workedMinutes: between(0, LONGEST_MINUTES, 'minutes') });
  for (const material of closing.materials ?? []) judgeValues(material, { name: name(), count: between(0, 100_000), unit: text });
}

/** Whether a visit was ended in these words already; what a closing does not tell of makes no difference. */
export const isSameClosing = (visit: VisitRow, { closedAt, doneNote, leftNote, workedMinutes, materials }: Closing): boolean =>
  visit.closedAt?.getTime() === closedAt.getTime() &&
  visit.doneNote === doneNote &&
  visit.leftNote === leftNote &&
  (workedMinutes === undefined || visit.workedMinutes === workedMinutes) &&
  (materials === undefined || JSON.stringify(visit.materials.map(inOrder)) === JSON.stringify(materials.map(inOrder)));

/** The values in a fixed order: the database gives names back in its own. */
const inOrder = ({ name: what, count, unit }: Material) => [what, count, unit];
