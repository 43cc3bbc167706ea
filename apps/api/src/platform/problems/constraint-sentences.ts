/** A rule of the database: the table and the words that its name adds to the table's. */
interface Rule {
  readonly table: string;
  readonly rest: string;
}

/** 'a meter', 'an invitation' */
const one = (thing: string): string => `${/^[aeiou]/.test(thing) ? 'an' : 'a'} ${thing}`;
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const spaced = (name: string): string => name.replaceAll('_', ' ');

/** Rules that say more than their ending does. */
const NAMED: Readonly<Record<string, string>> = {
  person_email_lower: 'This is not an e-mail address.',
  organization_confidence_is_share: 'The least confidence of a finding must lie between 0.5 and 0.999.',
  zone_controller_and_station_together: 'A zone has both a controller and a station, or neither.',
  zone_one_meter_or_none: 'A zone is either on a meter or unmetered, not both.',
  zone_station_once: 'Another zone has this station of the controller. Give one of them another station.',
  usage_day_arrays_agree: 'The intervals of a day need a start, a length and a volume each.',
  month_plan_month_begins_one: 'The plan of a month is kept by its first day.',
  month_account_month_begins_one: 'A month is kept by its first day.',
  reading_one_at_a_time: 'There is a reading of this meter at this instant already. Correct that one, or change the time.',
  work_order_one_open_per_finding: 'There is an open work order of this kind for the finding already. Change that one.',
  finding_one_per_cause: 'There is a finding for this cause already.',
  plan_setting_water_from_clock: 'Watering begins at a time such as 22:00.',
  plan_setting_water_until_clock: 'Watering ends at a time such as 06:00.',
  plan_setting_hours: 'Watering begins and ends at different times.',
  plan_setting_order: 'Thirst weighs at least as much as waste, waste more than nothing, and nothing less than zero.',
  zone_test_is_whole: 'A test of a zone needs what was read: two registers and the minutes between them, or what the cans caught.',
  photo_arrives_whole: 'A photo has everything about its picture, or nothing while the picture is still on a phone.',
  photo_place_whole: 'Where a photo was taken has a latitude and a longitude, or neither.',
  work_order_words_known: 'Whose words an order has is not one of the known words.',
  member_once: 'This person is a member already.',
  organization_name_once: 'There is an organization of this name already. Choose another name.',
  person_email_once: 'There is a person with this e-mail address already.',
};

/** What the ending of a rule's name says of the value before it. */
const ENDINGS: readonly (readonly [ending: string, says: (subject: string, thing: string) => string])[] = [
  ['_name_given', (_, thing) => `${capital(one(thing))} needs a name.`],
  ['_given', (subject) => `${subject} is missing.`],
  ['_known', (subject) => `${subject} is not one of the known words.`],
  ['_not_negative', (subject) => `${subject} must not be below zero.`],
  ['_positive', (subject) => `${subject} must be above zero.`],
  ['_is_share', (subject) => `${subject} must be a share between 0 and 1.`],
  ['_is_percent', (subject) => `${subject} must lie between 0 and 100 percent.`],
  ['_on_earth', (subject) => `${subject} is not on Earth: latitude lies between -90 and 90, longitude between -180 and 180.`],
  ['_possible', (subject) => `${subject} is outside what is possible.`],
  ['_has_twelve', (subject) => `${subject} needs twelve values, one for each month.`],
  ['_ends_after_start', (_, thing) => `${capital(one(thing))} must end after it begins.`],
  ['_closes_after_arrival', (_, thing) => `${capital(one(thing))} must close after its arrival.`],
  ['_goes_with_role', (_, thing) => `${capital(one(thing))} names a client with the role client, and only then.`],
  ['_not_null', (subject) => `${subject} is missing.`],
];

/** The table is what the driver named, else the first word. */
function ruleOf(name: string, table: string | undefined): Rule {
  const known = table && name.startsWith(`${table}_`) ? table : (name.split('_')[0] ?? name);
  return { table: known, rest: name.slice(known.length) };
}

/** The sentence of a check or of a missing value, or null when the name follows no rule. */
export function checkSentence(name: string, table?: string): string | null {
  if (NAMED[name]) return NAMED[name];
  const rule = ruleOf(name, table);
  const [ending, says] = ENDINGS.find(([end]) => rule.rest.endsWith(end)) ?? [];
  if (!ending || !says) return null;
  const value = spaced(rule.rest.slice(0, -ending.length)).trim();
  const thing = spaced(rule.table);
  return says(value ? `The ${value} of ${one(thing)}` : capital(one(thing)), thing);
}

/** The sentence of a rule that allows a thing once. */
export function onceSentence(name: string, table?: string): string {
  if (NAMED[name]) return NAMED[name];
  const { table: thing, rest } = ruleOf(name, table);
  if (/_(p?key)$/.test(rest)) return `There is ${one(spaced(thing))} with this id already. Load the page again.`;
  if (rest.endsWith('device_record_once')) return `This device has sent ${one(spaced(thing))} of this id with another content already.`;
  if (rest.endsWith('name_once'))
    return `There is ${one(spaced(thing))} of this name already. Choose another name, or change the one that is there.`;
  return `There is ${one(spaced(thing))} like this already. Change the one that is there.`;
}

/** The sentence of a pointer that leads nowhere, or that still leads here. */
export function pointerSentence(name: string, table?: string): string {
  const { table: thing, rest } = ruleOf(name, table);
  const to = spaced(rest.replace(/_id_fkey$|_fkey$/, '')).trim();
  return `The ${to || 'thing'} that this ${spaced(thing)} names is not there, or ${one(spaced(thing))} still needs it. Load the page again.`;
}
