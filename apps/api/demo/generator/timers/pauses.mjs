// A pause set the afternoon before a storm, which ends after the day that follows it.
import { dateText, instantText, monthText, startOfDay, WORK_FROM } from '../sky/calendar.mjs';
import { diceFor } from '../sky/random.mjs';
import { storms } from '../sky/weather.mjs';

/**
 * @param controller its history may say that it is never paused, or only until a day
 * @param property its weather decides
 */
export function pausesOf(controller, property) {
  const { noPauses = false, noPausesSince = '9999' } = controller.history;
  if (noPauses) return [];
  const dice = diceFor(`pauses ${property.name} ${controller.name}`);
  return storms(property.weather)
    .filter((storm) => storm.from > WORK_FROM + 3 && dateText(storm.from) < noPausesSince)
    .filter((storm) => !['12', '01', '02'].includes(monthText(storm.from).slice(5)))
    .map((storm) => ({ from: startOfDay(storm.from - 1) + 16 * 60 + dice.whole(0, 5) * 10, until: startOfDay(storm.to + 2) }));
}

export const isPaused = (pauses, minute) => pauses.some((pause) => minute >= pause.from && minute < pause.until);

/** Rows of pauses.csv: nobody pauses a timer that is off, and a timer with unknown settings has no pauses on record. */
export function pauseRows(property, controller) {
  const ran = (minute) => controller.facts.findLast((fact) => fact.at <= minute)?.state === 'on';
  return controller.pauses
    .filter((pause) => controller.known !== false && ran(pause.from))
    .map((pause) => [property.name, controller.name, instantText(pause.from), instantText(pause.until)]);
}
