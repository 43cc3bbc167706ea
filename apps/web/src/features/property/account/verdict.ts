import type { IntlShape } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { VerdictOfAccountFragment } from '../../../graphql/__generated__/graphql.js';
import type { Formats } from '../../../i18n/formats.js';
import type { Says } from '../../../says/use-says.js';

export const verdictOfAccount = graphql(`
  fragment VerdictOfAccount on MonthAccount {
    id
    aboveNeed {
      litres
      within
      money
      reason {
        code
        details
      }
    }
    aboveAllowed {
      litres
      within
      money
    }
    metered {
      reason {
        code
        details
      }
    }
    needed {
      reason {
        code
        details
      }
    }
  }
`);

interface Words {
  readonly intl: IntlShape;
  readonly formats: Formats;
  readonly says: Says;
}

/** How the property stands, by the meter against need, in one sentence. */
export function verdict(name: string, account: VerdictOfAccountFragment | null, { intl, formats, says }: Words): string {
  const { litres = null, within, money } = account?.aboveNeed ?? {};
  if (litres === null) return intl.formatMessage({ id: 'property.verdict.unknown' }, { name });
  if (within || litres === 0) return intl.formatMessage({ id: 'property.verdict.near' }, { name });
  const told = { name, litres: says.volume(Math.abs(litres)) };
  return litres > 0
    ? intl.formatMessage({ id: 'property.verdict.more' }, { ...told, money: typeof money === 'number' ? formats.money(money) : 'none' })
    : intl.formatMessage({ id: 'property.verdict.less' }, told);
}

/** How it stands against what the ordinance or the contract allows. */
export function allowanceVerdict(
  { aboveAllowed: { litres, within, money } }: VerdictOfAccountFragment,
  { intl, formats, says }: Words,
): string {
  if (typeof litres !== 'number') return intl.formatMessage({ id: 'property.account.unknown' });
  if (within) return intl.formatMessage({ id: 'property.account.near' });
  return litres > 0
    ? intl.formatMessage(
        { id: 'property.account.over' },
        { litres: says.volume(litres), money: typeof money === 'number' ? formats.money(money) : 'none' },
      )
    : intl.formatMessage({ id: 'property.account.under' }, { litres: says.volume(-litres) });
}
