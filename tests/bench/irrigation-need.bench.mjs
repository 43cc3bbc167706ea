import { runIrrigationNeed } from '../../libs/agronomy/dist/water-balance/irrigation-need.kernel.js';
import { count, medians, ratio } from '../support/measure.mjs';

export const tells = 'the root zone of a zone over a day, against the same arithmetic with a fresh object each day';

const ZONES = 2000;
const DAYS = 365;

const eto = Float64Array.from({ length: DAYS }, (_, day) => 4 + 3 * Math.sin((day - 80) / 58));
const rain = Float64Array.from({ length: DAYS }, (_, day) => (day % 9 === 0 ? 6 + (day % 7) : 0));
const zone = (at) => ({ plantCoefficient: 0.3 + (at % 50) / 100, readilyAvailableWater: 10 + (at % 40), initialDepletion: 10 + (at % 40) });

function kernel(zones) {
  const days = { irrigation: new Float64Array(DAYS), effectiveRain: new Float64Array(DAYS) };
  let sum = 0;
  for (const each of zones) {
    runIrrigationNeed(eto, rain, each, days);
    for (let day = 0; day < DAYS; day++) sum += days.irrigation[day];
  }
  return sum;
}

/** A fresh object a day, made of the one before, and a sum over them. */
function objects(zones) {
  const days = Array.from(eto, (reference, day) => ({ reference, fallen: rain[day] }));
  let sum = 0;
  for (const each of zones) {
    let state = { depletion: each.initialDepletion, irrigation: 0, effectiveRain: 0 };
    const year = days.map(({ reference, fallen }) => {
      const counted = fallen <= 0.2 * reference ? 0 : fallen;
      const room = state.depletion + each.plantCoefficient * reference;
      const taken = Math.min(counted, room);
      const left = room - taken;
      const irrigation = Math.max(0, left - each.readilyAvailableWater);
      state = { depletion: irrigation > 0 ? each.readilyAvailableWater : left, irrigation, effectiveRain: taken };
      return state;
    });
    sum = year.reduce((total, { irrigation }) => total + irrigation, sum);
  }
  return sum;
}

export async function bench() {
  const zones = Array.from({ length: ZONES }, (_, at) => zone(at));
  const sums = { kernel: kernel(zones), objects: objects(zones) };
  if (sums.kernel !== sums.objects || !(sums.kernel > 0)) throw new Error(`the sums differ: ${sums.kernel} mm and ${sums.objects} mm`);
  const took = await medians({ kernel: () => kernel(zones), objects: () => objects(zones) }, { warmUps: 3, runs: 9 });
  const perSecond = (ms) => `${((ZONES * DAYS) / ms / 1000).toFixed(1)} M zone-days/s`;
  return [
    `the kernel ${perSecond(took.kernel)}, an object a day ${perSecond(took.objects)}`,
    `ratio: the kernel is ${ratio(took.objects / took.kernel)} as fast, to the same sum of ${count(sums.kernel)} mm`,
  ];
}
