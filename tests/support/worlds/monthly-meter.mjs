// A property that is read once a month for some years: settings that follow the season or stand still, flows on record that are off by a
// ratio of their own, months that scatter about it, and what goes wrong from a reading on. Drawn from a seed; every number is invented.

const MINUTES_PER_DAY = 1440;
const FIRST_DAY = 19_723;
const DAYS_PER_READING = 30;
const READ_AT_HOUR = 10;
const RUN_BEGINS_AT_HOUR = 5;
const EVERY_DAYS = 2;

/** Numbers of a seed, from 0 to below 1. */
export function drawsOf(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

export const normalOf = (draw) => Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw());

const usual = {
  readings: 26,
  noise: 0.03,
  ratioSd: 0.15,
  ratio: null,
  season: 0,
  litresPerDay: 9000,
  resolutionLitres: 10,
  indoorLitresPerDay: null,
  programmedKnown: true,
  runsKnown: true,
  source: 'readings',
  trouble: null,
};

/** Litres of one interval as trouble changes them: `share` of the interval's own water, more or less, or `litresPerDay`, from a reading on. */
function troubled(litres, days, at, trouble) {
  if (trouble === null || at < trouble.fromReading || at >= (trouble.untilReading ?? Number.POSITIVE_INFINITY)) return litres;
  return litres * (1 + (trouble.share ?? 0)) + (trouble.litresPerDay ?? 0) * days;
}

const perDayAt = (world, day, phase) => world.litresPerDay * (1 - world.season * Math.cos((2 * Math.PI * (day + phase)) / 365.25));

export function monthlyMeter(seed, changes = {}) {
  const world = { ...usual, ...changes };
  const draw = drawsOf(seed);
  const ratio = world.ratio ?? Math.exp(world.ratioSd * normalOf(draw));
  const phase = Math.floor(draw() * 365);
  const lengths = Array.from({ length: world.readings }, () => DAYS_PER_READING + Math.floor(draw() * 3) - 1);
  const days = lengths.reduce((sum, length) => sum + length, 0) + 2;
  // Enough for the longest day to be over before it is read.
  const flowLPerMin = 240;
  const programmedLitres = new Float64Array(days);
  const runs = [];
  for (let day = 0; day < days; day += 1) {
    if (day % EVERY_DAYS !== 0) continue;
    programmedLitres[day] = Math.max(0, EVERY_DAYS * perDayAt(world, day, phase));
    const begin = (FIRST_DAY + day) * MINUTES_PER_DAY + RUN_BEGINS_AT_HOUR * 60;
    const end = begin + programmedLitres[day] / flowLPerMin;
    if (programmedLitres[day] > 0) runs.push({ zoneId: 'z1', program: 'A', begin, end });
  }
  const indoor = world.indoorLitresPerDay ?? 0;
  const readAt = READ_AT_HOUR / 24;
  let [at, register] = [0, 0];
  const intervals = lengths.map((length, index) => {
    // Runs begin at five and end before ten: water of a day is over when it is read.
    const ran = programmedLitres.slice(at + 1, at + length + 1).reduce((sum, litres) => sum + litres, 0);
    const habit = ratio * ran * (1 + world.noise * normalOf(draw));
    const litres = Math.max(0, troubled(habit, length, index, world.trouble)) + indoor * length;
    const [before, after] = [register, register + litres].map(
      (value) => Math.floor(value / world.resolutionLitres) * world.resolutionLitres,
    );
    const interval = {
      fromLocalDay: FIRST_DAY + at + readAt,
      toLocalDay: FIRST_DAY + at + length + readAt,
      litres: after - before,
      sdLitres: world.resolutionLitres * Math.sqrt(1 / 6),
      source: world.source,
    };
    at += length;
    register += litres;
    return interval;
  });
  return {
    meterId: 'm1',
    kind: world.indoorLitresPerDay === null ? 'irrigation' : 'mixed',
    indoorLitresPerDay: world.indoorLitresPerDay,
    sizeMm: 40,
    resolutionLitres: world.resolutionLitres,
    firstDay: FIRST_DAY,
    days,
    midnights: Float64Array.from({ length: days + 1 }, (_, day) => (FIRST_DAY + day) * MINUTES_PER_DAY),
    rainMm: new Float64Array(days),
    etoMm: Float64Array.from({ length: days }, (_, day) => perDayAt(world, day, phase) / 2000),
    programmedLitres: world.programmedKnown ? programmedLitres : new Float64Array(days).fill(Number.NaN),
    programmedIsEstimate: new Uint8Array(days),
    neededLitres: Float64Array.from({ length: days }, (_, day) => Math.max(0, perDayAt(world, day, phase))),
    programmedRelativeSd: world.ratioSd,
    zones: [{ zoneId: 'z1', controllerId: 'c1', station: 1, flowLPerMin, flowRelativeSd: world.ratioSd }],
    runs: world.runsKnown ? runs : [],
    intervals,
    usage: null,
    pricePerLitre: 0.002,
  };
}
