/** SQLSTATE of what goes by itself: two transactions that waited for each other, of which the database ended one, and a lock that came too late. */
const PASSING = ['40001', '40P01', '55P03'];

/** Whether the database gave up only because of what went on beside it: the same done again may well be done. */
export function isPassingFault(thrown: unknown): boolean {
  const { code, driverError } = (thrown ?? {}) as { readonly code?: unknown; readonly driverError?: { readonly code?: unknown } };
  return PASSING.includes(String(driverError?.code ?? code));
}
