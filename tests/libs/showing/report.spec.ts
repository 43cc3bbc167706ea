import { dateFormats } from '@rillbook/showing/formats/dates.js';
import type { GivenMonth, GivenProperty, ReportInput } from '@rillbook/showing/report/report-input.js';
import type { ReportSection } from '@rillbook/showing/report/report-model.js';
import { restoreReport } from '@rillbook/showing/report/restore-report.js';
import { writeReport } from '@rillbook/showing/report/write-report.js';
import { expect, it } from 'vitest';
import { inventedReport } from '../../support/invented-report.mjs';

const volume = (litres: number | null, reason: string | null = null) => ({
  litres,
  sdLitres: litres && litres * 0.01,
  estimatedShare: 0,
  reason,
});
const gap = (high: number | null, low: number | null) => {
  if (high === null || low === null) return { litres: null, sdLitres: null, money: null };
  return { litres: high - low, sdLitres: 1000, money: (high - low) * 0.002 };
};

/** July 2026 in litres; a day may be the last that is known. */
function july(litres: Partial<Record<'allowed' | 'needed' | 'programmed' | 'metered', number | null>>, days = 31): GivenMonth {
  const { allowed = 100_000, needed = 100_000, programmed = 100_000, metered = 100_000 } = litres;
  return {
    month: '2026-07',
    daysCovered: days,
    daysInMonth: 31,
    through: `2026-07-${days}`,
    allowed: volume(allowed),
    needed: volume(needed),
    programmed: volume(programmed, 'settings-not-known'),
    metered: volume(metered, 'readings-missing'),
    landscapeGap: gap(needed, allowed),
    settingsGap: gap(programmed, needed),
    unexplainedGap: gap(metered, programmed),
    aboveNeed: gap(metered, needed),
    aboveAllowed: gap(metered, allowed),
    etoMm: 200,
    rainMm: 0,
    zones: [
      { zoneId: 'lawn', neededLitres: 70_000, isCounted: true },
      { zoneId: 'pots', neededLitres: 500, isCounted: false },
    ],
  };
}

const property = (name: string, month: GivenMonth, more: Partial<GivenProperty> = {}): GivenProperty => ({
  id: name,
  name,
  where: '',
  months: [month],
  firstWork: null,
  pricePerLitre: 0.002,
  findings: [],
  work: [],
  allowance: null,
  zones: [],
  ...more,
});

const written = (properties: readonly GivenProperty[], more: Partial<ReportInput> = {}) =>
  writeReport({ ...inventedReport(0), units: 'metric', period: { from: '2026-07', until: '2026-07' }, properties, ...more });
const page = (given: GivenProperty, more: Partial<ReportInput> = {}) => written([given], more).pages[0]!;

it('says why: what was set, what no program explains, what the plants need beyond what is allowed', () => {
  expect(page(property('Alder', july({ programmed: 150_000, metered: 190_000, allowed: 60_000 }))).why).toBe(
    'The controllers were set to give 50.0 m³ more than the plants needed. Another 40.0 m³ ran that no program explains: a leak, a broken head, or a run that is not on record. With this weather the plants themselves needed 40.0 m³ more than is allowed.',
  );
  expect(page(property('Alder', july({ metered: 100_500 }))).why).toBe(
    'The controllers were set to about what the plants needed. The meter shows no sign of a leak: it fits what was programmed.',
  );
  expect(page(property('Alder', july({ programmed: null }))).why).toBe(
    'Why cannot be told: what was programmed is not known, the controller’s settings have not been read.',
  );
});

