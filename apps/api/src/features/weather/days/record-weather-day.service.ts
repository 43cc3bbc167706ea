import { HIGHEST_HUMIDITY } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-humidity.js';
import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { todayOf } from '../../../platform/jobs/clock.js';
import { between, judgeValues } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { Events } from '../../../platform/records/events.js';
import { requireInUse } from '../../../platform/records/require-in-use.js';
import { WeatherChanged } from '../weather-changed.event.js';
import type { WeatherDayRow } from './weather-day.entity.js';
import type { WeatherDayInput } from './weather-day.input.js';
import { weatherDays } from './weather-day.repository.js';

/** Wider than the world's records; the ends of humidity and radiation are physical. */
const RULES = {
  tmaxC: between(-60, 60, '°C'),
  tminC: between(-70, 50, '°C'),
  rhMaxPercent: between(1, HIGHEST_HUMIDITY, '%'),
  rhMinPercent: between(0, HIGHEST_HUMIDITY, '%'),
  dewPointC: between(-60, 35, '°C'),
  windMPerS: between(0, 50, 'm/s'),
  solarMjPerM2: between(0, 46, 'MJ/m²'),
  rainMm: between(0, 2000, 'mm'),
  givenEtoMm: between(0, 30, 'mm'),
};

const VALUES = Object.keys(RULES) as (keyof typeof RULES)[];

/** Keeps one day of weather, in place of what was known of it, and tells whoever reckons with it. */
@Injectable()
export class RecordWeatherDay {
  constructor(private readonly events: Events) {}

  async run(tx: OrganizationTransaction, input: WeatherDayInput): Promise<WeatherDayRow> {
    judgeDay(input);
    await requireInUse(tx, 'weather_station', input.stationId);
    const today = todayOf(await organizations.own(tx));
    if (input.day > today)
      throw platformProblems.valueRefused({
        field: 'day',
        found: input.day,
        expected: `a day that has come: at the latest today, ${today}`,
      });
    const values = Object.fromEntries(VALUES.map((name) => [name, input[name] ?? null])) as Record<keyof typeof RULES, number | null>;
    const row = await weatherDays.keep(tx, { stationId: input.stationId, day: input.day, ...values, typed: {} });
    await this.events.emit(tx, new WeatherChanged(input.stationId, input.day, input.day));
    return row;
  }
}

function judgeDay(input: WeatherDayInput): void {
  judgeValues(input, RULES);
  if (VALUES.every((name) => input[name] === null || input[name] === undefined))
    throw platformProblems.valueRefused({ field: 'day', found: input.day, expected: 'at least one value of the day' });
  notAbove(input, 'tminC', 'tmaxC');
  notAbove(input, 'rhMinPercent', 'rhMaxPercent');
  notAbove(input, 'dewPointC', 'tmaxC');
}

function notAbove(input: WeatherDayInput, low: keyof typeof RULES, high: keyof typeof RULES): void {
  const [found, limit] = [input[low] ?? null, input[high] ?? null];
  if (found !== null && limit !== null && found > limit)
    throw platformProblems.valueRefused({ field: low, found, expected: `at most the day's ${high} (${limit})` });
}
