// The hourly feed of a few meters, and the supplier's bills of a few others.
import { dateText, dayOf, instantText, monthsFrom, startOfDay, LAST_DAY } from '../sky/calendar.mjs';
import { diceFor } from '../sky/random.mjs';
import { GALLONS } from './registers.mjs';

const FEED_FROM = startOfDay(dayOf('2026-07-16'));

/** @returns rows of usage.csv: whole gallons by the hour, so that no gallon is counted twice or lost */
export function usageRows(meter, property) {
  if (!meter.feed) return [];
  const rows = [];
  for (let from = FEED_FROM; from < startOfDay(LAST_DAY + 1); from += 60) {
    const gallons = Math.floor(meter.flow.until(from + 60)) - Math.floor(meter.flow.until(from));
    rows.push([property.name, meter.name, instantText(from), instantText(from + 60), gallons, 'gal']);
  }
  return rows;
}

function tierPrice(tiers, units) {
  let below = 0;
  let cost = 0;
  for (const tier of tiers) {
    const top = tier.upTo ?? Number.POSITIVE_INFINITY;
    cost += Math.max(0, Math.min(units, top) - below) * tier.price;
    below = top;
  }
  return cost;
}

function amountOf(supplier, endDay, units) {
  const rates = supplier.rates.filter((rate) => rate.from <= dateText(endDay)).at(-1);
  if (!rates || rates.shares) return '';
  return (rates.fixed + tierPrice(rates.tiers, units)).toFixed(2);
}

/** @returns rows of bills.csv: whole billing units, from one reading day of the supplier to the next */
export function billRows(meter, property, supplier) {
  if (!property.bills) return [];
  const dice = diceFor(`bills ${property.name}`);
  const ends = monthsFrom(property.bills.from, property.bills.to).map(
    (month) => dayOf(`${month}-${property.bills.day}`) + dice.whole(-1, 1),
  );
  const billUnit = supplier.billUnit;
  const dial = (day) => Math.floor(meter.flow.until(startOfDay(day)) / GALLONS[billUnit]);
  return ends.slice(1).map((end, index) => {
    const start = ends[index];
    const units = dial(end) - dial(start);
    const lastDay = property.bills.endIncluded ? end - 1 : end;
    const included = property.bills.endIncluded ? 'yes' : 'no';
    return [property.name, meter.name, dateText(start), dateText(lastDay), included, units, billUnit, amountOf(supplier, end, units)];
  });
}