it('does not say “about” of a gap that a reader sees is large: it is told with its size, and that the figures may be off by as much', () => {
  const unsure = (month: GivenMonth): GivenMonth => {
    const wide = { sdLitres: 40_000 };
    return { ...month, aboveNeed: { ...month.aboveNeed, ...wide }, settingsGap: { ...month.settingsGap, ...wide } };
  };
  const low = property('Alder', unsure(july({ programmed: 69_000, metered: 69_000 })));
  expect(page(low).verdict).toBe(
    'In July 2026, Alder took 69.0 m³, less than the 100.0 m³ that its plants needed with the weather that came, but not by more than these figures may be off.',
  );
  expect(page(low).why).toContain(
    'The controllers were set to give 31.0 m³ less than the plants needed, which is no more than these figures may be off.',
  );
  expect(page(low, { language: 'es' }).verdict).toContain('menos que los 100.0 m³ que sus plantas necesitaban');
  const high = property('Birch', unsure(july({ programmed: 120_000, metered: 120_000 })));
  expect(page(high).verdict).toContain('took 120.0 m³, more than the 100.0 m³ that its plants needed');
  // A tenth of the need is still about the same.
  const near = property('Cedar', unsure(july({ programmed: 110_000, metered: 110_000 })));
  expect(page(near).verdict).toContain('about what its plants needed');
  expect(written([low, near]).all!.why).toBe(
    'About what its plants needed: Cedar. Too little is known to say whether it was more or less than needed: Alder.',
  );
});

it('says up to which day a period is known whose last month is not over', () => {
  expect(page(property('Alder', july({ metered: 190_000 }, 20))).verdict).toBe(
    'In July 2026, up to Monday 20 July, Alder took 190.0 m³: 90.0 m³ (90%) more than its plants needed with the weather that came, about $180.',
  );
});

it('of one property among two speaks of one', () => {
  const two = [property('Alder', july({ metered: 150_000 })), property('Birch', july({ metered: null }))];
  expect(written(two).verdict).toBe(
    'In July 2026, one of your 2 properties took 150.0 m³; its plants needed 100.0 m³. The other one is not known yet.',
  );
  expect(written(two, { language: 'es' }).verdict).toMatch(/una de sus 2 propiedades tomó .* De la otra todavía no se sabe\.$/);
  const both = [property('Alder', july({ metered: 150_000 })), property('Birch', july({ metered: 150_000 }))];
  expect(written(both).all!.why).toBe('More than their plants needed: Alder (50.0 m³), Birch (50.0 m³).');
});

it('of several properties says which is off: a thirsty one never hides a drowned one', () => {
  const { verdict, all } = written([
    property('Alder', july({ metered: 150_000 })),
    property('Birch', july({ metered: 50_000 })),
    property('Cedar', july({})),
    property('Dogwood', july({ metered: null })),
  ]);
  expect(verdict).toBe('In July 2026, 3 of your 4 properties took 300.0 m³; their plants needed 300.0 m³. The other one is not known yet.');
  expect(all!.why).toBe(
    'More than its plants needed: Alder (50.0 m³). Less than its plants needed: Birch (50.0 m³). About what its plants needed: Cedar.',
  );
  expect(all!.gauge).toBeNull();
  expect(all!.table.rows.map(({ label, cells }) => [label, cells[0]!.shown])).toEqual([
    ['Alder', '150.0'],
    ['Birch', '50.0'],
    ['Cedar', '100.0'],
    ['Dogwood', '–'],
    ['together', '–'],
  ]);
  expect(all!.table.notes).toEqual([
    'Cedar: the difference is smaller than what can be measured.',
    'Dogwood, together: meter readings are missing.',
  ]);
});

it('states what an allowance is made of, and counts a zone that is not metered apart', () => {
  const zones = [
    { id: 'lawn', name: 'Lawn', areaM2: 300, plantFactor: 0.8, plants: 'turf cool-season', method: 'rotor' },
    { id: 'pots', name: 'Pots', areaM2: 5, plantFactor: 0.8, plants: 'annuals', method: 'hand' },
  ];
  const allowance = { from: 'ordinance', etaf: 0.45, specialLandscapeAreaM2: 40 } as const;
  const [budget, hydrozones] = page(property('Alder', july({}), { zones, allowance })).ordinance!.tables;
  expect(budget!.rows.map(({ cells }) => cells[0]!.shown)).toEqual(['0.45', '305', '40']);
  expect(hydrozones!.rows.map(({ label, cells }) => [label, ...cells.map(({ shown }) => shown)])).toEqual([
    ['Lawn · cool-season turf · rotor', '300', '0.80', '70.0'],
    ['Pots · annuals · by hand · not metered', '5', '0.80', '0.5'],
    ['together, need of what is metered', '305', '0.80', '70.0'],
  ]);
});

