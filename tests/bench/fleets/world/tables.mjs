// The files of the import folder, and the two files that the company could not have: what was wrong, and the reference by month.
import { sumOver } from '../../../../apps/api/demo/generator/ground/soil-balance.mjs';
import { dateText, dayAt, daysOfMonth, instantText, monthText, startOfDay } from '../../../../apps/api/demo/generator/sky/calendar.mjs';
import { trimmed } from '../../../../apps/api/demo/generator/tables/csv.mjs';
import { stationsFor } from '../../../../apps/api/demo/generator/timers/models.mjs';
import { weatherTable } from './climate.mjs';
import { billRows, readingRows, registerText, usageRows } from './registers.mjs';

const yes = (value) => (value ? 'yes' : 'no');
const each = (fleet, rowsOf) => fleet.properties.flatMap((property) => rowsOf(property, fleet));

const propertyRow = ({ name, station }, index) => [
  ...[name, `Client ${(index % 20) + 1}`, station.latitude.toFixed(4), station.longitude.toFixed(4)],
  ...[Math.round(station.elevationM / 0.3048), station.timeZone, station.name, 'ordinance', 0.8],
];

const meterRows = (property, fleet) =>
  property.meters.map((meter) => [
    ...[meter.name, property.name, meter.kind, meter.water, meter.unit, meter.multiplier, meter.digits, meter.resolution],
    ...[meter.sizeIn, meter.maxGpm, property.indoor?.stated ? property.indoor.gallons : '', meter.unit === 'CCF' ? 4.2 : ''],
    ...[
      meter.installed ? dateText(meter.installed) : property.builtOn,
      meter.installed ? registerText(meter, startOfDay(meter.installed), fleet) : '',
    ],
    ...(meter.removed ? [dateText(meter.removed), registerText(meter, startOfDay(meter.removed), fleet)] : ['', '']),
  ]);

const controllerRows = (property) =>
  property.controllers.map(({ name, zones, model }) => [
    ...[name, property.name, stationsFor(zones.length), model.programs, model.starts, model.maxMinutes, model.minuteStep, model.scope],
    ...[model.step, model.most, 1, 'yes', yes(property.sensor), property.sensor ? 0.25 : ''],
  ]);

const zoneRow = (property, zone) => [
  ...[property.name, zone.name, zone.controller.name, zone.stationNumber, property.assigned ? zone.meter : '', zone.area, zone.plants],
  ...[
    zone.needWord,
    zone.statedFactor,
    zone.method,
    zone.byRate ? trimmed(zone.inPerHr, 2) : '',
    zone.byRate ? '' : trimmed(zone.flowGpm, 1),
  ],
  ...[zone.byRate ? '' : 'measured', '', trimmed(zone.du, 2), zone.soil, zone.more.slope ?? '', zone.sun],
];
const handRow = ({ name, hand, meters, soil, assigned }) => [
  ...[
    name,
    'Barrels',
    '',
    '',
    hand.metered ? (assigned ? meters.findLast((meter) => !meter.removed).name : '') : 'none',
    300,
    'annuals',
    'high',
    '',
  ],
  ...['hand', '', '', '', hand.gallons, '', soil, '', 'full'],
];
const zoneRows = (property) => [...property.zones.map((zone) => zoneRow(property, zone)), ...(property.hand ? [handRow(property)] : [])];

function factRows(property, controller, fact) {
  const head = [property.name, controller.name, instantText(fact.at), fact.record, fact.state];
  if (fact.state !== 'on') return [[...head, '', '', '', '', '', '', '', '']];
  return fact.programs.flatMap(({ name, days, starts, percent, stations }) =>
    stations.map(({ station, minutes, cycles, soak }) => [
      ...[...head, name, days, starts, percent, station, minutes, cycles > 1 ? cycles : '', cycles > 1 ? soak : ''],
    ]),
  );
}
const settingsRows = (property) =>
  property.controllers.flatMap((controller) =>
    property.setting === 'unknown'
      ? [[property.name, controller.name, instantText(property.visits[0]), 'found', 'unknown', '', '', '', '', '', '', '', '']]
      : controller.facts.flatMap((fact) => factRows(property, controller, fact)),
  );

function pauseRows(property) {
  if (property.setting !== 'known') return [];
  const isOn = ({ facts }, minute) => facts.findLast((fact) => fact.at <= minute)?.state === 'on';
  return property.controllers.flatMap((controller) =>
    controller.pauses
      .filter((pause) => isOn(controller, pause.from))
      .map((pause) => [property.name, controller.name, instantText(pause.from), instantText(pause.until)]),
  );
}

