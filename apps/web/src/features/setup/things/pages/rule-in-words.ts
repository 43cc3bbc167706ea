import type { IntlShape } from 'react-intl';
import type { WateringRuleFieldsFragment } from '../../../../graphql/__generated__/graphql.js';
import type { MessageId } from '../../../../i18n/catalogue.js';
import type { Formats } from '../../../../i18n/formats.js';
import { clockInWords, daysInWords } from '../../../../programs/days-in-words.js';

/** What a rule holds back, in the order of its form: 'not from 10:00 am to 8:00 pm; potable water'. */
export function ruleInWords(intl: IntlShape, formats: Formats, rule: WateringRuleFieldsFragment): string {
  const say = (part: string, values?: Record<string, string | number>) =>
    intl.formatMessage({ id: `setup.rule.${part}` as MessageId }, values);
  const named = (kind: 'plants' | 'water', list: string | null | undefined) =>
    list && intl.formatList(list.split(',').map((one) => intl.formatMessage({ id: `${kind}.${one.trim()}` as MessageId })));
  const { allowedDays, daysPerWeek, addressParity, blockedFrom, blockedUntil, maxMinutes, hoursAfterRain } = rule;
  const daysOf = (days: string) => (days === 'none' ? say('never') : say('days', { days: daysInWords(intl, formats, days) }));
  const hoursOf = (from: string | null | undefined, until: string | null | undefined) =>
    from && until && say('blocked', { from: clockInWords(formats, from), until: clockInWords(formats, until) });
  return [
    allowedDays && daysOf(allowedDays),
    daysPerWeek && say('daysPerWeek', { count: daysPerWeek }),
    addressParity && say(addressParity),
    hoursOf(blockedFrom, blockedUntil),
    maxMinutes && say('minutes', { count: formats.number(maxMinutes) }),
    hoursAfterRain && say('afterRain', { count: formats.number(hoursAfterRain) }),
    named('plants', rule.plants),
    named('water', rule.water),
    rule.effectiveFrom && say('from', { day: formats.dayOfYear(rule.effectiveFrom) }),
    rule.effectiveUntil && say('until', { day: formats.dayOfYear(rule.effectiveUntil) }),
  ]
    .filter(Boolean)
    .join('; ');
}
