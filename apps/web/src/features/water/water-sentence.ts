import { isAlike } from '@rillbook/showing/report/is-alike.js';
import type { IntlShape } from 'react-intl';
import type { Formats } from '../../i18n/formats.js';
import type { Reason } from '../../says/reason.js';
import type { Says } from '../../says/use-says.js';

interface Account {
  readonly needed: { readonly litres?: number | null };
  readonly metered: { readonly litres?: number | null; readonly reason?: Reason | null };
  readonly aboveNeed: { readonly litres?: number | null; readonly within?: boolean | null; readonly money?: number | null };
}

interface Saying {
  readonly intl: IntlShape;
  readonly formats: Pick<Formats, 'money'>;
  readonly says: Pick<Says, 'volume' | 'because'>;
}

/** What a property took against what its plants needed, as a sentence; what is not known is said so, never as zero. */
export function waterSentence({ intl, formats, says }: Saying, name: string, account: Account | null): string {
  if (!account) return name;
  const { needed, metered, aboveNeed } = account;
  if (typeof metered.litres !== 'number')
    return intl.formatMessage(
      { id: 'yourWater.says.notMetered' },
      { name, reason: metered.reason ? says.because(metered.reason) : 'none' },
    );
  const values = { name, metered: says.volume(metered.litres), needed: says.volume(needed.litres) };
  const gap = aboveNeed.litres;
  if (typeof needed.litres !== 'number' || typeof gap !== 'number') return intl.formatMessage({ id: 'yourWater.says.noNeed' }, values);
  if (aboveNeed.within) return intl.formatMessage({ id: withinId(gap, needed.litres) }, values);
  const money = typeof aboveNeed.money === 'number' ? formats.money(Math.abs(aboveNeed.money)) : 'none';
  const id = gap > 0 ? 'yourWater.says.above' : 'yourWater.says.below';
  return intl.formatMessage({ id }, { ...values, gap: says.volume(Math.abs(gap)), money });
}

/** What is said of a gap that is smaller than what can be measured, as a report says it. */
function withinId(gap: number, needed: number): `yourWater.says.${'near' | 'unsureAbove' | 'unsureBelow'}` {
  if (isAlike(gap, needed)) return 'yourWater.says.near';
  return gap > 0 ? 'yourWater.says.unsureAbove' : 'yourWater.says.unsureBelow';
}
