import { rowByRow } from './question.js';
import { settingsOf } from './settings-rows.js';
import { usageOf } from './usage-rows.js';

const BY = (column: string): string => `${column} collate "C"`;
const ON_METER = `join meter m on m.organization_id = t.organization_id and m.id = t.meter_id and m.retired_at is null
  join property p on p.organization_id = m.organization_id and p.id = m.property_id and p.retired_at is null where t.organization_id = $1`;
const ON_CONTROLLER = `join controller c on c.organization_id = t.organization_id and c.id = t.controller_id and c.retired_at is null
  join property p on p.organization_id = c.organization_id and p.id = c.property_id and p.retired_at is null where t.organization_id = $1`;
const BY_METER = `${BY('p.name')}, ${BY('m.name')}`;
const BY_CONTROLLER = `${BY('p.name')}, ${BY('c.name')}`;

/** A settings fact has as many lines as programs have stations. */
const FACTS_AT_ONCE = 200;
/** A day of a 15-minute feed has 96 lines. */
const DAYS_AT_ONCE = 100;

/** What happened, as its files have it, in order of time. A reading that was replaced is not written. */
export const factQuestions = {
  settings: {
    sql: `select t.typed, p.time_zone as "timeZone", p.name as property, c.name as controller, t.effective_at as "effectiveAt", t.record, t.state, t.programs
            from settings t ${ON_CONTROLLER} order by ${BY_CONTROLLER}, t.effective_at, t.record`,
    atOnce: FACTS_AT_ONCE,
    rows: settingsOf,
  },
  pauses: rowByRow<'pauses'>(
    `select t.typed, p.time_zone as "timeZone", p.name as property, c.name as controller, t.paused_from as "pausedFrom", t.paused_until as "pausedUntil"
       from rain_pause t ${ON_CONTROLLER} order by ${BY_CONTROLLER}, t.paused_from`,
  ),
  readings: rowByRow<'readings'>(
    `select t.typed, p.time_zone as "timeZone", p.name as property, m.name as meter, t.read_at as "readAt", t.register, t.source, t.note
       from reading t ${ON_METER} and t.replaced_by_id is null order by ${BY_METER}, t.read_at`,
  ),
  usage: {
    sql: `select p.time_zone as "timeZone", p.name as property, m.name as meter, t.day_start as "dayStart", t.start_seconds as "startSeconds", t.length_seconds as "lengthSeconds", t.volumes, t.unit
            from usage_day t ${ON_METER} order by ${BY_METER}, t.day`,
    atOnce: DAYS_AT_ONCE,
    rows: usageOf,
  },
  bills: rowByRow<'bills'>(
    `select t.typed, p.name as property, m.name as meter, t.start_on::text as "startOn", t.end_on::text as "endOn", t.volume, t.unit, t.amount
       from bill t ${ON_METER} order by ${BY_METER}, t.start_on`,
  ),
  weather: rowByRow<'weather'>(
    `select t.typed, s.name as station, t.day::text as day, t.tmax_c as "tmaxC", t.tmin_c as "tminC", t.rh_max_percent as "rhMaxPercent", t.rh_min_percent as "rhMinPercent", t.dew_point_c as "dewPointC",
            t.wind_m_per_s as "windMPerS", t.wind_height_m as "windHeightM", t.solar_mj_per_m2 as "solarMjPerM2", t.rain_mm as "rainMm", t.given_eto_mm as "givenEtoMm"
       from weather_day t join weather_station s on s.organization_id = t.organization_id and s.id = t.station_id and s.retired_at is null
      where t.organization_id = $1 order by ${BY('s.name')}, t.day`,
  ),
};
