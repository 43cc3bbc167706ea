// Findings of the libraries' judges alone on labelled fleets drawn a moment ago: without database, import and accounts, so that many site-years take
// minutes. `npm run prove -- judges SEED PROPERTIES MONTHS HOURLY FAULTY` draws another. It prints the whole score, and fails where a false-alarm bound is broken.
import { drawnFleet, textsOf } from '../bench/fleets/generate.mjs';
import { evidenceOf } from '../bench/fleets/judging/evidence.mjs';
import { judgedFindings } from '../bench/fleets/judging/judged.mjs';
import { possibleInTwoDays } from '../bench/fleets/judging/two-days.mjs';
import { possibleInTwoReadings } from '../bench/fleets/judging/two-readings.mjs';
import { scoreFleets } from '../bench/fleets/score.mjs';
import { records } from '../bench/fleets/scoring/csv.mjs';
import { reportLines } from '../bench/fleets/scoring/report.mjs';

export const readsShared = false;

const GIVEN = { seed: 31_337, properties: 60, months: 18, hourly: 0.2, faulty: 0.5 };
const MOST_FALSE_ALARMS = 0.1;

export function prove([seed, properties, months, hourly, faulty]) {
  const wish = {
    seed: Number(seed ?? GIVEN.seed),
    properties: Number(properties ?? GIVEN.properties),
    months: Number(months ?? GIVEN.months),
    hourly: Number(hourly ?? GIVEN.hourly),
    faulty: Number(faulty ?? GIVEN.faulty),
  };
  const { fleet, texts, meters } = drawn(wish);
  const score = scoreFleets([{ name: `${wish.seed}`, ...texts, findings: judgedFindings(meters), history: true }]);

  const { perSiteYear } = score.falseAlarms;
  if (!(perSiteYear <= MOST_FALSE_ALARMS))
    throw new Error(`False alarms: ${perSiteYear.toFixed(3)} a site-year, at most ${MOST_FALSE_ALARMS} are promised.`);
  if (score.rollovers.calledMisread > 0) throw new Error(`${score.rollovers.calledMisread} rollovers were called misreads.`);
  const healthy = drawn({ ...wish, faulty: 0 }).meters;
  return [...reportLines(score), ...floors({ fleet, texts, meters }, healthy)].join('\n');
}

function floors(own, healthy) {
  const [days, readings] = [possibleInTwoDays(own, healthy), possibleInTwoReadings(own, healthy)];
  const by = 'by one who knows their water and the noise';
  return [
    `By the hour within two days, of ${days.judged} that add a tenth: ${days.possible} could be seen ${by}.`,
    `By readings within two, of ${readings.judged} that add a tenth: ${readings.possible.toFixed(1)} are expected to be seen ${by}, at 0.1 false alarms a site-year.`,
  ];
}

function drawn(wish) {
  const fleet = drawnFleet(wish);
  const texts = textsOf(fleet);
  return {
    fleet,
    texts,
    meters: evidenceOf(fleet, Object.fromEntries(['readings', 'usage', 'bills'].map((n) => [n, records(texts.files[`${n}.csv`])]))),
  };
}