const SETTINGS = [
  'property',
  'controller',
  'effective_at',
  'record',
  'state',
  'program',
  'days',
  'starts',
  'adjust_percent',
  'station',
  'minutes',
  'cycles',
  'soak_min',
]; // prettier-ignore

/** The tables of the import folder by the name of their file. */
export const importTables = (fleet) => ({
  clients: { header: ['client'], rows: Array.from({ length: 20 }, (_, index) => [`Client ${index + 1}`]) },
  stations: {
    header: ['station', 'latitude', 'longitude', 'elevation_ft'],
    rows: fleet.stations.map((one) => [one.name, one.latitude.toFixed(3), one.longitude, Math.round(one.elevationM / 0.3048)]),
  },
  properties: {
    header: [
      'property',
      'client',
      'latitude',
      'longitude',
      'elevation_ft',
      'time_zone',
      'weather_station',
      'allowance_from',
      'allowance_etaf',
    ],
    rows: fleet.properties.map(propertyRow),
  },
  meters: {
    header: [
      ...['meter', 'property', 'kind', 'water', 'unit', 'multiplier', 'digits', 'resolution', 'size_in', 'max_gpm', 'indoor_gal_per_day'],
      ...['price_per_unit', 'installed_on', 'first_register', 'removed_on', 'last_register'],
    ],
    rows: each(fleet, meterRows),
  },
  controllers: {
    header: [
      ...['controller', 'property', 'stations', 'programs', 'starts_per_program', 'max_minutes', 'minute_step', 'adjust_scope'],
      ...['adjust_step_percent', 'max_adjust_percent', 'runs_at_once', 'cycle_soak', 'rain_sensor', 'rain_sensor_in'],
    ],
    rows: each(fleet, controllerRows),
  },
  zones: {
    header: [
      ...['property', 'zone', 'controller', 'station', 'meter', 'area_sqft', 'plants', 'water_need', 'plant_factor', 'method'],
      ...['precip_in_per_hr', 'flow_gpm', 'flow_source', 'hand_gal_per_week', 'du_lq', 'soil', 'slope_percent', 'sun'],
    ],
    rows: each(fleet, zoneRows),
  },
  settings: { header: SETTINGS, rows: each(fleet, settingsRows) },
  pauses: { header: ['property', 'controller', 'paused_from', 'paused_until'], rows: each(fleet, pauseRows) },
  readings: { header: ['property', 'meter', 'read_at', 'register', 'source', 'note'], rows: each(fleet, readingRows) },
  usage: { header: ['property', 'meter', 'start', 'end', 'volume', 'unit'], rows: each(fleet, usageRows) },
  bills: { header: ['property', 'meter', 'start', 'end', 'end_included', 'volume', 'unit', 'amount'], rows: each(fleet, billRows) },
  weather: weatherTable(fleet),
});

const MONTH_DAYS = 30;

/** Share of the usual month: of the thirty days in which the fault gave or took most. */
function shareOf(fault, usual) {
  if (fault.share !== undefined || !fault.extra) return fault.share ?? null;
  let [sum, most] = [0, 0];
  fault.extra.forEach((gallons, day) => {
    sum += gallons - (day >= MONTH_DAYS ? fault.extra[day - MONTH_DAYS] : 0);
    if (Math.abs(sum) > Math.abs(most)) most = sum;
  });
  return most / usual;
}

const NOTES = {
  'slow leak': (fault) => `grows for ${Math.round(fault.growsFor / 1440)} days`,
  'unrecorded run': (fault) => (fault.runs ? 'a program of its own' : 'minutes raised'),
}; // prettier-ignore

function faultRow(property, fleet, fault) {
  const share = shareOf(fault, property.usual);
  const felt = fault.felt ?? (fault.standsStill || fault.silent ? fault.start : null);
  if (felt === null) return [];
  const ended = fault.end < startOfDay(fleet.last + 1) ? instantText(fault.end) : '';
  const meter = fault.meter ?? property.meters.findLast((one) => !one.removed).name;
  const names = [property.name, meter, fault.zone?.name ?? '', fault.controller?.name ?? ''];
  const note = fault.note ?? NOTES[fault.kind]?.(fault) ?? '';
  return [[...names, fault.kind, instantText(felt), ended, share === null ? '' : share.toFixed(4), fault.gpm?.toFixed(3) ?? '', note]];
}

