/** Published checks of this subject that are not computed here, with the reason. */
export const leftOut: Readonly<Record<string, string>> = {
  'mp-006': 'the result of one trial with one compost; nothing is computed from it, and a rule from one trial would be invented',
};
