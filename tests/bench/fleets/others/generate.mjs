// Labelled fleets of other worlds than ../world draws: `otherFleet({ seed, each, months })` gives the import folder's texts, truth.csv and gaps.csv.
import { STYLES, TROUBLES } from './styles.mjs';
import { chanceOf, dateOf, instantOf } from './chance.mjs';
import { registersOf } from './read.mjs';

const DAY = 1440;
const FIRST_DAY = Date.UTC(2024, 1, 1) / 86_400_000;
const WEATHER_BEFORE = 110;
const DAYS_A_MONTH = 30.44;
const WEEK = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];

function skyOf(seed, days) {
  const chance = chanceOf(`sky ${seed}`);
  const wet = chance.between(0.04, 0.22);
  return Array.from({ length: days + WEATHER_BEFORE }, (_, at) => {
    const day = FIRST_DAY - WEATHER_BEFORE + at;
    const season = Math.sin((2 * Math.PI * ((day % 365.25) - 105)) / 365.25);
    const rain = chance.next() < wet ? -0.35 * Math.log(1 - chance.next()) : 0;
    const eto = Math.max(0.03, (0.16 + 0.1 * season) * (rain > 0.1 ? 0.55 : 1) * (1 + 0.14 * chance.normal()));
    return { day, eto, rain };
  });
}

/** Two gaps of some days each in what the station told. */
function isKnown(seed) {
  const chance = chanceOf(`gaps ${seed}`);
  const gaps = Array.from({ length: 2 }, () => [FIRST_DAY + chance.whole(40, 400), chance.whole(2, 9)]);
  return (day) => !gaps.some(([from, length]) => day >= from && day < from + length);
}

function zonesOf(chance, { zones = [3, 9], area = [800, 6000], flow = 'measured' }) {
  const off = chance.next() < 0.25 ? chance.between(-0.22, 0.22) : 0.02 * chance.normal();
  return Array.from({ length: chance.whole(...zones) }, (_, at) => {
    const spray = chance.next() < 0.6;
    const squareFeet = Math.round(chance.between(...area));
    const inches = spray ? chance.between(1.2, 1.8) : chance.between(0.4, 0.7);
    const gpm = Number(((squareFeet * inches) / 96.25).toFixed(1));
    return {
      name: `Station ${at + 1}`,
      station: at + 1,
      squareFeet,
      inches,
      gpm,
      flow,
      off,
      method: spray ? 'spray' : 'rotor',
      true: gpm * (1 + off) * (1 + 0.05 * chance.normal()),
    };
  });
}

/** What the timer holds: one program on some weekdays, minutes for July, a percent for each quarter. */
function timerOf(chance, zones, days) {
  const on = chance.of([['Mon', 'Wed', 'Fri'], ['Tue', 'Thu', 'Sat'], WEEK, ['Mon', 'Thu']]);
  const start = chance.of([270, 300, 345, 1290]);
  const weekly = chance.between(1, 1.5);
  const minutes = zones.map(({ inches }) => Math.max(2, Math.min(59, Math.round((60 * weekly) / on.length / inches))));
  const facts = [];
  for (let day = 0; day < days; day += chance.whole(70, 100)) {
    const season = 0.5 + 0.45 * Math.sin((2 * Math.PI * (((FIRST_DAY + day) % 365.25) - 105)) / 365.25);
    facts.push({ day: FIRST_DAY + day, percent: 10 * Math.max(2, Math.round(10 * season)) });
  }
  return { on, start, minutes, facts };
}

/** A timer that follows the weather: by the reference of its last week, with what it believes of itself. */
function percentOfWeather({ sky, believes }, day) {
  const at = day - sky[0].day;
  const week = sky.slice(at - 7, at);
  return believes * Math.max(0, (100 * week.reduce((sum, { eto, rain }) => sum + eto - rain, 0)) / 7 / 0.26);
}

const percentOn = ({ facts }, day) => facts.findLast((fact) => fact.day <= day)?.percent ?? facts[0].percent;

