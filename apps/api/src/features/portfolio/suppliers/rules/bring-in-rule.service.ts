import { Injectable } from '@nestjs/common';
import { dateOfDayNumber, dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { KeptRecords, VersionConflict } from '../../../../platform/records/kept-records.js';
import { wateringRulesOfSupplier } from './watering-rules.loader.js';
import { judgeWateringRule, wateringRuleValues } from './watering-rule-values.js';
import { WateringRuleRow } from './watering-rule.entity.js';
import { WateringRuleInput } from './watering-rule.input.js';

export { WateringRuleInput };

/** Brings a supplier's new rule in; the one that it replaces ends the day before. */
@Injectable()
export class BringInRule {
  constructor(private readonly records: KeptRecords) {}

  async run(tx: OrganizationTransaction, input: WateringRuleInput, replacesId: string | null): Promise<WateringRuleRow> {
    await judgeWateringRule(tx, input);
    if (replacesId !== null) await this.end(tx, input, replacesId);
    return this.records.create(tx, WateringRuleRow, wateringRuleValues(input));
  }

  private async end(tx: OrganizationTransaction, input: WateringRuleInput, replacesId: string): Promise<void> {
    const replaced = await replacedRule(tx, input.supplierId, replacesId);
    const { effectiveFrom } = input;
    const begins = replaced.effectiveFrom;
    // A rule that would end before it began, or whose successor holds from now on, is taken out of use.
    const outcome =
      effectiveFrom && (begins === null || begins < effectiveFrom)
        ? await this.records.change(tx, WateringRuleRow, replacesId, replaced.version, {
            effectiveUntil: dateOfDayNumber(dayNumberOfDate(effectiveFrom) - 1),
          })
        : await this.records.retire(tx, WateringRuleRow, replacesId, replaced.version);
    if (outcome instanceof VersionConflict) throw platformProblems.notFound({ thing: 'watering rule', id: replacesId });
  }
}

/** The rule in use of a supplier that another would replace. */
export async function replacedRule(tx: OrganizationTransaction, supplierId: string, id: string): Promise<WateringRuleRow> {
  const found = (await wateringRulesOfSupplier.of(tx).load(supplierId.toLowerCase())).find((rule) => rule.id === id.toLowerCase());
  if (!found) throw platformProblems.notFound({ thing: 'watering rule', id });
  return found;
}

/** A rule as it would be kept. */
export async function proposedRule(
  tx: OrganizationTransaction,
  input: WateringRuleInput,
): Promise<Omit<WateringRuleRow, 'organizationId'>> {
  await judgeWateringRule(tx, input);
  return { ...(wateringRuleValues(input) as WateringRuleRow), id: '', version: 0, retiredAt: null, typed: {} };
}
