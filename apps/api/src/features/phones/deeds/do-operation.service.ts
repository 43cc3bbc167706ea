import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { phonesProblems } from '../phones.problems.js';
import { Body } from './body.js';
import type { DoneOperation } from './done-operation.js';
import { DoOrder } from './do-order.service.js';
import { DoRecord } from './do-record.service.js';
import { DoTest } from './do-test.service.js';
import { DoVisit } from './do-visit.service.js';

type Deed = (tx: OrganizationTransaction, key: string, body: Body) => Promise<DoneOperation>;

interface Sent {
  readonly key: string;
  readonly kind: string;
  readonly payloadVersion: number;
  readonly body: string;
}

/** Does what an operation says, by its kind and the form of its body. Forms of older phones stay in the list. */
@Injectable()
export class DoOperation {
  private readonly deeds: Readonly<Record<string, Deed>>;

  constructor(visit: DoVisit, record: DoRecord, order: DoOrder, test: DoTest) {
    this.deeds = {
      'arrive 1': (...given) => visit.arrive(...given),
      'note-zone 1': (...given) => visit.noteZone(...given),
      'photo 1': (...given) => visit.photo(...given),
      'close-visit 1': (...given) => visit.close(...given),
      'reading 1': (...given) => record.reading(...given),
      'settings 1': (...given) => record.settings(...given),
      'flow-test 1': (...given) => test.flow(...given),
      'catch-test 1': (...given) => test.cans(...given),
      'end-order 1': (...given) => order.end(...given),
    };
  }

  run(tx: OrganizationTransaction, { key, kind, payloadVersion, body }: Sent): Promise<DoneOperation> {
    const deed = this.deeds[`${kind} ${payloadVersion}`];
    if (!deed) throw phonesProblems.operationUnknown({ kind, payloadVersion });
    return deed(tx, key, Body.of(body));
  }
}