it('names the zone of a finding, and tells a month’s water of it, or a year’s where seasons matter', () => {
  const finding = {
    id: 'f',
    state: 'open',
    zones: ['Lawn'],
    fromOn: '2026-08-02',
    untilOn: null,
    litres: 12_345,
    money: 24,
    isTooLittle: false,
    resolvedWith: null,
  };
  const said = (kind: string, language: 'en' | 'es' = 'en') =>
    page(property('Alder', july({}), { findings: [{ ...finding, kind, isTooLittle: kind === 'not delivering' }] }), {
      language,
    }).sections.find(({ id }) => id === 'recommended')!.lines[0]!.says;
  expect(said('steady flow')).toBe(
    'Look for the leak, the broken pipe or the valve that does not close: Lawn. Seen since Sunday 2 August. It would save about 12.3 m³, about $24 a month.',
  );
  // Water that did not come is no saving.
  expect(said('not delivering')).toBe('Check the valves and the controller: Lawn. Seen since Sunday 2 August.');
  expect(said('mixed water needs', 'es')).toBe(
    'Dar su propia zona a las plantas con distintas necesidades: Lawn. Visto desde el domingo 2 de agosto. Ahorraría unos 148 m³, unos $288 al año.',
  );
});

const aFinding = (kind: string, more: Partial<GivenProperty['findings'][number]> = {}) => ({
  id: kind,
  kind,
  state: 'open',
  zones: [],
  fromOn: '2026-07-02',
  untilOn: null,
  litres: 12_345,
  money: 24,
  isTooLittle: false,
  resolvedWith: null,
  ...more,
});
const lines = (given: GivenProperty, id: ReportSection['id'], more: Partial<ReportInput> = {}) =>
  page(given, more).sections.find((section) => section.id === id)!;

it('claims no saving where putting it right takes more water, and no price of what lacks', () => {
  const findings = [
    aFinding('not delivering', { isTooLittle: true }),
    aFinding('zone flow changed', { isTooLittle: true, zones: ['Lawn'] }),
    aFinding('under-programmed', { isTooLittle: true }),
  ];
  const given = property('Alder', july({}), { findings });
  const advice = lines(given, 'recommended').lines;
  expect(advice.map(({ says }) => says)).toEqual([
    'Check the valves and the controller.',
    'Give the thirsty zones their due.',
    'Look at the heads of the zone: Lawn.',
  ]);
  expect(advice.flatMap(({ figures }) => figures)).toEqual([]);
  const [first] = lines(given, 'found').lines;
  expect(first!.says).toBe('Less water came than was programmed (last seen at about 12.3 m³ too little a month). Still open.');
  expect(first!.figures.map(({ label }) => label)).toEqual(['Less water came than was programmed: too little, a month']);
});

it('a rate that was seen after the period says on which day, for it is not the period’s own', () => {
  const says = (untilOn: string | null, language: 'en' | 'es' = 'en') =>
    lines(property('Alder', july({}), { findings: [aFinding('over-programmed', { untilOn })] }), 'found', { language }).lines[0]!.says;
  expect(says('2026-09-23')).toBe(
    'The controller was set to give more than the plants needed (seen on Wed 23 Sep 2026 at about 12.3 m³, $24 a month). Still open.',
  );
  expect(says('2026-09-23', 'es')).toContain('(visto el mié 23 sept 2026 a unos 12.3 m³, $24 al mes)');
  expect(says('2026-07-31')).toContain('(last seen at about 12.3 m³, $24 a month)');
});

it('names the controller where the property has several', () => {
  const findings = ['A', 'B'].map((controller) => aFinding('over-programmed', { id: controller, controller, litres: null, money: null }));
  const given = property('Alder', july({}), { findings });
  expect(lines(given, 'found').lines.map(({ says }) => says)).toEqual(
    ['A', 'B'].map((name) => `The controller was set to give more than the plants needed (controller ${name}). Still open.`),
  );
  expect(lines(given, 'recommended', { language: 'es' }).lines[0]!.says).toContain('(programador A)');
});

