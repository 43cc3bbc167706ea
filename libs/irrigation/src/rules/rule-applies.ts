import type { RuledPlace, RuledStation, WateringRule } from './watering-rule.js';

/**
 * Whether a rule applies to a place: by the parity of its address and by its water.
 *
 * @param rule - The rule. [code]
 * @param place - The place; what is not known of its water does not exempt it. [code]
 * @returns False where it does not apply, or where parity matters and the address is not known. [–]
 */
export function ruleAppliesToPlace(rule: WateringRule, place: RuledPlace): boolean {
  const parity = rule.addressParity === null || (place.addressNumber !== null && parityOf(place.addressNumber) === rule.addressParity);
  return parity && (rule.water === null || place.water === null || rule.water.includes(place.water));
}

/**
 * Whether a rule applies to a station: by its plants and by its method.
 *
 * @param rule - The rule. [code]
 * @param station - The station, or undefined where it waters no zone on record. [code]
 * @returns False for other plants and exempt methods; what is not known does not exempt. [–]
 */
export function ruleAppliesToStation(rule: WateringRule, station: RuledStation | undefined): boolean {
  const plants = station?.plants ?? null;
  const method = station?.method ?? null;
  if (rule.plants !== null && plants !== null && !rule.plants.includes(plants)) return false;
  return rule.exemptMethods === null || method === null || !rule.exemptMethods.includes(method);
}

/**
 * Whether a rule is in force on a date, its first and last day included.
 *
 * @param rule - The rule. [code]
 * @param date - Local date, 'YYYY-MM-DD'. [code]
 * @returns True while it is in force. [–]
 */
export function ruleIsInForce(rule: WateringRule, date: string): boolean {
  return (rule.effectiveFrom === null || rule.effectiveFrom <= date) && (rule.effectiveUntil === null || date <= rule.effectiveUntil);
}

/**
 * Parity of a number.
 *
 * @param value - The number. [–]
 * @returns Odd or even. [code]
 */
export function parityOf(value: number): 'odd' | 'even' {
  return value % 2 === 0 ? 'even' : 'odd';
}
