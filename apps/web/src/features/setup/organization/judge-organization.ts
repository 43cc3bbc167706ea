import type { IntlShape } from 'react-intl';
import type { OrganizationInput, SetupOrganizationQuery } from '../../../graphql/__generated__/graphql.js';
import type { Formats } from '../../../i18n/formats.js';
import { typedNumber } from '../../../i18n/numbers.js';
import type { FormProblem } from '../../../ui/forms/ProblemList.js';

export type KeptOrganization = NonNullable<SetupOrganizationQuery['me']>['organization'];

/** The organization as it is typed, in its own units. */
export interface OrganizationDraft extends Pick<KeptOrganization, 'name' | 'language' | 'units'> {
  readonly volume: string;
  readonly money: string;
  readonly percent: string;
}

export const organizationDraft = (formats: Formats, kept: KeptOrganization): OrganizationDraft => ({
  name: kept.name,
  language: kept.language,
  units: kept.units,
  volume: formats.figureOf('volume', kept.leastLitres),
  money: formats.number(kept.leastMoney, 2),
  percent: formats.number(kept.leastConfidence * 100, 1),
});

interface Judged {
  /** What is sent; null where something is wrong. */
  readonly input: OrganizationInput | null;
  readonly problems: readonly FormProblem[];
}

/** What is sent of a draft, or what is wrong with it. What nobody touched is sent as it was kept, not as it was rounded for the screen. */
export function judgeOrganization(intl: IntlShape, formats: Formats, draft: OrganizationDraft, kept: KeptOrganization): Judged {
  const untouched = organizationDraft(formats, kept);
  const read = (key: 'volume' | 'money' | 'percent', before: number, typed: number | null): number | null =>
    draft[key] === untouched[key] ? before : typed;
  const percent = typedNumber(draft.percent);
  const numbers = {
    volume: read('volume', kept.leastLitres, formats.typed('volume', draft.volume)),
    money: read('money', kept.leastMoney, typedNumber(draft.money)),
    percent: read('percent', kept.leastConfidence, percent === null ? null : percent / 100),
  };
  const noNumber = (['volume', 'money', 'percent'] as const).filter((key) => numbers[key] === null);
  const problems = [
    ...(draft.name.trim() ? [] : [{ field: 'org-name', words: intl.formatMessage({ id: 'identity.first.nameMissing' }) }]),
    ...noNumber.map((key) => ({
      field: `org-${key}`,
      words: intl.formatMessage({ id: 'setup.organization.noNumber' }, { found: draft[key] }),
    })),
  ];
  const { volume, money, percent: share } = numbers;
  if (problems.length > 0 || volume === null || money === null || share === null) return { input: null, problems };
  const { name, language, units } = draft;
  return { input: { name: name.trim(), language, units, leastLitres: volume, leastMoney: money, leastConfidence: share }, problems };
}
