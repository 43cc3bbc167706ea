import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { exchangeProblems } from './exchange.problems.js';
import { directoryRows } from './directory.repository.js';

const HOLD_FOR_MS = 30_000;
const TRY_EVERY_MS = 200;

/** Waits until no import of the organization is under way (and for an import: no export either), and keeps others out until the transaction ends. */
export async function holdExchange(tx: OrganizationTransaction, how: 'alone' | 'beside other readers'): Promise<void> {
  const limit = Date.now() + HOLD_FOR_MS;
  while (!(await directoryRows.hold(tx, how))) {
    if (Date.now() > limit) throw exchangeProblems.importUnderWay({});
    await new Promise((resolve) => setTimeout(resolve, TRY_EVERY_MS));
  }
}
