const names = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** Things by name as people count: Zone 2 before Zone 10. */
export const byName = <Thing extends { readonly name: string }>(things: readonly Thing[]): Thing[] =>
  things.toSorted((a, b) => names.compare(a.name, b.name));
