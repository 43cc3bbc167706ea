import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';

const top = path.resolve(import.meta.dirname, '../..');

/** The features, from the ground up. */
const FEATURES = [
  'portfolio',
  'weather',
  'metering',
  'settings',
  'accounts',
  'findings',
  'plans',
  'fieldwork',
  'phones',
  'overview',
  'reports',
  'exchange',
];
const features = 'apps/api/src/features';

/** A small house in which each rule is broken once: files by path, with what they import. */
const HOUSE: Readonly<Record<string, readonly string[]>> = {
  // A cycle of two files, and one of two rooms whose files have none.
  'apps/web/src/ui/forms/hen.ts': ['./egg.js'],
  'apps/web/src/ui/forms/egg.ts': ['./hen.js'],
  'apps/web/src/ui/left/a.ts': ['../right/b.js'],
  'apps/web/src/ui/right/b.ts': [],
  'apps/web/src/ui/right/c.ts': ['../left/d.js'],
  'apps/web/src/ui/left/d.ts': [],
  // Apps, libraries and tests.
  'apps/web/src/features/overview/Api.ts': ['../../../../api/src/platform/floor.js'],
  'apps/api/src/platform/floor.ts': [],
  'libs/metering/src/reach.ts': ['node:fs', '../../units/src/length.js'],
  'libs/units/src/length.ts': ['../../agronomy/src/soil.js'],
  'libs/agronomy/src/soil.ts': [],
  'libs/metering/src/lean.ts': ['../../../tests/support/builder.js'],
  'tests/support/builder.ts': [],
  // The floor, the order of features, and their front doors.
  'apps/api/src/platform/knows.ts': [`../features/portfolio/thing.service.js`],
  ...Object.fromEntries(['portfolio', 'weather', 'exchange'].map((feature) => [`${features}/${feature}/thing.service.ts`, []])),
  ...Object.fromEntries(FEATURES.slice(0, -1).map((feature) => [`${features}/${feature}/looks-up.ts`, ['../exchange/thing.service.js']])),
  [`${features}/accounts/back-door.ts`]: ['../weather/looks-up.js', '../weather/thing.service.js'],
  [`${features}/portfolio/speaks.service.ts`]: ['typeorm'],
  [`${features}/portfolio/speaks.repository.ts`]: ['typeorm'],
  // The web.
  'apps/web/src/features/findings/Finding.ts': ['../overview/Api.js'],
  'apps/web/src/ui/gauge.ts': ['../features/findings/Finding.js'],
  // Nobody needs this one.
  'apps/api/src/platform/alone.ts': [],
};

/** What must be found, and nothing else: rule and where it starts. */
const EXPECTED = [
  ['no-cycle', 'apps/web/src/ui/forms/egg.ts'],
  ['no-room-cycle', 'apps/web/src/ui/left'],
  ['no-room-cycle', 'apps/web/src/ui/right'],
  ['apps-are-strangers', 'apps/web/src/features/overview/Api.ts'],
  ['libs-are-pure', 'libs/metering/src/lean.ts'],
  ['libs-are-pure', 'libs/metering/src/reach.ts'],
  ['units-at-the-bottom', 'libs/units/src/length.ts'],
  ['nothing-leans-on-tests', 'libs/metering/src/lean.ts'],
  ['platform-knows-no-feature', 'apps/api/src/platform/knows.ts'],
  ...FEATURES.slice(0, -1).map((feature) => [`api-${feature}-looks-up`, `${features}/${feature}/looks-up.ts`]),
  ['feature-front-door', `${features}/accounts/back-door.ts`],
  ['rows-stay-behind-the-repository', `${features}/portfolio/speaks.service.ts`],
  ['web-features-are-strangers', 'apps/web/src/features/findings/Finding.ts'],
  ['ui-knows-no-feature', 'apps/web/src/ui/gauge.ts'],
  ['no-stranger-in-the-house', 'apps/api/src/platform/alone.ts'],
];

interface Violation {
  readonly from: string;
  readonly rule: { readonly name: string };
}

let house: string;

function build(file: string, imports: readonly string[]): void {
  mkdirSync(path.dirname(path.join(house, file)), { recursive: true });
  writeFileSync(
    path.join(house, file),
    `${imports.map((from, n) => `import * as i${n} from '${from}';\nconsole.log(i${n});`).join('\n')}\nexport const here = 1;\n`,
  );
}

beforeAll(() => {
  house = mkdtempSync(path.join(tmpdir(), 'rillbook-house-'));
  for (const [file, imports] of Object.entries(HOUSE)) build(file, imports);
  for (const file of ['.dependency-cruiser.mjs', 'tsconfig.base.json']) copyFileSync(path.join(top, file), path.join(house, file));
  symlinkSync(path.join(top, 'node_modules'), path.join(house, 'node_modules'), 'junction');
});
afterAll(() => rmSync(house, { recursive: true, force: true }));

/** Cruises a house with the house's own rules. */
function cruise(): Violation[] {
  const { stdout, stderr } = spawnSync(
    process.execPath,
    [
      path.join(top, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs'),
      'apps',
      'libs',
      'tests',
      '--config',
      '.dependency-cruiser.mjs',
      '--output-type',
      'json',
      '--preserve-symlinks',
    ],
    { cwd: house, encoding: 'utf8', maxBuffer: 64 << 20 },
  );
  if (!stdout) throw new Error(stderr);
  return (JSON.parse(stdout) as { summary: { violations: Violation[] } }).summary.violations;
}

it('each rule of the arrows answers its breach, and nothing else is found', () => {
  const found = cruise().map(({ rule, from }) => `${rule.name} ${from}`);
  expect([...new Set(found)].sort()).toEqual(EXPECTED.map(([rule, from]) => `${rule} ${from}`).sort());
});

it('every rule of the configuration has its breach here, and says what to do', async () => {
  const { default: config } = (await import('../../.dependency-cruiser.mjs' as string)) as {
    default: { forbidden: { name: string; comment?: string; severity: string }[] };
  };
  const tried = new Set(EXPECTED.map(([rule]) => rule));
  expect(config.forbidden.filter((rule) => !tried.has(rule.name)).map((rule) => rule.name)).toEqual([]);
  for (const { name, comment, severity } of config.forbidden) expect([name, severity, Boolean(comment)]).toEqual([name, 'error', true]);
});