it('names every zone of which a finding is one, in the order in which they are likely', () => {
  const findings = [aFinding('zone flow changed', { zones: ['Lawn', 'Beds'] })];
  const says = (id: 'found' | 'recommended', language: 'en' | 'es' = 'en') =>
    lines(property('Alder', july({}), { findings }), id, { language }).lines[0]!.says;
  expect(says('found')).toContain('The flow of a zone changed: Lawn or Beds (');
  expect(says('recommended')).toContain('Look at the heads of the zone: Lawn or Beds');
  expect(says('found', 'es')).toContain('Cambió el caudal de una zona: Lawn o Beds (');
  expect(says('recommended', 'es')).toContain('Revisar los aspersores de la zona: Lawn o Beds');
});

it('an order’s own full stop does not stand within the sentence', () => {
  const order = {
    id: 'w',
    kind: 'repair',
    state: 'waiting for approval',
    what: 'Replace the valve. ',
    doneOn: null,
    doneNote: null,
    cost: 1024,
    photos: [],
  };
  expect(lines(property('Alder', july({}), { work: [order] }), 'recommended').lines[0]!.says).toBe(
    '“Replace the valve”, cost about $1,024. It waits for your approval.',
  );
});

it('labels what was found by what it is', () => {
  const [leak] = lines(property('Alder', july({}), { findings: [aFinding('steady flow')] }), 'found').lines;
  expect(leak!.figures.map(({ label, shown }) => [label, shown])).toEqual([
    ['Water flowed without a stop, also at night: too much, a month', '12.3'],
    ['Water flowed without a stop, also at night: cost, a month', '$24'],
  ]);
});

it('asks for a test of the flows before it blames a leak, and never says that nothing was found beside water without a program', () => {
  const month = july({ programmed: 100_000, metered: 190_000 });
  const untested = property('Alder', month, { findings: [aFinding('flow to be tested')] });
  expect(page(untested).why).toContain(
    'The meter passed 90.0 m³ more than the programs would have given by the flows on record. Those flows do not fit the meter: they must be tested before a leak is looked for.',
  );
  expect(page(untested).why).not.toContain('a leak, a broken head');
  expect(lines(untested, 'found').lines.map(({ says }) => says)).toEqual(['The flows on record do not fit the meter. Still open.']);
  expect(lines(untested, 'recommended').lines.map(({ says }) => says)).toEqual(['Test the zones’ flows.']);
  expect(lines(property('Alder', month), 'found').none).toBe('The water that no program explains has not been traced to a cause yet.');
  expect(lines(property('Alder', july({})), 'found').none).toBe('Nothing was found that needs a person.');
});

it('says how large a leak would not show where the meter fits only widely', () => {
  const month = july({});
  const wide = { ...month, unexplainedGap: { litres: 500, sdLitres: 20_000, money: 1 } };
  expect(page(property('Alder', wide)).why).toContain('a leak of less than 25.6 m³ in this period would not show.');
});

it('writes a volume the same on the page of all, on its own page, in its months and in its year', () => {
  const small = property('Birch', july({ metered: 62_060, needed: 60_000, programmed: 60_000, allowed: 60_000 }));
  const large = property('Alder', july({ metered: 6_200_000, needed: 5_000_000 }));
  const model = written([large, small], { units: 'us' });
  const [ofAll, birch] = [model.all!.table.rows[1]!, model.pages[1]!];
  expect(ofAll.cells.map(({ shown }) => shown).slice(0, 3)).toEqual(['16,390', '15,850', '540']);
  expect(birch.figures.filter(({ id }) => ['metered', 'needed', 'aboveNeed'].includes(id)).map(({ shown }) => shown)).toEqual([
    '15,850',
    '16,390',
    '540',
  ]);
  expect(birch.verdict).toContain('16,390 gal');
  expect(birch.tables[1]!.rows[0]!.cells.map(({ shown }) => shown)).toContain('16,390');
  expect(birch.year.months.at(-1)!.drawn.alt).toContain('16,390');
});

