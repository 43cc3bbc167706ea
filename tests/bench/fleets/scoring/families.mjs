// Which findings are right for which fault, and which are a fair consequence of it: neither found nor false. The one place where this is decided.

/** Kinds whose alarms are counted as false where nothing explains them. */
export const ALARMS = ['unexplained use', 'steady flow', 'off-schedule run', 'zone flow changed', 'not delivering', 'doubtful reading'];

/** Alarms that send somebody to look for a leak. */
export const LEAK_ALARMS = ['unexplained use', 'steady flow'];

const JUMP = 'a reading after much lost water looks like a misread until the next one';

/**
 * `right`: any one of them counts as found. `fair`: explained by the fault, but does not count as found. `excess`: gallons are added, so that
 * `overwatered` is right as well where settings are not known, because unexplained use cannot be known there.
 */
export const FAMILIES = {
  'continuous leak': {
    ...{ right: ['unexplained use', 'steady flow'], fair: ['off-schedule run', 'doubtful reading'], excess: true },
    why: `it flows by night and day: by volume, by the hour that never stops, and outside every window; ${JUMP}`,
  },
  'slow leak': {
    ...{ right: ['unexplained use', 'steady flow'], fair: ['off-schedule run', 'doubtful reading'], excess: true },
    why: 'as a continuous leak, from when it has grown to a tenth of the usual month',
  },
  'pressurised leak': {
    ...{ right: ['unexplained use', 'zone flow changed'], fair: ['doubtful reading'], excess: true },
    why: `it flows while something runs: by volume, or by the hour as more flow of the zones; ${JUMP}`,
  },
  'broken head': {
    ...{ right: ['unexplained use', 'zone flow changed'], fair: ['doubtful reading'], excess: true },
    why: `more flow of one zone: by volume, or by the hour as that zone's; ${JUMP}`,
  },
  clogged: {
    ...{ right: ['zone flow changed', 'not delivering'], fair: [], excess: false },
    why: "less flow of one zone: by the hour as that zone's, by volume when much is missing",
  },
  'valve not opening': {
    ...{ right: ['not delivering', 'zone flow changed'], fair: [], excess: false },
    why: 'one zone gives nothing: water is missing, or the zone has changed by all of its flow',
  },
  'stuck valve': {
    ...{ right: ['unexplained use', 'steady flow', 'off-schedule run'], fair: ['doubtful reading', 'zone flow changed'], excess: true },
    why: `a zone runs on: by volume, as flow that never stops, as water outside its window; other zones' hours carry its flow; ${JUMP}`,
  },
  'unrecorded run': {
    ...{ right: ['unexplained use', 'off-schedule run'], fair: ['doubtful reading', 'zone flow changed'], excess: true },
    why: `minutes that nobody wrote down: by volume, or outside the windows; longer minutes look like more flow in an hour; ${JUMP}`,
  },
  'controller off': {
    ...{ right: ['not delivering'], fair: ['doubtful reading', 'zone flow changed'], excess: false },
    why: 'nothing comes though it is programmed; the register stands still meanwhile, and no zone shows its flow',
  },
  'wrong recorded flows': {
    ...{ right: ['flow to be tested'], fair: [], excess: false },
    why: 'metered has always been off by the same share: the flows are to be tested, and no leak is to be looked for',
  },
  misread: {
    ...{ right: ['doubtful reading'], fair: ['unexplained use', 'not delivering'], excess: false },
    why: 'the volumes before and after it are wrong as well: wrong data is one of the causes of unexplained use',
  },
  'stuck register': {
    ...{ right: ['doubtful reading', 'not delivering'], fair: [], excess: false },
    why: 'a register that stands still, or no water: from outside they look alike',
  },
  'stuck feed': {
    ...{ right: ['doubtful reading', 'not delivering', 'stale'], fair: ['zone flow changed'], excess: false },
    why: 'as a stuck register; a feed that tells nothing may also be called stale',
  },
  'missed pause': { right: ['watered in rain'], fair: [], excess: false, why: 'programs ran though rain covered the need' },
  rollover: { right: [], fair: [], excess: false, why: 'not a fault: no finding is right' },
  swap: { right: [], fair: [], excess: false, why: 'not a fault: no finding is right' },
};

/** What is not a fault, or says nothing of the alarms above: a property that has only these is healthy. */
export const HARMLESS = ['rollover', 'swap', 'missed pause'];

/** The family of a kind of fault; a kind that is not in the table is an error, so that no truth is silently left out. */
export function familyOf(kind) {
  const family = FAMILIES[kind];
  if (!family) throw new Error(`truth.csv has a kind "${kind}" that scoring/families.mjs does not know.`);
  return family;
}
