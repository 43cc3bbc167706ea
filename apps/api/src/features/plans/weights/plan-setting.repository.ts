import { defaultPlanWeights } from '@rillbook/irrigation/planning/plan-weights.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { PlanSettingRow } from './plan-setting.entity.js';

/** What stands where an organization has said nothing. Nights from ten to six are common practice, no source. */
const UNSAID = { ...defaultPlanWeights, version: 0, waterFrom: '22:00', waterUntil: '06:00' };

export type PlanSettingValues = Omit<PlanSettingRow, 'organizationId' | 'id'>;

/** What the organization plans by. */
export const planSettings = {
  async own(tx: OrganizationTransaction): Promise<PlanSettingValues> {
    return (await tx.of(PlanSettingRow).findOneBy({ organizationId: tx.organizationId })) ?? UNSAID;
  },

  /** @returns whether the version was still the one that was read */
  async keep(tx: OrganizationTransaction, version: number, values: Omit<PlanSettingValues, 'version'>): Promise<boolean> {
    const { organizationId } = tx;
    if (version > 0) {
      const changed = await tx.of(PlanSettingRow).update({ organizationId, version }, { ...values, version: version + 1 });
      return changed.affected === 1;
    }
    const rows = await tx.query<{ id: string }>(
      'insert into plan_setting (organization_id, water_from, water_until, thirst, waste, key_press, watering) values ($1, $2, $3, $4, $5, $6, $7) on conflict (organization_id) do nothing returning id',
      [organizationId, values.waterFrom, values.waterUntil, values.thirst, values.waste, values.keyPress, values.watering],
    );
    return rows.length === 1;
  },
};
