// One meter and its year, minute by minute: runs by the wall clock, a timer's clock that is off, pressure that wanders, people, rain, a
// register that counts whole steps, steps that are missing. Invented; the same seed gives the same meter.

const MINUTES_PER_DAY = 1440;
/** 2025-01-01. */
const FIRST_DAY = 20089;
/** Clocks go forward on day 67 of that year and back on day 305, at 02:00. */
const SPRING = 67;
const AUTUMN = 305;
const CHANGE_AT = 120;

/** Uniform numbers from 0 to 1: mulberry32. */
export function randomFrom(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const between = (random, low, high) => low + (high - low) * random();
const normal = (random) => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** The elapsed minute at which each day begins. */
function midnightsOf(days, firstDay, clockChanges) {
  const midnights = new Float64Array(days + 1);
  midnights[0] = firstDay * MINUTES_PER_DAY;
  for (let day = 0; day < days; day++) {
    const ofYear = firstDay + day - FIRST_DAY;
    const moved = clockChanges ? (ofYear === SPRING ? -60 : ofYear === AUTUMN ? 60 : 0) : 0;
    midnights[day + 1] = midnights[day] + MINUTES_PER_DAY + moved;
  }
  return midnights;
}

function atClock(midnights, day, clockMinute) {
  const moved = midnights[day + 1] - midnights[day] - MINUTES_PER_DAY;
  return midnights[day] + clockMinute + (clockMinute >= CHANGE_AT ? moved : 0);
}

function weather(random, days, firstDay) {
  const etoMm = new Float64Array(days);
  const rainMm = new Float64Array(days);
  for (let day = 0; day < days; day++) {
    const season = Math.sin((2 * Math.PI * (firstDay + day - FIRST_DAY - 100)) / 365);
    rainMm[day] = random() < 0.14 ? -9 * Math.log(1 - random()) : 0;
    etoMm[day] = Math.max(0.5, (4 + 2.5 * season) * (rainMm[day] > 3 ? 0.5 : 1) * (1 + 0.15 * normal(random)));
  }
  return { etoMm, rainMm };
}

/** Litres needed: a bucket of 20 mm, filled by rain and by each day's own need. */
function needOf({ etoMm, rainMm }, area) {
  let stored = 0;
  return etoMm.map((eto, day) => {
    stored = Math.min(20, stored + 0.8 * rainMm[day]);
    const want = 0.6 * eto;
    const used = Math.min(stored, want);
    stored -= used;
    return (want - used) * area;
  });
}

function programOf(random, wish) {
  const zones = wish.zones ?? 4 + Math.floor(9 * random());
  const flows = Array.from({ length: zones }, () => between(random, 18, 90));
  const recordSd = wish.recordSd ?? 0.15;
  return {
    flows,
    recorded: flows.map((flow) => Math.max(3, flow * (1 + recordSd * normal(random)))),
    minutes: flows.map(() => Math.round(between(random, 7, 22))),
    startMinute: wish.startMinute ?? Math.round(between(random, 0, 5) * 12) * 5,
    everyDays: wish.everyDays ?? 1 + Math.floor(3 * random()),
    shift: wish.shiftMinutes ?? Math.round(between(random, -18, 18)),
    sensor: wish.sensor ?? random() < 0.5,
    winterOff: random() < 0.5,
    drain: between(random, 0, 3),
  };
}

/** Percent adjust of a day: by the month, none in winter where the timer is off. */
function percentOf(program, ofYear) {
  const month = Math.floor((((ofYear % 365) + 365) % 365) / 30.5);
  const percent = [30, 35, 55, 75, 90, 105, 115, 110, 90, 70, 45, 30][month] ?? 30;
  return program.winterOff && percent < 50 ? 0 : percent / 100;
}

function addRuns(world, program, wish) {
  const { days, firstDay, midnights, rainMm, random } = world;
  let pressure = 0;
  for (let day = 0; day < days; day++) {
    pressure = 0.7 * pressure + 0.02 * normal(random);
    const ofYear = firstDay + day - FIRST_DAY;
    const percent = percentOf(program, ofYear);
    const recent = (rainMm[day - 1] ?? 0) + (rainMm[day - 2] ?? 0);
    if (percent === 0 || (firstDay + day) % program.everyDays !== 0) continue;
    if ((wish.pauses ?? true) && !program.sensor && recent >= 6) continue;
    const held = program.sensor && recent >= 6;
    const daily = (1 + pressure) * (1 - 0.04 * Math.sin((2 * Math.PI * (ofYear - 100)) / 365));
    let begin = atClock(midnights, day, program.startMinute);
    program.flows.forEach((flow, zone) => {
      const length = Math.max(1, Math.round(program.minutes[zone] * percent));
      world.runs.push({ zoneId: `z${zone + 1}`, program: 'A', begin, end: begin + length });
      world.programmedLitres[day] += length * program.recorded[zone];
      const factor = daily * (1 + 0.015 * normal(random)) * faultOf(wish.fault, zone, day);
      const extra = wish.fault?.duringRuns && day >= wish.fault.duringRuns.fromDay ? 1 + wish.fault.duringRuns.share : 1;
      if (!held) pour(world, begin + program.shift, length, flow * factor * extra, day);
      begin += length;
    });
    if (!held) pour(world, begin + program.shift, 1, program.drain * 5, day);
  }
}

function faultOf(fault, zone, day) {
  const within = (one) => one && day >= one.fromDay && day < (one.untilDay ?? Number.POSITIVE_INFINITY);
  const own = within(fault?.zone) && fault.zone.zone === zone ? fault.zone.factor : 1;
  return own * (within(fault?.allZones) ? fault.allZones.factor : 1);
}

function pour(world, begin, minutes, litresPerMinute, day) {
  const first = Math.round(begin - world.midnights[0]);
  for (let minute = first; minute < first + minutes; minute++)
    if (minute >= 0 && minute < world.flow.length) world.flow[minute] += litresPerMinute;
  if (day !== undefined) world.runLitres[day] += minutes * litresPerMinute;
}

/** A hose or a quick coupler now and then, and a crew that tests every zone once a month, on weekdays by day. */
function addHabits(world, program) {
  const { days, midnights, random } = world;
  for (let day = 0; day < days; day++) {
    if (random() < 1 / 8)
      pour(
        world,
        atClock(midnights, day, Math.round(between(random, 420, 1080))),
        Math.round(between(random, 3, 25)),
        between(random, 6, 25),
      );
    if (day % 30 === 17) {
      let begin = atClock(midnights, day, Math.round(between(random, 480, 840)));
      for (const flow of program.flows) {
        pour(world, begin, 2, flow);
        begin += 2;
      }
    }
  }
}

const BY_HOUR = [2, 1, 1, 1, 2, 8, 22, 34, 30, 22, 20, 20, 22, 18, 16, 18, 22, 30, 34, 30, 24, 18, 10, 5];

function addPeople(world, litresPerDay) {
  const { days, firstDay, midnights, random } = world;
  const total = BY_HOUR.reduce((sum, value) => sum + value, 0);
  for (let day = 0; day < days; day++) {
    const weekend = (firstDay + day + 3) % 7 >= 5;
    const busy = (weekend ? 0.75 : 1.1) * (1 + 0.08 * normal(random));
    BY_HOUR.forEach((share, hour) => {
      const events = (busy * litresPerDay * share) / total / 25;
      const count = Math.floor(events) + (random() < events % 1 ? 1 : 0);
      for (let event = 0; event < count; event++)
        pour(world, atClock(midnights, day, hour * 60 + Math.floor(60 * random())), 1 + Math.floor(4 * random()), between(random, 5, 15));
    });
  }
}

function addFaults(world, fault) {
  const { days, midnights } = world;
  if (fault?.steady) {
    const begin = midnights[fault.steady.fromDay] + (fault.steady.fromMinute ?? 0);
    const end = midnights[Math.min(days, fault.steady.untilDay ?? days)];
    pour(world, begin, Math.round(end - begin), fault.steady.litresPerMinute);
  }
  const off = fault?.offSchedule;
  if (off)
    for (let day = off.fromDay; day < Math.min(days, off.untilDay ?? days); day += off.everyDays)
      pour(world, atClock(midnights, day, off.clockMinute), off.minutes, off.litresPerMinute);
}

/** What a register tells: whole steps, and not every time. */
function readUsage(world, stepMinutes, resolutionLitres, missingShare) {
  const litres = new Float64Array(Math.floor(world.flow.length / stepMinutes));
  let [register, told] = [world.random() * resolutionLitres, 0];
  let outage = 0;
  for (let step = 0; step < litres.length; step++) {
    for (let minute = 0; minute < stepMinutes; minute++) register += world.flow[step * stepMinutes + minute];
    const now = Math.floor(register / resolutionLitres);
    if (outage === 0 && world.random() < missingShare / 20) outage = 20;
    litres[step] = outage > 0 ? Number.NaN : (now - told) * resolutionLitres;
    if (outage > 0) outage -= 1;
    told = now;
  }
  return { firstMinute: world.midnights[0], stepMinutes, litres, resolutionLitres };
}

export function simulatedMeter(wish) {
  const random = randomFrom(wish.seed);
  const { days = 365, firstDay = FIRST_DAY, stepMinutes = 15, kind = 'irrigation', sizeMm = 40, resolutionLitres = 1 } = wish;
  const midnights = midnightsOf(days, firstDay, wish.clockChanges ?? true);
  const program = programOf(random, wish);
  const { etoMm, rainMm } = weather(random, days, firstDay);
  const area = program.flows.reduce((sum, flow, zone) => sum + (flow * program.minutes[zone]) / program.everyDays, 0) / 3.5;
  const neededLitres = needOf({ etoMm, rainMm }, area);
  const world = {
    random,
    days,
    firstDay,
    midnights,
    rainMm,
    runs: [],
    programmedLitres: new Float64Array(days),
    runLitres: new Float64Array(days),
    flow: new Float32Array(midnights[days] - midnights[0]),
  };
  addRuns(world, program, wish);
  if (wish.habits ?? true) addHabits(world, program);
  const indoorLitresPerDay = kind === 'mixed' ? between(random, 1500, 9000) : null;
  if (indoorLitresPerDay !== null) addPeople(world, indoorLitresPerDay);
  addFaults(world, wish.fault);
  const usage = readUsage(world, stepMinutes, resolutionLitres, wish.missingShare ?? 0.01);
  const zones = program.recorded.map((flowLPerMin, zone) => ({
    zoneId: `z${zone + 1}`,
    controllerId: 'c1',
    station: zone + 1,
    flowLPerMin,
    flowRelativeSd: 0.2,
  }));
  const evidence = {
    meterId: `m${wish.seed}`,
    kind,
    indoorLitresPerDay,
    sizeMm,
    resolutionLitres,
    firstDay,
    days,
    midnights,
    rainMm,
    etoMm,
    programmedLitres: world.programmedLitres,
    programmedIsEstimate: new Uint8Array(days),
    neededLitres,
    programmedRelativeSd: 0.1,
    zones,
    runs: world.runs,
    intervals: [],
    usage,
    pricePerLitre: 0.001,
  };
  return { evidence, flows: program.flows, shiftMinutes: program.shift, runLitres: world.runLitres };
}
