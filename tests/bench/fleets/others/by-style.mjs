// What was found of each style: added water of at least a tenth of the usual month, in time, and false alarms.
import { records } from '../scoring/csv.mjs';
import { HARMLESS } from '../scoring/families.mjs';
import { matched } from '../scoring/match.mjs';
import { sitesOf, spanOf } from '../scoring/sites.mjs';

const NEEDED = ['properties', 'meters', 'readings', 'usage', 'bills', 'settings'];

/** Lines to read, and the most false alarms a site-year of any style. */
export function byStyle(fleet, findings) {
  const sites = sitesOf(Object.fromEntries(NEEDED.map((name) => [name, records(fleet.files[`${name}.csv`])])));
  const { last, years } = spanOf(sites);
  const match = matched({ truth: records(fleet.truth), findings: records(findings), sites, last, history: true });
  const names = [...new Set(fleet.sites.map(({ styleName }) => styleName))];
  let worst = 0;
  const lines = names.map((style) => {
    const own = new Set(fleet.sites.filter((site) => site.styleName === style).map(({ name }) => name));
    const faults = match.faults.filter((fault) => own.has(fault.property) && fault.isJudged && !HARMLESS.includes(fault.kind));
    const large = faults.filter((fault) => fault.family.excess && Math.abs(fault.share ?? 0) >= 0.1);
    const inTime = large.filter((fault) => fault.isInTime);
    const alarms = match.findings.filter((one) => own.has(one.property) && one.isAlarm && !one.explainedBy);
    const rate = alarms.length / (own.size * years);
    worst = Math.max(worst, rate);
    const missed = large
      .filter((fault) => !fault.isInTime)
      .map((fault) => `${fault.kind} ${fault.share.toFixed(2)} ${fault.isFound ? 'late' : 'never'}`);
    const told = [...new Set(alarms.map(({ kind, property, opened_at }) => `${kind} (${property}, ${opened_at})`))].slice(0, 4);
    return `  ${style.padEnd(26)} ${inTime.length} of ${large.length} in time${missed.length ? ` [${missed.join('; ')}]` : ''}; false ${alarms.length}${told.length ? `: ${told.join(', ')}` : ''}`;
  });
  return { lines, worst };
}
