// Findings of the product on fleets of other worlds: weekly to quarterly readings, bills alone, coarse dials, timers of which little is known, feeds that
// begin midway. `npm run prove -- other-fleets EACH SEED MONTHS` takes so many sites of each style. It fails on a crash, on a storm of false alarms of any
// style, and where a rollover is called a misread.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { writeFleet } from '../bench/fleets/generate.mjs';
import { otherFleet } from '../bench/fleets/others/generate.mjs';
import { scoreFleets } from '../bench/fleets/score.mjs';
import { throughProduct } from '../bench/fleets/scoring/product.mjs';
import { byStyle } from '../bench/fleets/others/by-style.mjs';

export const readsShared = false;

const MOST_FALSE = 0.1;
/** No style alone may tell more, counts being small. */
const MOST_FALSE_OF_STYLE = 0.5;

export async function prove([each = 3, seed = Date.now() % 2 ** 31, months = 14]) {
  const fleet = otherFleet({ seed: Number(seed), each: Number(each), months: Number(months) });
  const folder = mkdtempSync(path.join(tmpdir(), 'rillbook-other-'));
  try {
    writeFleet(fleet, folder);
    const { exported, seconds } = await throughProduct(path.join(folder, 'import'), fleet.lastDay);
    const score = scoreFleets([{ ...fleet, findings: exported['findings.csv'], history: true }]);
    const { lines, worst } = byStyle(fleet, exported['findings.csv']);
    const says = [
      `seed ${seed}, ${fleet.siteYears.toFixed(0)} site-years; import ${seconds.import.toFixed(0)} s`,
      ...lines,
      `false alarms ${score.falseAlarms.count}, ${score.falseAlarms.perSiteYear.toFixed(3)} a site-year: ${JSON.stringify(score.falseAlarms.byKind)}`,
      `misreads ${score.allMisreads.found} of ${score.allMisreads.judged}; rollovers called misread ${score.rollovers.calledMisread} of ${score.rollovers.count}`,
      `wrong flows to a test ${score.flowTests.found} of ${score.flowTests.judged}; leak alarms on them ${score.flowTests.leakAlarms}`,
    ].join('\n');
    if (score.falseAlarms.perSiteYear > MOST_FALSE || worst > MOST_FALSE_OF_STYLE) throw new Error(`${says}\ntoo many false alarms`);
    if (score.rollovers.calledMisread > 0) throw new Error(`${says}\na rollover was called a misread`);
    return says;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
