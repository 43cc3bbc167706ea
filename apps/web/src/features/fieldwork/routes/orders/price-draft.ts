import type { OrderToPriceFragment } from '../../../../graphql/__generated__/graphql.js';
import { typedNumber } from '../../../../i18n/numbers.js';

/** One part as it is typed. */
export interface PartDraft {
  readonly name: string;
  readonly count: string;
  readonly price: string;
}

/** A price as it is typed. */
export interface PriceDraft {
  readonly hours: string;
  readonly rate: string;
  readonly parts: readonly PartDraft[];
}

export const EMPTY_PART: PartDraft = { name: '', count: '1', price: '' };
const typed = (value: number | null | undefined): string => (typeof value === 'number' ? String(value) : '');

/** The price that an order has, as it would be typed. */
export const draftOf = ({ labourHours, labourRate, parts }: OrderToPriceFragment): PriceDraft => ({
  hours: typed(labourHours),
  rate: typed(labourRate),
  parts: parts.length ? parts.map(({ name, count, price }) => ({ name, count: typed(count), price: typed(price) })) : [EMPTY_PART],
});

const isEmpty = ({ name, price }: PartDraft): boolean => !name.trim() && !price.trim();
const isNumber = (text: string, least: number): boolean => (typedNumber(text) ?? -1) >= least;

/** What is wrong with a price, by field; `price` where none is named. */
export function wrongOf({ hours, rate, parts }: PriceDraft): { readonly field: string; readonly found: string }[] {
  const hasLabour = hours.trim() !== '' || rate.trim() !== '';
  const labour = hasLabour
    ? [...(isNumber(hours, 0) ? [] : [{ field: 'hours', found: hours }]), ...(isNumber(rate, 0) ? [] : [{ field: 'rate', found: rate }])]
    : [];
  const ofParts = parts.flatMap((part, at) =>
    isEmpty(part)
      ? []
      : [
          ...(part.name.trim() ? [] : [{ field: `part-${at}-name`, found: '' }]),
          ...((typedNumber(part.count) ?? 0) > 0 ? [] : [{ field: `part-${at}-count`, found: part.count }]),
          ...(isNumber(part.price, 0) ? [] : [{ field: `part-${at}-price`, found: part.price }]),
        ],
  );
  const none = !hasLabour && parts.every(isEmpty) ? [{ field: 'hours', found: '' }] : [];
  return [...none, ...labour, ...ofParts];
}

/** The order as it is kept with its new price; nothing else of it changes. */
export const pricedInput = (order: OrderToPriceFragment, { hours, rate, parts }: PriceDraft) => ({
  propertyId: order.property.id,
  kind: order.kind,
  what: order.what,
  controllerId: order.controllerId ?? null,
  meterId: order.meterId ?? null,
  zoneId: order.zoneId ?? null,
  estimateMinutes: order.estimateMinutes ?? null,
  notBefore: order.notBefore ?? null,
  dueOn: order.dueOn ?? null,
  skills: [...order.skills],
  labourHours: typedNumber(hours),
  labourRate: typedNumber(rate),
  parts: parts
    .filter((part) => !isEmpty(part))
    .map(({ name, count, price }) => ({ name: name.trim(), count: typedNumber(count) ?? 0, price: typedNumber(price) ?? 0 })),
});
