import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { count, medians, ratio } from '../support/measure.mjs';

export const tells =
  'the need of a property of 20 zones over a year, asked anew as a slider asks it, here and in a browser, against an object a day, and as a share of a frame';

const top = path.resolve(import.meta.dirname, '../..');
const AT_ONCE = 40;
/** A screen shows 60 pictures a second. [ms] */
const FRAME = 1000 / 60;
/** Nothing is sent there: every request is answered from the libraries as they are built. */
const ORIGIN = 'http://libraries.invalid';
const LIBRARIES = ['units', 'agronomy', 'irrigation', 'metering'];

/** Runs here and in the page: a year of a property, asked `AT_ONCE` times with another plant factor each time. */
async function asking(atOnce) {
  const { whatIfYear } = await import('@rillbook/metering/what-if/what-if-year.js');
  const { weatherSeries } = await import('@rillbook/metering/volumes/weather-series.js');
  const first = Date.UTC(2024, 9, 3);
  const days = Array.from({ length: 455 }, (_, at) => {
    const season = Math.sin((2 * Math.PI * (at - 170)) / 365);
    const date = new Date(first + at * 86_400_000).toISOString().slice(0, 10);
    return { date, etoMm: 3.6 + 2.6 * season, rainMm: season < 0.2 && (at * 31) % 11 < 2 ? 3 + ((at * 7) % 13) : 0, etoRelativeSd: 0.05 };
  });
  const months = Array.from({ length: 12 }, (_, month) => ({
    month: `2025-${String(month + 1).padStart(2, '0')}`,
    through: new Date(Date.UTC(2025, month + 1, 0)).toISOString().slice(0, 10),
  }));
  const zones = Array.from({ length: 20 }, (_, at) => ({
    id: `z${at}`,
    areaM2: 120 + 15 * at,
    plantFactor: 0.3 + at / 40,
    density: 1,
    shade: 1,
    rawMm: 12 + at,
    duLq: 0.65,
    leachingFraction: 0,
  }));
  const ask = whatIfYear(weatherSeries(days), months);
  const moved = (by) => zones.map((zone) => ({ ...zone, plantFactor: zone.plantFactor * (1 + by / 100) }));
  const library = () => {
    let litres = 0;
    for (let by = 0; by < atOnce; by++) litres += ask(moved(by)).litres;
    return litres;
  };
  const year = (zone, month) => {
    const begin = Date.UTC(2025, month, 1) / 86_400_000 - first / 86_400_000;
    const end = Date.UTC(2025, month + 1, 1) / 86_400_000 - first / 86_400_000;
    return days.slice(begin - 90, end).reduce(
      ({ depletion, sum, at }, { etoMm, rainMm }) => {
        const wanting = depletion + zone.plantFactor * etoMm;
        const left = wanting - Math.min(wanting, rainMm > 0.2 * etoMm ? rainMm : 0);
        const irrigation = Math.max(0, left - zone.rawMm);
        return { depletion: left - irrigation, sum: sum + (at < 90 ? 0 : irrigation), at: at + 1 };
      },
      { depletion: zone.rawMm, sum: 0, at: 0 },
    ).sum;
  };
  const objects = () => {
    let litres = 0;
    for (let by = 0; by < atOnce; by++)
      for (const zone of moved(by))
        for (let month = 0; month < 12; month++) litres += (year(zone, month) * zone.areaM2) / (0.4 + 0.6 * zone.duLq);
    return litres;
  };
  return { library, objects };
}

/** The tests' own browser; Node 20 does not read TypeScript, so it is stripped beside the original. */
async function launch() {
  const stripped = path.join(top, 'tests/support/.bench-browser.mjs');
  const source = readFileSync(path.join(top, 'tests/support/browser.ts'), 'utf8');
  writeFileSync(stripped, ts.transpileModule(source, { compilerOptions: { target: 'ES2023', module: 'ESNext' } }).outputText);
  try {
    return await (await import(stripped)).launchBrowser();
  } finally {
    rmSync(stripped, { force: true });
  }
}

function answer(route) {
  const { pathname } = new URL(route.request().url());
  if (pathname === '/') {
    const imports = Object.fromEntries(LIBRARIES.map((name) => [`@rillbook/${name}/`, `${ORIGIN}/${name}/`]));
    return route.fulfill({ contentType: 'text/html', body: `<script type="importmap">${JSON.stringify({ imports })}</script>` });
  }
  const [, library, ...rest] = pathname.split('/');
  return route.fulfill({ contentType: 'text/javascript', body: readFileSync(path.join(top, 'libs', library, 'dist', ...rest), 'utf8') });
}

/** Milliseconds of `AT_ONCE` questions in a page, the middle of fifteen. */
async function inBrowser() {
  const browser = await launch();
  try {
    const page = await browser.newPage();
    await page.route(`${ORIGIN}/**`, answer);
    await page.goto(`${ORIGIN}/`);
    const run = `(async () => {
      const { library } = await (${asking})(${AT_ONCE});
      const times = [];
      for (let run = 0; run < 20; run++) { const begun = performance.now(); library(); times.push(performance.now() - begun); }
      return { ms: times.slice(5).sort((a, b) => a - b)[7], litres: library() };
    })()`;
    return { ...(await page.evaluate(run)), version: browser.version() };
  } finally {
    await browser.close();
  }
}

export async function bench() {
  const { library, objects } = await asking(AT_ONCE);
  const [one, other] = [library(), objects()];
  if (!(Math.abs(one - other) <= 1e-9 * one)) throw new Error(`the years differ: ${one} L and ${other} L`);
  const took = await medians({ library, objects }, { warmUps: 3, runs: 9 });
  const page = await inBrowser();
  if (page.litres !== one) throw new Error(`the browser comes to ${page.litres} L, Node to ${one} L`);
  const ms = (all) => `${(all / AT_ONCE).toFixed(3)} ms`;
  return [
    `a year of 20 zones ${ms(took.library)} here, ${ms(page.ms)} in Chromium ${page.version}, an object a day ${ms(took.objects)}: ${count(one / AT_ONCE)} L`,
    `ratio: the library is ${ratio(took.objects / took.library)} as fast as an object a day; in the browser a year takes ${((100 * page.ms) / AT_ONCE / FRAME).toFixed(1)} % of a frame`,
  ];
}
