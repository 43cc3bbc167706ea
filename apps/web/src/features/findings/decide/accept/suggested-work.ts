export const WORK_KINDS = ['adjust', 'inspect', 'repair', 'read', 'upgrade', 'plant care'] as const;
export type WorkKind = (typeof WORK_KINDS)[number];

const SUGGESTED: Readonly<Record<string, WorkKind>> = {
  overwatered: 'read',
  'over-programmed': 'adjust',
  'under-programmed': 'adjust',
  'watered in rain': 'adjust',
  'breaks a rule': 'adjust',
  'doubtful reading': 'read',
  stale: 'read',
  'over allowance': 'upgrade',
  'mixed water needs': 'upgrade',
};

/** The work that usually answers a kind of finding; a look at the place where nothing else is usual. Common practice. */
export const suggestedWork = (kind: string): WorkKind => SUGGESTED[kind] ?? 'inspect';
