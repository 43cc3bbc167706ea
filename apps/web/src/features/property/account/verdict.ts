import type { IntlShape } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { GaugedAccountFragment, VerdictOfAccountFragment } from '../../../graphql/__generated__/graphql.js';
import type { Formats } from '../../../i18n/formats.js';
import type { WrittenColumn } from '../../../page/use-volume-column.js';
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

/** How it stands against what the ordinance or the contract allows, in the figures of the gauge below it. */
export function allowanceVerdict(
  { allowed, metered, aboveAllowed: { litres, within, money } }: GaugedAccountFragment,
  { between }: WrittenColumn,
  { intl, formats }: Pick<Words, 'intl' | 'formats'>,
): string {
  if (typeof litres !== 'number') return intl.formatMessage({ id: 'property.account.unknown' });
  if (within) return intl.formatMessage({ id: 'property.account.near' });
  const { text, share } = between(litres, allowed.litres, metered.litres);
  return litres > 0
    ? intl.formatMessage(
        { id: 'property.account.over' },
        { litres: text, money: typeof money === 'number' ? formats.money(money * share) : 'none' },
      )
    : intl.formatMessage({ id: 'property.account.under' }, { litres: text });
}
