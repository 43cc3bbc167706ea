import type { SearchBudget } from '@rillbook/routing/search-budget.js';

/** A search that ends after so many seconds by the clock. */
export function budgetOfSeconds(seconds: number): SearchBudget {
  const begun = performance.now();
  return () => Math.min(1, (performance.now() - begun) / (1000 * seconds));
}
