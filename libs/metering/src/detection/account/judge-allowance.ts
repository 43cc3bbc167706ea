import { isExplained } from '../cause.js';
import type { FindingCandidate } from '../finding-candidate.js';
import type { JudgeInput } from './judge-input.js';
import { worthALook } from '../thresholds.js';

/**
 * Over allowance: more metered than ordinance or contract allow, where no other finding explains the excess.
 *
 * Month to date, and projected to the month's end by days. Otherwise the excess stays a line of the account.
 *
 * @param input - The account, thresholds and prices. [code]
 * @param others - All other candidates of the account. [code]
 * @returns The candidate, or none. [code]
 */
export function judgeAllowance(input: JudgeInput, others: readonly FindingCandidate[]): readonly FindingCandidate[] {
  const { account, thresholds } = input;
  const { meteredOverAllowed: gap, allowed, metered, landscapeGap } = account.property;
  if (gap.litres === null || gap.sdLitres === null || account.throughDate === null) return [];
  const worthy = worthALook({ litres: gap.litres, sdLitres: gap.sdLitres, pricePerLitre: meanPrice(input) }, thresholds);
  if (!worthy || isExplained(worthy.litres, others)) return [];
  const projectedLitres = (worthy.litres * account.daysInMonth) / account.daysCovered;
  const only = account.meters.length === 1 ? account.meters[0] : undefined;
  return [
    {
      kind: 'over allowance',
      causeKey: 'over allowance',
      causeFamily: 'over allowance',
      meterId: only?.meterId ?? null,
      controllerId: null,
      zoneIds: [],
      fromDate: account.firstDate,
      untilDate: account.throughDate,
      ...worthy,
      evidence: { allowed, metered, landscapeGap, projectedLitres, inputs: gap.inputs },
      says: {
        code: 'over allowance',
        details: {
          allowedLitres: allowed.litres,
          meteredLitres: metered.litres,
          landscapeGapLitres: landscapeGap.litres,
          projectedLitres,
          daysCovered: account.daysCovered,
          daysInMonth: account.daysInMonth,
        },
      },
    },
  ];
}

// Weighted by what each meter passed; null where the price of any that passed water is not known.
function meanPrice({ account, pricePerLitre }: JudgeInput): number | null {
  const passed = account.meters.map(({ meterId, metered }) => ({
    price: pricePerLitre.get(meterId) ?? null,
    litres: Math.max(0, metered.litres ?? 0),
  }));
  const litres = passed.reduce((sum, each) => sum + each.litres, 0);
  if (litres === 0 || passed.some(({ price, litres: own }) => price === null && own > 0)) return null;
  return passed.reduce((sum, each) => sum + each.litres * (each.price ?? 0), 0) / litres;
}
