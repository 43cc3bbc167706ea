// Kinds of sites of other worlds: how each is read, what is known of its timer, what its dial is like. None of it is shared with ../world.

/** Gallons of a unit; NIST SP 811, appendix B. */
export const GALLONS = { CCF: 748.0519, HCF: 748.0519, kgal: 1000, gal: 1, ft3: 7.480519, m3: 264.172052 };

const dial = (unit, resolution, digits, multiplier = 1) => ({ unit, resolution, digits, multiplier });

/**
 * `every` days between readings, `bills` between bills, `feed` minutes of a step from `feedFrom` (share of the time) on. `settings`: known, late
 * (written down months after the first reading), never, weather. `zones` how many, `area` of each [ft²]. `flow`: whether zones' flows are on record.
 */
export const STYLES = {
  'weekly reads': { every: [6, 8], dial: dial('gal', 10, 6) },
  'monthly reads, whole CCF': { every: [27, 36], dial: dial('CCF', 1, 4), area: [4000, 14_000] },
  'bimonthly reads': { every: [55, 66], dial: dial('kgal', 0.1, 5) },
  'quarterly bills': { bills: [88, 95], dial: dial('CCF', 1, 5), area: [3000, 9000] },
  'monthly bills': { bills: [28, 33], dial: dial('HCF', 1, 5), area: [3000, 9000] },
  'bills and reads': { every: [26, 40], bills: [58, 64], dial: dial('m3', 0.1, 4) },
  'small household': { every: [28, 33], dial: dial('gal', 1, 6), zones: [2, 4], area: [200, 900] },
  'mixed, indoor stated': { every: [28, 34], dial: dial('gal', 1, 7), indoor: 'stated' },
  'mixed, indoor not stated': { every: [28, 34], dial: dial('ft3', 1, 6), indoor: 'not stated' },
  'smart timer': { every: [28, 34], dial: dial('kgal', 0.01, 5), settings: 'weather' },
  'settings late': { every: [28, 34], dial: dial('CCF', 0.01, 5), settings: 'late' },
  'settings never': { every: [28, 34], dial: dial('gal', 10, 6, 10), settings: 'never' },
  'flows not recorded': { every: [28, 34], dial: dial('kgal', 0.1, 4), flow: 'none' },
  'by precipitation rate': { every: [28, 34], dial: dial('CCF', 0.1, 5), flow: 'rate' },
  'hourly from midway': { every: [28, 34], feed: 60, feedFrom: 0.45, dial: dial('gal', 1, 7) },
  'hourly alone': { feed: 60, feedFrom: 0, dial: dial('gal', 10, 7) },
  'hourly, coarse': { feed: 60, feedFrom: 0, dial: dial('CCF', 0.1, 5) },
  '15 minutes': { feed: 15, feedFrom: 0.6, every: [28, 34], dial: dial('ft3', 1, 6) },
};

/** What goes wrong, with its weight; nothing does on the rest. */
export const TROUBLES = [
  ['none', 55],
  ['continuous leak', 14],
  ['leak from the first day', 4],
  ['broken head', 9],
  ['unrecorded run', 9],
  ['controller off', 4],
  ['misread', 5],
];
