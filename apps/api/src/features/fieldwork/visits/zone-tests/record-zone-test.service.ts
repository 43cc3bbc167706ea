import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { judgeValues, text } from '../../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../../platform/records/uuid.js';
import { MeasureZone } from '../../../portfolio/zones/measure-zone.service.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import { requirePossibleTime } from '../deeds/require-possible-time.js';
import { workedVisit } from '../deeds/require-visit.js';
import { zoneNotes } from '../zone-notes/zone-note.repository.js';
import { caughtOf, type CatchGiven } from './caught-of.js';
import { flowOf, type FlowGiven } from './flow-of.js';
import type { ZoneTestRow } from './zone-test.entity.js';
import { zoneTests } from './zone-test.repository.js';

interface GivenTest {
  /** made by the phone */
  readonly id: string;
  readonly visitId: string;
  readonly zoneId: string;
  readonly testedAt: Date;
  readonly minutes: number | null;
  readonly word: string | null;
}

/** A test of a zone as the phone tells it: what was read, never what follows from it. */
export type ZoneTestGiven = GivenTest & (FlowGiven | CatchGiven);

/**
 * Keeps a test of a zone, once however often it is sent, and puts what it told on the zone's record. What it told is computed here again from
 * what was read. An older test that comes late is kept beside the newer one, which stands.
 */
@Injectable()
export class RecordZoneTest {
  constructor(private readonly measuring: MeasureZone) {}

  async run(tx: OrganizationTransaction, given: ZoneTestGiven): Promise<ZoneTestRow> {
    judgeValues(given, { word: text });
    if (!isUuid(given.id)) throw platformProblems.valueRefused({ field: 'id', found: given.id, expected: 'a UUID made by the phone' });
    await requirePossibleTime(tx, 'testedAt', given.testedAt);
    const visit = await workedVisit(tx, given.visitId);
    const id = given.id.toLowerCase();
    const before = await zoneTests.ofId(tx, id);
    if (before) return same(before, given);
    if (!(await zoneNotes.standsOn(tx, given.zoneId, visit.propertyId)))
      throw platformProblems.valueRefused({ field: 'zoneId', found: given.zoneId, expected: 'a zone of the property that is visited' });
    const { columns, measured } = given.kind === 'flow' ? await flowOf(tx, given, visit.propertyId) : caughtOf(given);
    const onRecord = measured !== null && !(await zoneTests.hasLater(tx, given.zoneId, given.kind, given.testedAt));
    await zoneTests.insert(tx, {
      organizationId: tx.organizationId,
      ...NOTHING,
      ...columns,
      id,
      propertyId: visit.propertyId,
      visitId: visit.id,
      zoneId: given.zoneId,
      kind: given.kind,
      testedAt: given.testedAt,
      minutes: given.minutes,
      word: given.word?.trim() || null,
      personId: tx.actor.personId,
      onRecord,
    });
    if (onRecord) await this.measuring.run(tx, given.zoneId, measured);
    return (await zoneTests.ofId(tx, id))!;
  }
}

const NOTHING = {
  meterId: null,
  registerBefore: null,
  registerAfter: null,
  flowLPerMin: null,
  flowSdLPerMin: null,
  catchesMl: [],
  mouthM2: null,
  duLq: null,
  rateMmPerH: null,
};

function same(before: ZoneTestRow, given: ZoneTestGiven): ZoneTestRow {
  const { zoneId, kind, testedAt } = before;
  if (zoneId === given.zoneId && kind === given.kind && testedAt.getTime() === given.testedAt.getTime()) return before;
  throw fieldworkProblems.zoneTestConflict({ testId: before.id, kind, testedAt: testedAt.toISOString() });
}
