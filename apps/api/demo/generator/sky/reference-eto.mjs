// Daily reference evapotranspiration after FAO Irrigation and Drainage Paper 56 (Allen et al. 1998), written anew for the
// demo so that the demo does not check the product with the product's own code.
import { dayOfYear } from './calendar.mjs';

const saturation = (celsius) => 0.6108 * Math.exp((17.27 * celsius) / (celsius + 237.3));

/** Vapour pressure in kPa at a temperature or dew point. */
export const vapourPressure = saturation;

/** Radiation above the air, MJ/m2 a day (Eq. 21). */
export function skyRadiation(day, latitude) {
  const turn = (2 * Math.PI * dayOfYear(day)) / 365;
  const phi = (latitude * Math.PI) / 180;
  const tilt = 0.409 * Math.sin(turn - 1.39);
  const sunset = Math.acos(-Math.tan(phi) * Math.tan(tilt));
  const near = 1 + 0.033 * Math.cos(turn);
  return (
    ((24 * 60) / Math.PI) * 0.082 * near * (sunset * Math.sin(phi) * Math.sin(tilt) + Math.cos(phi) * Math.cos(tilt) * Math.sin(sunset))
  );
}

/** Radiation of a cloudless day, MJ/m2 (Eq. 37). */
export const clearRadiation = (day, place) => (0.75 + 2e-5 * place.elevationM) * skyRadiation(day, place.latitude);

function netRadiation(weather, place, vapour) {
  const share = Math.min(1, Math.max(0.3, weather.solar / clearRadiation(weather.day, place)));
  const heat = ((weather.tmaxC + 273.16) ** 4 + (weather.tminC + 273.16) ** 4) / 2;
  return 0.77 * weather.solar - 4.903e-9 * heat * (0.34 - 0.14 * Math.sqrt(vapour)) * (1.35 * share - 0.35);
}

/** Reference evapotranspiration of a day, mm (Eq. 6). */
export function referenceEto(weather, place) {
  const mean = (weather.tmaxC + weather.tminC) / 2;
  const vapour = saturation(weather.dewC);
  const pressure = 101.3 * ((293 - 0.0065 * place.elevationM) / 293) ** 5.26;
  const gamma = 0.000665 * pressure;
  const slope = (4098 * saturation(mean)) / (mean + 237.3) ** 2;
  const dryness = (saturation(weather.tmaxC) + saturation(weather.tminC)) / 2 - vapour;
  const sun = 0.408 * slope * netRadiation(weather, place, vapour);
  const air = ((gamma * 900) / (mean + 273)) * weather.windMs * dryness;
  return Math.max(0, (sun + air) / (slope + gamma * (1 + 0.34 * weather.windMs)));
}
