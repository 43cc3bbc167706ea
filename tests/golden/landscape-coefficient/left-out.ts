const LIST =
  'a row of the WUCOLS list, which is not part of the product: zones state a category, no species is looked up; `npm run prove -- species` compares it with the list';

/** Published checks of this subject that are not computed here, with the reason. */
export const leftOut: Readonly<Record<string, string>> = {
  'pl-003': LIST,
  'pl-010': LIST,
  'pl-012': LIST,
  'pl-013': LIST,
  'pl-015': LIST,
  'pl-016': LIST,
  'pl-018': LIST,
  'pl-019': LIST,
  'pl-021': LIST,
  'pl-022': LIST,
  'pl-024': LIST,
  'pl-025': LIST,
  'pl-027': LIST,
  'pl-039': 'landscape coefficients measured for single species: the product looks up no species, and nothing is computed from them',
};
