// A whole season of dry cotton at Maricopa, Arizona, 2013 (USDA-ARS), through the dual coefficient balance: every column that the published
// output has, every day, within half of its last printed digit; and no water lost.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { windSpeedAt2M } from '../../libs/agronomy/dist/evapotranspiration/air/wind-speed-at-2-m.js';
import { stageCoefficient } from '../../libs/agronomy/dist/water-balance/canopy/growth-stages.js';
import { dualSeason } from '../../libs/agronomy/dist/water-balance/dual/dual-season.js';
import { readilyAvailableWater } from '../../libs/agronomy/dist/water-balance/root-zone/readily-available-water.js';
import { waterStressCoefficient } from '../../libs/agronomy/dist/water-balance/root-zone/water-stress-coefficient.js';
import { closingDepletion } from '../../libs/agronomy/dist/water-balance/season/closing-depletion.js';
import { totalEvaporableWater } from '../../libs/agronomy/dist/water-balance/surface/total-evaporable-water.js';

export const readsShared = true;

const data = path.join(import.meta.dirname, '../../../shared/data/weather');
const lines = (name) => readFileSync(path.join(data, name), 'utf8').split(/\r?\n/);
/** Half of the third decimal, and a little for the decimal's own rounding in binary. */
const PRINTED = 0.0005 + 1e-9;
const MISSING = -99.999;
const CLOSURE = 1e-9;
const NOT_NUMBERS = ['Year-DOY', 'Year', 'DOY', 'DOW', 'Date'];

const isDay = (line) => /^\d{4}-\d{3}\b/.test(line.trim());
const cellsOf = (line) => line.trim().split(/\s+/);
const dateOf = (yearDay) => new Date(Date.UTC(Number(yearDay.slice(0, 4)), 0, Number(yearDay.slice(5)))).toISOString().slice(0, 10);

/** A table whose rows begin with year and day: rows by date, cells by the heading's names (the first of a name that comes twice). */
function table(name) {
  const all = lines(name);
  const head = cellsOf(all.find((line) => line.startsWith('Year-DOY')));
  return new Map(
    all.filter(isDay).map((line) => {
      const cells = cellsOf(line);
      return [dateOf(cells[0]), Object.fromEntries(head.map((column, at) => [column, cells[at]]).reverse())];
    }),
  );
}

function parameters() {
  const found = lines('cotton2013.par').map((line) => /^\s*(-?[\d.]+) (\w+),/.exec(line));
  return Object.fromEntries(found.filter(Boolean).map(([, value, name]) => [name, Number(value)]));
}

function heading(name, key) {
  return Number(new RegExp(`^\\s*(-?[\\d.]+) .*${key}`, 'm').exec(lines(name).join('\n'))[1]);
}

function season(published) {
  const p = parameters();
  const weather = table('cotton2013.wth');
  const height = heading('cotton2013.wth', 'Wind speed measurement height');
  const days = [...published.keys()].map((date) => {
    const day = weather.get(date);
    return {
      date,
      eto: Number(day.ETref),
      rain: Number(day.Rain),
      windSpeedAt2M: windSpeedAt2M(Number(day.Wndsp), height),
      minimumHumidity: Number(day.RHmin),
    };
  });
  const events = [...table('cottondry2013.irr')].map(([date, { Depth, fw, IrrEff }]) => ({
    date,
    irrigation: (Number(Depth) * Number(IrrEff)) / 100,
    wettedFraction: Number(fw),
  }));
  const surface = totalEvaporableWater(p.thetaFC, p.thetaWP, 1000 * p.Ze);
  return {
    days,
    events,
    plants: {
      stages: { initialDays: p.Lini, developmentDays: p.Ldev, midDays: p.Lmid, lateDays: p.Lend },
      basalCoefficients: { initial: p.Kcbini, mid: p.Kcbmid, end: p.Kcbend },
      minimumCoefficient: p.Kcbini,
      initialHeight: p.hini,
      fullHeight: p.hmax,
      initialRootDepth: 1000 * p.Zrini,
      fullRootDepth: 1000 * p.Zrmax,
    },
    zone: {
      totalEvaporableWater: surface,
      readilyEvaporableWater: p.REW,
      availableWater: 1000 * (p.thetaFC - p.thetaWP),
      tableFraction: p.pbase,
      mulchCover: 0,
      curveNumber: null,
      capillaryRise: 0,
    },
    start: { surfaceDepletion: surface, depletion: 1000 * (p.thetaFC - p.theta0) * p.Zrini, wettedFraction: 1 },
  };
}

/** Irrigation that did not reach the soil, by date [mm]. */
const irrigationLosses = () =>
  new Map([...table('cottondry2013.irr')].map(([date, row]) => [date, Number(row.Depth) * (1 - Number(row.IrrEff) / 100)]));

