import { codedDaily } from './networks/coded-daily.js';
import { codedHourly } from './networks/coded-hourly.js';
import { daymet } from './networks/daymet.js';
import { ghcnDaily } from './networks/ghcn-daily.js';
import { gridmet } from './networks/gridmet.js';
import { hourlyFlagged } from './networks/hourly-flagged.js';
import { prism } from './networks/prism.js';
import type { StationLayout } from './station/station-layout.js';

/** Every layout of station files that is known. */
export const stationLayouts: readonly StationLayout[] = [codedDaily, codedHourly, hourlyFlagged, daymet, gridmet, ghcnDaily, prism];
