import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';

/** Settings by controller, time and record, and the lines that they were typed as. */
export interface SettingsPlace {
  readonly controllerId: string;
  readonly effectiveAt: Date;
  readonly record: string;
  readonly typed: object;
}

/** For each of some settings: none are stored yet, the same lines, or others. */
export async function storedSettings(
  tx: OrganizationTransaction,
  settings: readonly SettingsPlace[],
): Promise<('none' | 'same' | 'others')[]> {
  const sought = settings.map(({ controllerId, effectiveAt, record, typed }, at) => ({ at, controllerId, effectiveAt, record, typed }));
  const rows = await tx.query<{ at: number; others: boolean }>(
    `select sought.at, stored.typed is distinct from sought.typed as others
       from json_to_recordset($2) as sought (at integer, "controllerId" uuid, "effectiveAt" timestamptz, record text, typed jsonb)
       join settings stored on stored.organization_id = $1 and stored.controller_id = sought."controllerId"
        and stored.effective_at = sought."effectiveAt" and stored.record = sought.record`,
    [tx.organizationId, JSON.stringify(sought)],
  );
  const byPlace = new Map(rows.map(({ at, others }) => [at, others]));
  return settings.map((_, at) => {
    const others = byPlace.get(at);
    if (others === undefined) return 'none';
    return others ? 'others' : 'same';
  });
}