function* runsOf({ timer, zones, style, sky, believes }, days) {
  for (let day = FIRST_DAY; day < FIRST_DAY + days; day += 1) {
    if (!timer.on.includes(WEEK[(day + 4) % 7])) continue;
    let at = day * DAY + timer.start;
    for (const [index, zone] of zones.entries()) {
      const percent = style.settings === 'weather' ? percentOfWeather({ sky, believes }, day) : percentOn(timer, day);
      const minutes = (timer.minutes[index] * percent) / 100;
      if (minutes < 0.5) continue;
      yield { zone, begin: at, minutes };
      at += minutes;
    }
  }
}

function troubleOf(site, chance, days) {
  let left = chance.next() * TROUBLES.reduce((sum, [, weight]) => sum + weight, 0);
  const [kind] = TROUBLES.find(([, weight]) => (left -= weight) <= 0);
  const share = 0.1 * 12 ** chance.next();
  const begin = (FIRST_DAY + chance.whole(Math.round(0.35 * days), Math.round(0.85 * days))) * DAY + chance.whole(0, DAY);
  const zone = chance.of(site.zones);
  if (kind === 'none') return null;
  const fixed = { kind, begin, end: Number.POSITIVE_INFINITY, share, zone: null };
  if (kind === 'leak from the first day')
    return {
      ...fixed,
      kind: 'continuous leak',
      begin: FIRST_DAY * DAY,
      gpm: (share * site.usual) / DAYS_A_MONTH / DAY,
      note: 'from the first day',
    };
  if (kind === 'continuous leak') return { ...fixed, gpm: (share * site.usual) / DAYS_A_MONTH / DAY };
  if (kind === 'broken head') return { ...fixed, zone, factor: 1 + chance.between(0.6, 3) };
  if (kind === 'unrecorded run')
    return {
      ...fixed,
      zone,
      extra: { every: chance.of([1, 1, 2]), at: chance.of([60, 720, 840]), minutes: (share * site.usual) / DAYS_A_MONTH / zone.true },
      end: begin + 90 * DAY,
    };
  if (kind === 'controller off') return { ...fixed, factor: 0, end: begin + 60 * DAY };
  return site.style.every ? { ...fixed, end: begin, misread: true } : null;
}

/** True gallons by quarter of an hour. */
function waterOf(site, days) {
  const slots = new Float64Array(days * 96);
  const chance = chanceOf(`water ${site.name} ${site.seed}`);
  const { trouble } = site;
  const extra = new Float64Array(days);
  const add = (begin, minutes, gpm, isFault) => {
    for (let at = begin; at < begin + minutes; ) {
      const slot = Math.floor(at / 15);
      const next = Math.min(begin + minutes, (slot + 1) * 15);
      const place = slot - FIRST_DAY * 96;
      if (place >= 0 && place < slots.length) {
        slots[place] += (next - at) * gpm;
        if (isFault) extra[Math.floor(place / 96)] += (next - at) * gpm;
      }
      at = next;
    }
  };
  const active = (minute) => trouble && minute >= trouble.begin && minute < trouble.end;
  for (const { zone, begin, minutes } of runsOf(site, days)) {
    const pressure = 1 + 0.015 * chance.normal();
    const touched = active(begin) && trouble.factor !== undefined && (trouble.zone === null || trouble.zone === zone);
    add(begin, minutes, zone.true * pressure * (touched && trouble.factor < 1 ? trouble.factor : 1), false);
    if (touched) {
      trouble.felt ??= begin;
      if (trouble.factor > 1) add(begin, minutes, zone.true * (trouble.factor - 1), true);
      else extra[Math.floor(begin / DAY) - FIRST_DAY] -= minutes * zone.true;
    }
  }
  if (trouble?.gpm) add(trouble.begin, (FIRST_DAY + days) * DAY - trouble.begin, trouble.gpm, true);
  for (let day = 0; trouble?.extra && day < days; day += trouble.extra.every) {
    const begin = (FIRST_DAY + day) * DAY + trouble.extra.at;
    if (!active(begin)) continue;
    trouble.felt ??= begin;
    add(begin, trouble.extra.minutes, trouble.zone.true, true);
  }
  for (let day = 0; site.indoor && day < days; day += 1)
    for (let hour = 6; hour < 23; hour += 1)
      add((FIRST_DAY + day) * DAY + hour * 60, 60, (site.indoor * chance.between(0.5, 1.5)) / 17 / 60, false);
  return { slots, extra };
}

