import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import type { OperationRow } from '../operations/operation.entity.js';
import { operations } from '../operations/operation.repository.js';
import { TakeOperation } from '../operations/take-operation.service.js';

/** Somebody in the office takes in what was refused, once its reason is gone or because they may what the sender may not. */
@Injectable()
export class TakeIn {
  constructor(private readonly taking: TakeOperation) {}

  /** @returns the operation with what became of it; what is not refused stays as it is */
  async run(tx: OrganizationTransaction, key: string): Promise<OperationRow> {
    await operations.hold(tx, [key]);
    const row = await operations.ofKey(tx, key);
    if (!row) throw platformProblems.notFound({ thing: 'operation', id: key });
    return row.verdict === 'refused' ? { ...row, ...(await this.taking.again(tx, row)) } : row;
  }
}