/** The columns of the published output from a day of ours; `at` counts the days of the season. */
function columns(day, at, losses) {
  const p = parameters();
  const stages = { initialDays: p.Lini, developmentDays: p.Ldev, midDays: p.Lmid, lateDays: p.Lend };
  const single = stageCoefficient(at, stages, { initial: p.Kcmini, mid: p.Kcmmid, end: p.Kcmend });
  const raw = readilyAvailableWater(day.depletionFraction, day.totalAvailableWater);
  return {
    ETref: day.eto,
    Kcm: single,
    ETcm: single * day.eto,
    tKcb: day.basalCoefficient,
    Kcb: day.basalCoefficient,
    ETcb: day.basalCoefficient * day.eto,
    h: day.plantHeight,
    Kcmax: day.maximumCoefficient,
    ETmax: day.maximumCoefficient * day.eto,
    fc: day.canopyCover,
    fw: day.wettedFraction,
    few: day.exposedWettedFraction,
    De: day.surfaceDepletion,
    Kr: day.evaporationReduction,
    Ke: day.evaporationCoefficient,
    E: day.evaporation,
    DPe: day.surfacePercolation,
    Kc: day.evaporationCoefficient + day.basalCoefficient,
    ETc: day.etc,
    TAW: day.totalAvailableWater,
    Zr: day.rootDepth / 1000,
    p: day.depletionFraction,
    RAW: day.readilyAvailableWater,
    Ks: day.waterStressCoefficient,
    Ka: day.evaporationCoefficient + day.waterStressCoefficient * day.basalCoefficient,
    ETa: day.evapotranspiration,
    T: day.transpiration,
    DP: day.deepPercolation,
    Dr: day.depletion,
    fDr: day.depletion / day.totalAvailableWater,
    Ksend: waterStressCoefficient(day.depletion, day.totalAvailableWater, raw),
    Irrig: day.irrigation,
    IrrLoss: losses.get(day.date) ?? 0,
    Rain: day.rain,
    Runoff: day.runoff,
  };
}

/** Worst deviation of each column; a column that is not computed must be empty on every day. */
function compare(balance, published, losses) {
  const worst = new Map();
  const empty = new Set();
  balance.days.forEach((day, at) => {
    const row = published.get(day.date);
    const ours = columns(day, at, losses);
    for (const [name, printed] of Object.entries(row)) {
      if (NOT_NUMBERS.includes(name)) continue;
      if (Number(printed) === MISSING && !(name in ours)) empty.add(name);
      else {
        const off = Math.abs(ours[name] - Number(printed));
        if (!(off <= (worst.get(name)?.off ?? -1)))
          worst.set(name, { off, date: day.date, count: (worst.get(name)?.count ?? 0) + 1, ours: ours[name], printed });
        else worst.get(name).count += 1;
      }
    }
  });
  return { worst, empty };
}

export async function prove() {
  const published = table('cottondry2013.out');
  const input = season(published);
  const balance = dualSeason(input);
  const { worst, empty } = compare(balance, published, irrigationLosses());
  const wanted = Object.keys(columns(balance.days[0], 0, irrigationLosses()));
  const absent = wanted.filter((name) => !worst.has(name));
  if (absent.length) throw new Error(`the published output has no column ${absent.join(', ')}`);
  const report = [...worst].map(
    ([name, { off, date, count }]) => `  ${name.padEnd(8)} ${count} days  worst ${off.toExponential(1)} on ${date}`,
  );
  const wrong = [...worst].filter(([, { off }]) => !(off <= PRINTED));
  if (wrong.length) {
    const faults = wrong.map(([name, { date, ours, printed }]) => `${name} on ${date}: ours ${ours}, published ${printed}`);
    throw new Error(`\n  ${faults.join('\n  ')}\n${report.join('\n')}`);
  }
  const end = balance.days.at(-1).depletion;
  const lost = end - closingDepletion(input.start.depletion, balance.total) + balance.total.shortfall;
  if (!(Math.abs(lost) <= CLOSURE)) throw new Error(`the water does not close: ${lost} mm`);
  const { eto, rain, irrigation, evaporation, transpiration, evapotranspiration, deepPercolation, shortfall } = balance.total;
  const mm = (value) => `${value.toFixed(3)} mm`;
  return [
    `${balance.days.length} days of ${worst.size} columns agree with the printed three decimals; ${[...empty].join(', ')} are empty there`,
    ...report,
    `season: ETref ${mm(eto)}, rain ${mm(rain)}, irrigation ${mm(irrigation)}, E ${mm(evaporation)}, T ${mm(transpiration)}, ETa ${mm(evapotranspiration)}, DP ${mm(deepPercolation)}`,
    `Dr from ${mm(input.start.depletion)} to ${mm(end)}; asked of an empty root zone ${mm(shortfall)}; water lost ${lost.toExponential(1)} mm`,
  ].join('\n');
}
