import type { IntlShape } from 'react-intl';
import type { Names } from '../../says/names.js';
import { detailsOf, type Reason } from '../../says/reason.js';
import { messageOf } from '../../says/saying.js';

/** Families of words for what programs do not keep. */
const BROKEN = ['plan.limit', 'plan.breach', 'plan.refused'] as const;

/** Why there is no plan, and what to do about it. */
export function planReason(intl: IntlShape, names: Names, reason: Reason): string {
  const details = detailsOf(reason);
  const named = details.texts('zones').map((id) => names.of(id) ?? id);
  const broken = details
    .texts('broken')
    .map((what) => BROKEN.map((family) => messageOf({ intl }, `${family}.${what}`)).find(Boolean) ?? what);
  const listed = [named, details.numbers('stations').map(String), broken].find(({ length }) => length > 0) ?? [];
  const values = { count: listed.length, list: intl.formatList(listed, { type: 'conjunction' }) };
  return (
    messageOf({ intl }, `plan.reason.${reason.code}`, values) ?? intl.formatMessage({ id: 'plan.reason.other' }, { code: reason.code })
  );
}