/** A storm that nobody paused for and no sensor saw, while the programs ran on. */
function missedRows(property, controller) {
  if (property.sensor || property.setting !== 'known') return [];
  return controller.missed.flatMap((storm) => {
    const [from, until] = [startOfDay(storm.from), startOfDay(storm.to + 2)];
    const ran = controller.runs.filter((run) => run.start >= from && run.start < until && run.zone.meter !== 'none');
    const gallons = ran.reduce((sum, run) => sum + run.minutes * run.zone.trueFlow, 0);
    if (!gallons) return [];
    const share = (gallons / property.usual).toFixed(4);
    return [
      [
        property.name,
        '',
        '',
        controller.name,
        'missed pause',
        instantText(from),
        instantText(until),
        share,
        '',
        `${storm.rain.toFixed(1)} mm`,
      ],
    ];
  });
}

function standingRows(property, fleet) {
  const off = property.offFlow - 1;
  const at = instantText(startOfDay(fleet.from));
  const meter = property.meters.findLast((one) => !one.removed).name;
  const wrong =
    Math.abs(off) >= 0.1 ? [[property.name, meter, '', '', 'wrong recorded flows', at, '', off.toFixed(4), '', 'from the start']] : [];
  const rolled = (property.rollovers ?? []).map((one) => [
    property.name,
    one.meter.name,
    '',
    '',
    'rollover',
    instantText(one.at),
    instantText(one.at),
    '',
    '',
    'not a fault',
  ]); // prettier-ignore
  const swapped = property.swappedOn
    ? [
        [
          property.name,
          meter,
          '',
          '',
          'swap',
          instantText(startOfDay(property.swappedOn)),
          instantText(startOfDay(property.swappedOn)),
          '',
          '',
          'not a fault',
        ],
      ] // prettier-ignore
    : [];
  return [...wrong, ...rolled, ...swapped];
}

/** truth.csv; made after the import tables, which note misreads and rollovers. */
export const truthTable = (fleet) => ({
  header: ['property', 'meter', 'zone', 'controller', 'kind', 'starts_at', 'ends_at', 'share_of_usual_month', 'gpm', 'note'],
  rows: each(fleet, (property) => [
    ...property.faults.flatMap((fault) => faultRow(property, fleet, fault)),
    ...standingRows(property, fleet),
    ...property.controllers.flatMap((controller) => missedRows(property, controller)),
  ]),
});

function monthRow(property, month, runs, fleet) {
  const days = daysOfMonth(month, fleet.last);
  const sums = { needed: 0, programmed: 0, over: 0, under: 0 };
  for (const zone of property.zones) {
    const needed = sumOver(zone.need, days);
    const programmed = runs.get(zone)?.get(month) ?? 0;
    sums.needed += needed;
    sums.programmed += programmed;
    sums[programmed > needed ? 'over' : 'under'] += Math.abs(programmed - needed);
  }
  const metered = property.meters
    .filter((meter) => !meter.removed)
    .reduce((sum, { line }) => sum + line.until(startOfDay(days.at(-1) + 1)) - line.until(startOfDay(days[0])), 0); // prettier-ignore
  const known = property.setting === 'known';
  const shown = (value) => (known ? value.toFixed(0) : '');
  return [
    property.name,
    month,
    sums.needed.toFixed(0),
    shown(sums.programmed),
    shown(sums.over),
    shown(sums.under),
    metered.toFixed(0),
    property.usual.toFixed(0),
  ];
}

/** gaps.csv: needed, programmed by the recorded settings and flows, both sides of their difference by zone, and the true water, by month. */
export const gapsTable = (fleet) => ({
  header: ['property', 'month', 'needed_gal', 'programmed_gal', 'over_gal', 'under_gal', 'through_meters_gal', 'usual_month_gal'],
  rows: each(fleet, (property) => {
    const runs = new Map();
    for (const { zone, start, minutes } of property.controllers.flatMap((controller) => controller.runs)) {
      const byMonth = runs.get(zone) ?? runs.set(zone, new Map()).get(zone);
      const month = monthText(dayAt(start));
      byMonth.set(month, (byMonth.get(month) ?? 0) + minutes * zone.flowGpm);
    }
    return fleet.months.map((month) => monthRow(property, month, runs, fleet));
  }),
});
