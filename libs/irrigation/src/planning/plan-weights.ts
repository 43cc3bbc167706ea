/**
 * What a plan is judged by: the price of each thing that can be wrong with it, for a month. They belong to the organization.
 *
 * cost = thirst · felt unmet + waste · (below the roots + run off + filling of lines) + keyPress · presses + watering · waterings
 *
 * Thirst and waste are per litre; a key press and a watering of one zone are worth as many wasted litres. The last is small: where all else is
 * equal, water deep and seldom. Unmet is felt the more, the larger a share of its need a zone lacks (`feltThirst`).
 */
export interface PlanWeights {
  readonly thirst: number;
  readonly waste: number;
  readonly keyPress: number;
  readonly watering: number;
}

/** Thirst costs more than waste, waste more than key presses: a press is a few seconds of a crew, about ten litres of bought water. */
export const defaultPlanWeights: PlanWeights = { thirst: 3, waste: 1, keyPress: 10, watering: 1 };