const WINDOW = 30;
function shareOf(extra, usual) {
  let [sum, most] = [0, 0];
  extra.forEach((gallons, day) => {
    sum += gallons - (day >= WINDOW ? extra[day - WINDOW] : 0);
    if (Math.abs(sum) > Math.abs(most)) most = sum;
  });
  return most / usual;
}

function siteOf({ seed, days, sky }, name, styleName) {
  const style = STYLES[styleName];
  const chance = chanceOf(`site ${seed} ${name}`);
  const zones = zonesOf(chance, style);
  const site = {
    seed,
    name,
    style,
    styleName,
    sky,
    believes: chance.between(0.8, 1.2),
    zones,
    timer: timerOf(chance, zones, days),
    timeZone: chance.of(['America/Denver', 'America/Los_Angeles', 'America/New_York']),
  };
  site.usual = ([...runsOf(site, days)].reduce((sum, { zone, minutes }) => sum + minutes * zone.true, 0) / days) * DAYS_A_MONTH;
  site.indoor = style.indoor ? chance.whole(80, 400) : 0;
  site.trouble = troubleOf(site, chance, days);
  site.days = days;
  Object.assign(site, waterOf(site, days));
  site.bias = 1 + 0.01 * chance.normal();
  site.first = chance.next() < 0.15 ? chance.between(0.97, 0.999) : chance.between(0.05, 0.6);
  return site;
}

const settingsOf = (site) => {
  const { timer, zones, style, days } = site;
  const row = (day, state, rest) => [site.name, 'Timer', `${dateOf(day)}T09:00`, 'found', state, ...rest];
  const none = Array(8).fill('');
  if (style.settings === 'never') return [];
  if (style.settings === 'weather') return [row(FIRST_DAY, 'weather', none)];
  const known = style.settings === 'late' ? timer.facts.filter(({ day }) => day > FIRST_DAY + 0.3 * days) : timer.facts;
  return known.flatMap(({ day, percent }) =>
    zones.map(({ station }, at) => {
      const start = `${String(Math.floor(timer.start / 60)).padStart(2, '0')}:${String(timer.start % 60).padStart(2, '0')}`;
      return row(day, 'on', [
        'A',
        timer.on.length === 7 ? 'daily' : timer.on.join(' '),
        start,
        percent,
        station,
        timer.minutes[at],
        '',
        '',
      ]);
    }),
  );
};

const FLOWS = {
  measured: ({ gpm }) => ['', gpm, 'measured'],
  rate: ({ inches }) => [inches.toFixed(2), '', ''],
  none: () => ['', '', ''],
};

function truthOf(site) {
  const { trouble, zones } = site;
  const off = zones[0].off;
  const wrong =
    Math.abs(off) >= 0.1 && site.style.flow !== 'none' && !site.style.settings
      ? [[site.name, 'Meter', '', '', 'wrong recorded flows', `${dateOf(FIRST_DAY)}T00:00`, '', off.toFixed(4), '', 'from the start']]
      : [];
  const rolled = site.rollovers.map((minute) => [
    site.name,
    'Meter',
    '',
    '',
    'rollover',
    instantOf(minute),
    instantOf(minute),
    '',
    '',
    'not a fault',
  ]);
  const begun = trouble?.misread ? trouble.felt : (trouble?.felt ?? trouble?.begin);
  if (begun === undefined) return [...wrong, ...rolled];
  const share = trouble.misread ? '' : shareOf(site.extra, site.usual).toFixed(4);
  const ends = trouble.misread ? instantOf(begun) : trouble.end < (FIRST_DAY + site.days) * DAY ? instantOf(trouble.end) : '';
  return [
    [
      site.name,
      'Meter',
      trouble.zone?.name ?? '',
      '',
      trouble.kind,
      instantOf(begun),
      ends,
      share,
      trouble.gpm?.toFixed(3) ?? '',
      trouble.note ?? '',
    ],
    ...wrong,
    ...rolled,
  ];
}

