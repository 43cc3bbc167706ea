import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Problem } from '../../../platform/problems/problem.js';
import { VersionConflict } from '../../../platform/records/kept-records.js';
import { CloseWorkOrder } from '../../fieldwork/order-deeds/close-work-order.service.js';
import { phonesProblems } from '../phones.problems.js';
import type { Body } from './body.js';
import { APPLIED, type DoneOperation } from './done-operation.js';

/** What the crew says of a work order, also when somebody changed the order meanwhile: what hands did is done. */
@Injectable()
export class DoOrder {
  constructor(private readonly closing: CloseWorkOrder) {}

  async end(tx: OrganizationTransaction, _: string, body: Body): Promise<DoneOperation> {
    const input = {
      id: body.text('workOrderId'),
      version: body.number('version'),
      done: body.flag('done'),
      note: body.textOrNull('note'),
      resolvesFinding: body.flag('resolvesFinding'),
    };
    try {
      const first = await this.closing.run(tx, input);
      const closed = first instanceof VersionConflict ? await this.closing.run(tx, { ...input, version: first.version }) : first;
      if (closed instanceof VersionConflict) return { verdict: 'conflict', other: { changedBy: closed.changedBy } };
      if (closed.state === 'waiting for approval')
        return { verdict: 'conflict', problem: phonesProblems.decidedMeanwhile({ what: 'The work order', state: closed.state }) };
      return first instanceof VersionConflict ? { verdict: 'parallel', other: { changedBy: first.changedBy } } : APPLIED;
    } catch (problem) {
      if (!(problem instanceof Problem) || problem.code !== 'WORK_ORDER_ENDED') throw problem;
      const { state } = problem.details as { state: string };
      return { verdict: 'conflict', other: { state }, problem: phonesProblems.decidedMeanwhile({ what: 'The work order', state }) };
    }
  }
}
