import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { readings } from './reading.repository.js';
import {
  type JudgedRegister,
  type MeterScale,
  READINGS_TO_JUDGE_BY,
  type RegisterAt,
  RegisterHistory,
} from '@rillbook/metering/intervals/register-history.js';

/** Judges a register by the meter's readings before it. */
export async function judgeRegister(
  tx: OrganizationTransaction,
  meter: MeterScale & { readonly id: string },
  next: RegisterAt,
): Promise<JudgedRegister> {
  const before = await readings.before(tx, { meterId: meter.id, readAt: next.readAt }, READINGS_TO_JUDGE_BY);
  const history = new RegisterHistory(meter, before.length < READINGS_TO_JUDGE_BY);
  for (const reading of before.reverse()) history.follow(reading);
  return history.judge(next);
}
