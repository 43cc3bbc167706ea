const keyOf = (organizationId: string): string => `rillbook.clockAhead.${organizationId}`;

/** How far the organization's clock is ahead of this phone's, as the server last told. [ms] */
export function aheadMs(organizationId: string): number | null {
  const kept = localStorage.getItem(keyOf(organizationId));
  return kept === null || !Number.isFinite(Number(kept)) ? null : Number(kept);
}

export function keepAhead(organizationId: string, ms: number): void {
  localStorage.setItem(keyOf(organizationId), String(Math.round(ms)));
}

/** The organization's now: a phone's clock may be wrong, and the demonstration lives in another week. */
export const organizationNow = (organizationId: string): Date => new Date(Date.now() + (aheadMs(organizationId) ?? 0));
