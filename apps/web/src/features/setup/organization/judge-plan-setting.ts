import type { IntlShape } from 'react-intl';
import type { PlanSettingInput, SetupPlanSettingQuery } from '../../../graphql/__generated__/graphql.js';
import type { Formats } from '../../../i18n/formats.js';
import { typedNumber } from '../../../i18n/numbers.js';
import type { FormProblem } from '../../../ui/forms/ProblemList.js';

export type KeptPlanSetting = SetupPlanSettingQuery['planSetting'];

/** What programs are planned by, as it is typed, in the organization's units. */
export interface PlanSettingDraft {
  readonly waterFrom: string;
  readonly waterUntil: string;
  readonly thirst: string;
  readonly waste: string;
  readonly keyPress: string;
  readonly watering: string;
}

const PRICES = ['thirst', 'waste'] as const;
const VOLUMES = ['keyPress', 'watering'] as const;

export const planSettingDraft = (formats: Formats, kept: KeptPlanSetting): PlanSettingDraft => ({
  waterFrom: kept.waterFrom,
  waterUntil: kept.waterUntil,
  thirst: formats.number(kept.thirst, 2),
  waste: formats.number(kept.waste, 2),
  keyPress: smallVolume(formats, kept.keyPress),
  watering: smallVolume(formats, kept.watering),
});

// These are a few litres: the figures of a month's water would round them away.
const smallVolume = (formats: Formats, litres: number): string => formats.number(litres / (formats.typed('volume', '1') ?? 1), 1);

interface Judged {
  /** What is sent; null where something is wrong. */
  readonly input: PlanSettingInput | null;
  readonly problems: readonly FormProblem[];
}

/** What is sent of a draft, or what is wrong with it; what nobody touched is sent as it was kept. */
export function judgePlanSetting(intl: IntlShape, formats: Formats, draft: PlanSettingDraft, kept: KeptPlanSetting): Judged {
  const untouched = planSettingDraft(formats, kept);
  const read = (key: (typeof PRICES | typeof VOLUMES)[number], typed: (words: string) => number | null): number | null =>
    draft[key] === untouched[key] ? kept[key] : typed(draft[key]);
  const numbers = [
    ...PRICES.map((key) => [key, read(key, typedNumber)] as const),
    ...VOLUMES.map((key) => [key, read(key, (words) => formats.typed('volume', words))] as const),
  ];
  const clocks = (['waterFrom', 'waterUntil'] as const).filter((key) => !draft[key]);
  const problems = [
    ...clocks.map((key) => ({ field: `plan-${key}`, words: intl.formatMessage({ id: 'setup.plans.noTime' }) })),
    ...numbers.flatMap(([key, value]) =>
      value === null
        ? [{ field: `plan-${key}`, words: intl.formatMessage({ id: 'setup.organization.noNumber' }, { found: draft[key] }) }]
        : [],
    ),
  ];
  const value = Object.fromEntries(numbers) as Record<(typeof PRICES | typeof VOLUMES)[number], number | null>;
  const { thirst, waste, keyPress, watering } = value;
  if (problems.length === 0 && thirst !== null && waste !== null && thirst < waste)
    problems.push({ field: 'plan-thirst', words: intl.formatMessage({ id: 'setup.plans.thirstFirst' }) });
  if (problems.length > 0 || thirst === null || waste === null || keyPress === null || watering === null) return { input: null, problems };
  const { waterFrom, waterUntil } = draft;
  return { input: { waterFrom, waterUntil, thirst, waste, keyPress, watering }, problems };
}