const cell = (value) => (/[",\n]/.test(`${value}`) ? `"${`${value}`.replaceAll('"', '""')}"` : `${value}`);
const text = (header, rows) => `${[header.split(' '), ...rows].map((row) => row.map(cell).join(',')).join('\n')}\n`;

/** A fleet with `each` sites of every style over `months`; the same wish gives the same bytes. */
export function otherFleet({ seed, each, months, styles = Object.keys(STYLES) }) {
  const days = Math.round(months * DAYS_A_MONTH);
  const sky = skyOf(seed, days);
  const known = isKnown(seed);
  const sites = styles.flatMap((styleName) =>
    Array.from({ length: each }, (_, at) => siteOf({ seed, days, sky }, `${styleName.replaceAll(',', '')} ${at + 1}`, styleName)),
  );
  for (const site of sites) Object.assign(site, registersOf(site, FIRST_DAY));
  const all = (of) => sites.flatMap(of);
  const files = {
    'clients.csv': text('client', [['Somebody']]),
    'stations.csv': text('station latitude longitude elevation_ft', [['Field', 39.5, -105.1, 5200]]),
    'weather.csv': text(
      'station date eto_in rain_in',
      sky.filter(({ day }) => known(day)).map(({ day, eto, rain }) => ['Field', dateOf(day), eto.toFixed(3), rain.toFixed(2)]),
    ),
    'properties.csv': text(
      'property client time_zone weather_station allowance_from allowance_etaf latitude longitude elevation_ft',
      sites.map(({ name, timeZone }) => [name, 'Somebody', timeZone, 'Field', 'ordinance', 0.8, 39.5, -105.1, 5200]),
    ),
    'meters.csv': text(
      'meter property kind unit multiplier digits resolution size_in indoor_gal_per_day',
      sites.map(({ name, style, indoor }) => [
        'Meter',
        name,
        style.indoor ? 'mixed' : 'irrigation',
        style.dial.unit,
        style.dial.multiplier,
        style.dial.digits,
        style.dial.resolution,
        1,
        style.indoor === 'stated' ? indoor : '',
      ]),
    ),
    'controllers.csv': text(
      'controller property stations',
      sites.map(({ name, zones }) => ['Timer', name, zones.length + 2]),
    ),
    'zones.csv': text(
      'property zone controller station area_sqft plants water_need method soil precip_in_per_hr flow_gpm flow_source',
      all(({ name, zones }) =>
        zones.map((zone) => [
          name,
          zone.name,
          'Timer',
          zone.station,
          zone.squareFeet,
          'turf cool-season',
          'high',
          zone.method,
          'loam',
          ...FLOWS[zone.flow](zone),
        ]),
      ),
    ),
    'settings.csv': text(
      'property controller effective_at record state program days starts adjust_percent station minutes cycles soak_min',
      all(settingsOf),
    ),
    'readings.csv': text(
      'property meter read_at register source',
      all(({ readings }) => readings),
    ),
    'bills.csv': text(
      'property meter start end volume unit',
      all(({ bills }) => bills),
    ),
    'usage.csv': text(
      'property meter start end volume unit',
      all(({ usage }) => usage),
    ),
  };
  const truth = text('property meter zone controller kind starts_at ends_at share_of_usual_month gpm note', all(truthOf));
  const gaps = text(
    'property month needed_gal programmed_gal over_gal under_gal through_meters_gal usual_month_gal',
    sites.map(({ name, usual }) => [name, dateOf(FIRST_DAY).slice(0, 7), '', '', '', '', '', usual.toFixed(0)]),
  );
  return { files, truth, gaps, lastDay: dateOf(FIRST_DAY + days - 1), siteYears: (sites.length * days) / 365.25, sites };
}