it('puts no price on a difference that may be chance, and tells a need of nothing in words', () => {
  const chance = page(property('Alder', july({ metered: 99_500 }))).figures.find(({ id }) => id === 'aboveNeedMoney')!;
  expect(chance).toMatchObject({ value: null, reason: 'the difference is smaller than what can be measured.' });
  const winter = july({ allowed: 0, needed: 0, programmed: 0, metered: 500 });
  expect(page(property('Alder', winter), { units: 'metric' }).verdict).toBe(
    'In July 2026, Alder took 500 L. Its plants needed none; so little may be chance.',
  );
});

it('tells two findings of one kind apart by their day', () => {
  const findings = [aFinding('over allowance', { id: 'a' }), aFinding('over allowance', { id: 'b', fromOn: '2026-07-20' })];
  expect(lines(property('Alder', july({}), { findings }), 'found', { language: 'es' }).lines.map(({ says }) => says)).toEqual([
    'Se usó más de lo permitido, desde el jue 2 jul 2026 (visto por última vez a unos 12.3 m³, $24 al mes). Sigue pendiente.',
    'Se usó más de lo permitido, desde el lun 20 jul 2026 (visto por última vez a unos 12.3 m³, $24 al mes). Sigue pendiente.',
  ]);
});

it('gives the money of all savings as a figure of its files', () => {
  const invented = inventedReport(7);
  const properties = invented.properties.map((each) => ({ ...each, firstWork: '2025-06', pricePerLitre: 0.0015 }));
  const model = writeReport({ ...invented, properties, period: { from: '2026-04', until: '2026-06' } });
  const saved = model.all!.sections.find(({ id }) => id === 'saved')!.lines[0]!;
  expect(saved.figures.map(({ id }) => id)).toEqual(['summary.all.saved', 'summary.all.halfWidth', 'summary.all.savedMoney']);
  expect(saved.figures[2]!.value).not.toBeNull();
});

it('draws its gauge for a narrow screen too, with the same words', () => {
  const { svg, phoneSvg } = page(property('Alder', july({ metered: 190_000 }))).gauge;
  expect(svg).toContain('gauge-print');
  expect(phoneSvg).toContain('gauge-phone');
  expect(phoneSvg).toContain('190.0');
});

it('opens what was kept in an older shape, and adds nothing to it', () => {
  const model = writeReport(inventedReport(7));
  const { all, method: _, pages, ...rest } = model;
  const old = {
    ...rest,
    format: 1,
    summary: all!.table,
    pages: pages.map(({ why: _why, ordinance, ...each }) => ({
      ...each,
      ordinance: ordinance && { ...ordinance, table: ordinance.tables[0] },
    })),
  };
  const opened = restoreReport(JSON.stringify(old));
  expect(opened.format).toBe(2);
  expect(opened.all!.table.rows).toEqual(JSON.parse(JSON.stringify(all!.table.rows)));
  expect(opened.pages.map(({ verdict, why }) => [verdict, why])).toEqual(pages.map(({ verdict }) => [verdict, '']));
  expect(restoreReport(JSON.stringify(model))).toEqual(JSON.parse(JSON.stringify(model)));
});

it('writes a stretch of days as Spanish says it', () => {
  expect(dateFormats('es', 'UTC').days('2026-06-01', '2026-06-30')).toBe('1 al 30 de junio de 2026');
});

it('tells the months that a saving leaves out as stretches, not one by one', () => {
  const [given] = inventedReport(4).properties;
  const model = writeReport({
    ...inventedReport(4),
    language: 'en',
    period: { from: '2025-06', until: '2026-06' },
    properties: [{ ...given!, firstWork: '2025-11' }],
  });
  const lines = model.pages[0]!.sections.find(({ id }) => id === 'saved')!.lines;
  expect(lines.find(({ id }) => id === 'saved.leftOut')?.says).toBe(
    'Left out: June 2025 to November 2025 (not known in full, or the work was done then).',
  );
});

