import { Module } from '@nestjs/common';
import { RecentRainResolver } from './days/recent-rain.resolver.js';
import { RecordWeatherDay } from './days/record-weather-day.service.js';
import { StationDaysResolver } from './days/station-days.field-resolver.js';
import { WeatherDayResolver } from './days/weather-day.resolver.js';
import { StationNormalsResolver } from './series/station-normals.field-resolver.js';
import { PropertyWeatherStationResolver } from './stations/property-weather-station.field-resolver.js';
import { WeatherStationResolver } from './stations/weather-station.resolver.js';

/** Sources of daily weather, and their days. */
@Module({
  providers: [
    RecordWeatherDay,
    WeatherStationResolver,
    WeatherDayResolver,
    RecentRainResolver,
    StationDaysResolver,
    StationNormalsResolver,
    PropertyWeatherStationResolver,
  ],
})
export class WeatherModule {}
