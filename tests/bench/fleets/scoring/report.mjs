// The score as lines of text.

const share = (value) => (value === null ? '   –' : value.toFixed(3));
const plain = (value, decimals = 1) => (value === null ? '–' : value.toFixed(decimals));

function recallLines(title, recalls) {
  const lines = Object.entries(recalls).map(
    ([key, { judged, found, inTime, recall, recallInTime }]) =>
      `  ${key.padEnd(38)} ${String(judged).padStart(4)} judged ${String(found).padStart(4)} found ${share(recall)}   in time ${String(inTime).padStart(4)} ${share(recallInTime)}`,
  );
  return ['', title, ...(lines.length ? lines : ['  none'])];
}

function alarmLines({ count, perSiteYear, onHealthy, healthyProperties, perHealthySiteYear, byKind }) {
  return [
    '',
    `False alarms: ${count}, ${plain(perSiteYear, 3)} a site-year; ${onHealthy} on ${healthyProperties} properties on which nothing was wrong, ${plain(perHealthySiteYear, 3)} a site-year`,
    ...Object.entries(byKind).map(([kind, number]) => `  ${kind.padEnd(22)} ${number}`),
  ];
}

function gapLines(gaps) {
  return Object.entries(gaps).map(
    ([kind, { clear, found, opened, without }]) =>
      `  ${kind}: ${found} of ${clear} property-months with a clear gap found; ${opened} findings, ${without} without such a gap in the reference`,
  );
}

/** The ideal detector's recall, and the product's own at each least confidence. */
export function curveLines({ curve, floor }) {
  const own = curve.map(
    ({ leastConfidence, recall, falseAlarmsPerSiteYear }) =>
      `  ${String(leastConfidence).padEnd(7)} recall ${share(recall)}   ${plain(falseAlarmsPerSiteYear, 3)} false alarms a site-year`,
  );
  if (!floor) return ['', 'Recall against false alarms, by least confidence', ...own, '  no floor: too few properties to know the noise'];
  return [
    '',
    'Recall against false alarms, by least confidence (unexplained use of at least 10 %)',
    ...own,
    '',
    `Floor: sd of log M/P ${plain(floor.medianSd, 3)} (median), ${plain(floor.sd90, 3)} (nine in ten), of ${floor.properties} properties; ideal recall at ${floor.falseAlarms.join(', ')} false alarms a site-year`,
    `  10 %+  ${floor.fromTenth.map(share).join('  ')}   (10 to 300 %, as the fleets have them)`,
    ...floor.curve.map(({ share: size, recall }) => `  ${`${(100 * size).toFixed(0)} %`.padEnd(6)} ${recall.map(share).join('  ')}`),
  ];
}

/** @param score what `scoreFleet` gave */
export function reportLines(score) {
  const { attribution, steady, rollovers, swaps, flowTests, wateredInRain } = score;
  const view = score.keepsHistory
    ? 'findings with their history'
    : 'findings as they stand at the end: only faults of the last weeks are judged, times mean nothing';
  return [
    `${score.properties} properties, ${plain(score.siteYears)} site-years, ${score.findings} findings (${view})`,
    ...recallLines('Unexplained use of at least 10 % of the usual month', score.unexplainedUse),
    `  not in time: ${score.missed.count}; never found ${score.missed.never}; less than 2,000 gal in its month ${score.missed.small}`,
    `  beside these, leaks below the minimum test flow of their meter, which it need not register: ${score.belowMeter.inTime} of ${score.belowMeter.judged} in time`,
    ...recallLines('All that adds water, by size', score.byGroupAndBand),
    ...recallLines('Every kind, by size', score.byKindAndBand),
    ...['', 'Delay (medians, of those found)'],
    ...Object.entries(score.delays).map(
      ([group, one]) => `  ${group}: ${one.found} found, ${plain(one.medianDays)} days, ${one.medianReadings ?? '–'} readings`,
    ),
    ...alarmLines(score.falseAlarms),
    ...[
      '',
      `Zones of zone flow changes named rightly: ${attribution.right} of ${attribution.found} found, ${share(attribution.share)}; of all ${attribution.all}, ${share(attribution.shareOfAll)}`,
    ],
    `Steady flow: above the meter's floor ${steady.above.found} of ${steady.above.judged}; below it ${steady.below.found} of ${steady.below.judged}`,
    ...recallLines('Misreads', score.misreads),
    `Rollovers called misread: ${rollovers.calledMisread} of ${rollovers.count}; swaps: ${swaps.calledMisread} of ${swaps.count}`,
    `Wrong recorded flows: ${flowTests.found} of ${flowTests.judged} led to a flow test; leak alarms on them: ${flowTests.leakAlarms}`,
    `Missed pauses found: ${wateredInRain.found} of ${wateredInRain.judged}`,
    ...['', 'Against the reference of the settings gap', ...gapLines(score.settingsGaps)],
    ...curveLines(score),
  ];
}
