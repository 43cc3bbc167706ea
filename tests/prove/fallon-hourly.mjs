// Every hour of Fallon, Nevada, 2015 (USBR AgriMet), ETo and ETr, against the printed output of the reference ET calculator of the
// University of Idaho: each bright hour (more than 10 langleys) within 0.015 mm. Of the others all but a few: those at which the two
// decide otherwise whether the sun is high (0.3 rad at the start of the hour) or whether it is day (Rn from 0), because the quantity lies
// on the threshold; and the night after, into which the cloudiness is carried.
import { fallon, measuredHours, printedHours } from '../support/fallon-2015.mjs';
import { libraryDaysOfHours, libraryHours, thresholdsOf } from '../support/fallon-2015-computed.mjs';
import { transcribed } from '../support/golden-values.mjs';

export const readsShared = true;

/** Printed to 0.01 mm. [mm] */
const TOLERANCE = 0.015;
/** More sunshine than this in an hour is bright. [langley] */
const BRIGHT = 10;
/** Hours of a year less the two that the station lacks. */
const HOURS = 8758;
const BRIGHT_HOURS = 3520;
/**
 * The two evening hours on a threshold: the sun's angle within 0.002 rad of 0.3, by which formulas of the declination in use differ near
 * the equinox; Rn within 0.005 MJ/m2/h of 0.
 */
const ON_THE_SUN = '2015-09-30 17';
const ON_THE_DAY = '2015-02-17 17';
const [LOW_SUN, NEAR_ANGLE, NEAR_RADIATION] = [0.3, 0.002, 0.005];
/** How many hours may lie farther, and how far; the night of the carried cloudiness ends before this hour. [mm], [h] */
const MOST_CARRIED = 12;
const FARTHEST_CARRIED = 0.15;
const SUN_HIGH_AGAIN = 9;

const must = (says, good) => {
  if (!good) throw new Error(says);
};

function compared(what, hours) {
  const off = hours.flatMap(({ eto, etr }) => [eto.off, etr.off]);
  const within = (name) => hours.filter((hour) => hour[name].off <= TOLERANCE).length;
  const most = (name) => Math.max(...hours.map((hour) => hour[name].off)).toFixed(4);
  const says = `${what}: within ${TOLERANCE} mm ETo ${within('eto')} and ETr ${within('etr')} of ${hours.length}; at most ${most('eto')} and ${most('etr')} mm away`;
  return { says, most: Math.max(...off), beyond: hours.filter(({ eto, etr }) => Math.max(eto.off, etr.off) > TOLERANCE) };
}

const distance = (ours, theirs) => ({ ours, theirs, off: Math.abs(ours - theirs) });

/** The hours of the golden tests, as measured and printed. */
async function transcribedAsPublished(hours) {
  const { hours: kept } = await transcribed('asce-standardized/fallon-hours-2015.values.ts');
  const published = new Map(hours.map((hour) => [hour.key, hour]));
  for (const [date, label, ...row] of kept) {
    const { measured, eto, etr } = published.get(`${date} ${label}`);
    const now = [measured.temperature, measured.dewPoint, measured.wind, measured.solar, eto.theirs, etr.theirs];
    must(`${date} ${label} is transcribed as ${row}, published is ${now}`, row.join() === now.join());
  }
  return `${kept.length} hours of the golden tests are as published`;
}

/** Why an hour lies farther from the printed one; an hour without a reason is a fault. */
function explained({ key, measured, sunHigh, cloudiness, eto, etr }) {
  const { sunAngle, netRadiation, own } = thresholdsOf(measured, cloudiness);
  const says = `  hour ending ${key}: ETo ${eto.ours.toFixed(3)} (${eto.theirs}), ETr ${etr.ours.toFixed(3)} (${etr.theirs})`;
  must(`${says}: the sun is high`, !sunHigh);
  if (key === ON_THE_SUN && Math.abs(sunAngle - LOW_SUN) <= NEAR_ANGLE)
    return `${says}: the sun stands at ${sunAngle.toFixed(4)} rad, low; the printed values are those of the hour's own cloudiness, ${own.toFixed(2)}`;
  if (key === ON_THE_DAY && Math.abs(netRadiation) <= NEAR_RADIATION)
    return `${says}: Rn is ${netRadiation.toFixed(4)} MJ/m2, the constants of the day are used`;
  const inThatNight =
    measured.date === '2015-09-30' ? measured.label > 17 : measured.date === '2015-10-01' && measured.label < SUN_HIGH_AGAIN;
  must(`${says}: no reason`, inThatNight);
  return `${says}: cloudiness ${cloudiness.toFixed(2)} carried from before that evening`;
}

/**
 * What docs/decisions/0015 says of days made of hours: the day's equation gives less than its hours in a sum, by these shares of it.
 * Bounds of the year, of May to August, and of October to March.
 */
const LESS = { year: [0.055, 0.06], 'May to August': [0.01, 0.02], 'October to March': [0.13, 0.15] };

function daysBesideHours(measured) {
  const days = libraryDaysOfHours(measured);
  const seasons = {
    year: () => true,
    'May to August': (month) => month >= 5 && month <= 8,
    'October to March': (month) => month <= 3 || month >= 10,
  };
  return Object.entries(seasons).map(([name, isIn]) => {
    const chosen = days.filter(({ date }) => isIn(Number(date.slice(5, 7))));
    const [daily, hourly] = ['daily', 'hourly'].map((by) => chosen.reduce((sum, day) => sum + day[by], 0));
    const less = 1 - daily / hourly;
    const says = `${name}, ${chosen.length} days: ${hourly.toFixed(0)} mm by the hour, ${daily.toFixed(0)} mm by the day of the same hours, ${(100 * less).toFixed(1)} % less`;
    must(`${says}: docs/decisions/0015 says otherwise`, less >= LESS[name][0] && less <= LESS[name][1]);
    return says;
  });
}

export async function prove() {
  const printed = printedHours();
  const measured = measuredHours();
  const answers = libraryHours(measured);
  const hours = measured.map((hour, at) => {
    const key = `${hour.date} ${hour.label}`;
    const { etoMm, etrMm, sunHigh, cloudiness } = answers[at];
    const { eto, etr } = printed.get(key);
    return { key, measured: hour, sunHigh, cloudiness, eto: distance(etoMm, eto), etr: distance(etrMm, etr) };
  });
  must(`${hours.length} hours`, hours.length === HOURS && hours.every(({ eto, etr }) => Number.isFinite(eto.off + etr.off)));
  const bright = compared(
    'bright hours',
    hours.filter((hour) => hour.measured.solar > BRIGHT),
  );
  must(bright.says, bright.beyond.length === 0 && bright.says.includes(`of ${BRIGHT_HOURS};`));
  const all = compared('all hours', hours);
  const shown = all.beyond.map((hour) => explained(hour));
  must(`${all.says}\n${shown.join('\n')}`, all.beyond.length <= MOST_CARRIED && all.most <= FARTHEST_CARRIED);
  return [
    `${fallon.latitude}° N, ${-fallon.longitude}° W`,
    bright.says,
    all.says,
    `${all.beyond.length} hours lie farther, all under a low sun or by night:`,
    ...shown,
    ...daysBesideHours(measured),
    await transcribedAsPublished(hours),
  ].join('\n');
}
