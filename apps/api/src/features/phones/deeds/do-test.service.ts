import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { RecordZoneTest } from '../../fieldwork/visits/zone-tests/record-zone-test.service.js';
import type { Body } from './body.js';
import { APPLIED, type DoneOperation } from './done-operation.js';

const common = (key: string, body: Body) => ({
  id: key,
  visitId: body.text('visitId'),
  zoneId: body.text('zoneId'),
  testedAt: body.instant('testedAt'),
  minutes: body.numberOrNull('minutes'),
  word: body.textOrNull('word'),
});

/** What a crew read when it tested a zone. A test's id is the key of its operation. */
@Injectable()
export class DoTest {
  constructor(private readonly recording: RecordZoneTest) {}

  async flow(tx: OrganizationTransaction, key: string, body: Body): Promise<DoneOperation> {
    await this.recording.run(tx, {
      ...common(key, body),
      kind: 'flow',
      meterId: body.text('meterId'),
      registerBefore: body.number('registerBefore'),
      registerAfter: body.number('registerAfter'),
    });
    return APPLIED;
  }

  async cans(tx: OrganizationTransaction, key: string, body: Body): Promise<DoneOperation> {
    const { catchesMl, mouthM2 } = { catchesMl: body.numbers('catchesMl'), mouthM2: body.numberOrNull('mouthM2') };
    await this.recording.run(tx, { ...common(key, body), kind: 'catch', catchesMl, mouthM2 });
    return APPLIED;
  }
}