it('tells money of the water as it is written: both are of one size, in every figure and sentence', () => {
  const inputs = Array.from({ length: 40 }, (_, seed) => ({ ...inventedReport(seed), units: 'metric' as const }));
  const pages = inputs.flatMap((input) => writeReport(input).pages);
  const pairs = [
    ['aboveNeed', 'aboveNeedMoney'],
    ['saved', 'savedMoney'],
    ['halfWidth', 'halfWidthMoney'],
  ] as const;
  const told = pages.flatMap(({ figures }) =>
    pairs.flatMap(([volume, money]) => {
      const [water, amount] = [volume, money].map((id) => figures.find((figure) => figure.id === id));
      if (typeof water?.value !== 'number' || typeof amount?.value !== 'number') return [];
      return [{ litres: water.value * (water.unit === 'L' ? 1 : 1000), amount: amount.value }];
    }),
  );
  // The invented price of a litre is 0.0015.
  for (const { litres, amount } of told) expect(Math.abs(amount - litres * 0.0015)).toBeLessThanOrEqual(0.5 + 1e-9);
  expect(told.length).toBeGreaterThan(40);
});

it('names no money where months above and below were priced against each other', () => {
  const month = july({ metered: 130_000 });
  const against = { ...month, aboveNeed: { litres: 30_000, sdLitres: 100, money: -12 } };
  const [page] = written([property('Court', against)]).pages;
  const figure = page!.figures.find(({ id }) => id === 'aboveNeedMoney');
  expect([figure?.value, figure?.reason]).toEqual([null, 'months above and months below were priced differently: no one amount fits.']);
  expect(page!.verdict).not.toContain('$');
});

it('tells of a finding that was settled after the period how it stood when the period ended', () => {
  const finding = { id: 'f', kind: 'off-schedule run', state: 'resolved', zones: [], fromOn: '2026-07-02', untilOn: '2026-08-04' };
  const found = { ...finding, litres: null, money: null, isTooLittle: false, resolvedWith: 'A valve' };
  const says = (stateThen?: string): string | undefined =>
    written([property('Court', july({}), { findings: [{ ...found, ...(stateThen && { stateThen }) }] })])
      .pages[0]!.sections.find(({ id }) => id === 'found')
      ?.lines.at(0)?.says;
  expect(says('open')).toBe('Water ran outside the programmed times. Still open on Fri 31 Jul 2026; settled since.');
  expect(says('in work')).toBe('Water ran outside the programmed times. In work on Fri 31 Jul 2026; settled since.');
  expect(says()).toBe('Water ran outside the programmed times. Put right.');
});

it('tells an order in the report’s language where the product wrote it, and puts what somebody wrote in quotation marks', () => {
  const order = { id: 'w', kind: 'repair', state: 'done', doneOn: '2026-07-08', doneNote: null, cost: null, photos: [] };
  const wordsOf = { by: 'finding' as const, kind: 'steady flow', zones: ['Lawn'] };
  const work = [
    { ...order, what: 'Water flowed all night', wordsOf, doneNote: 'New diaphragm.' },
    { ...order, id: 'x', kind: 'adjust', what: 'Set as planned for July', wordsOf: { by: 'season' as const } },
    { ...order, id: 'y', what: 'Head by the gate.' },
    { ...order, id: 'z', kind: 'upgrade', state: 'waiting for approval', doneOn: null, what: 'Separate lines', wordsOf },
  ];
  const given = property('Alder', july({}), { work });
  expect(lines(given, 'done', { language: 'es' }).lines.map(({ says }) => says)).toEqual([
    'mié 8 jul 2026: reparado: El agua corrió sin parar, también de noche: Lawn. «New diaphragm»',
    'mié 8 jul 2026: programador ajustado: puesto según lo planeado para la temporada',
    'mié 8 jul 2026: reparado: «Head by the gate»',
  ]);
  expect(lines(given, 'recommended', { language: 'es' }).lines[0]!.says).toContain('Buscar la fuga');
  expect(written([given], { language: 'es' }).method.paragraphs.at(-1)).toContain('entre comillas');
  expect(written([property('Alder', july({}))]).method.paragraphs.join(' ')).not.toContain('quotation marks');
});
