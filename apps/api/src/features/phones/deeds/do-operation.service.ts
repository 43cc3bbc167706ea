import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { phonesProblems } from '../phones.problems.js';
import { Body } from './body.js';
import type { DoneOperation } from './done-operation.js';
import { DoOrder } from './do-order.service.js';
import { DoRecord } from './do-record.service.js';
import { DoTest } from './do-test.service.js';
import { DoVisit } from './do-visit.service.js';

type Deed = (tx: OrganizationTransaction, key: string, body: Body, savedAt: Date) => Promise<DoneOperation>;

interface Sent {
  readonly key: string;
  readonly kind: string;
  readonly payloadVersion: number;
  readonly body: string;
  readonly savedAt: Date;
}

/** Does what an operation says, by its kind and the form of its body. Forms of older phones stay in the list. */
@Injectable()
export class DoOperation {
  private readonly deeds: Readonly<Record<string, Deed>>;

  constructor(visit: DoVisit, record: DoRecord, order: DoOrder, test: DoTest) {
    this.deeds = {
      'arrive 1': (tx, key, body) => visit.arrive(tx, key, body),
      'note-zone 1': (...given) => visit.noteZone(...given),
      'photo 1': (tx, key, body) => visit.photo(tx, key, body),
      'withdraw-visit 1': (tx, _, body, savedAt) => visit.withdraw(tx, body, savedAt),
      'close-visit 1': (tx, key, body) => visit.close(tx, key, body),
      'reading 1': (tx, key, body) => record.reading(tx, key, body),
      'settings 1': (tx, key, body) => record.settings(tx, key, body),
      'flow-test 1': (tx, key, body) => test.flow(tx, key, body),
      'catch-test 1': (tx, key, body) => test.cans(tx, key, body),
      'end-order 1': (...given) => order.end(...given),
    };
  }

  run(tx: OrganizationTransaction, { key, kind, payloadVersion, body, savedAt }: Sent): Promise<DoneOperation> {
    const deed = this.deeds[`${kind} ${payloadVersion}`];
    if (!deed) throw phonesProblems.operationUnknown({ kind, payloadVersion });
    return deed(tx, key, Body.of(body), savedAt);
  }
}
