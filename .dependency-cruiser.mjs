/** The house's plan: arrows go down only. Each rule says what to do when it fires. */

/** Features from the ground up. A feature may import those to its left, never those to its right. */
const apiFeatures = [
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

const upward = apiFeatures.slice(0, -1).map((feature, rank) => ({
  name: `api-${feature}-looks-up`,
  comment: `'${feature}' is below the feature it imports. Move the shared idea down, or raise an event.`,
  severity: 'error',
  from: { path: `^apps/api/src/features/${feature}/` },
  to: { path: `^apps/api/src/features/(${apiFeatures.slice(rank + 1).join('|')})/` },
}));

/** @type {import('dependency-cruiser').IConfiguration} */
export default {
  forbidden: [
    {
      name: 'no-cycle',
      comment: 'Two files need each other: name the third thing they share, and let both import it.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'no-room-cycle',
      comment: 'Two folders need each other: they are one room, or one of them is misplaced.',
      severity: 'error',
      scope: 'folder',
      from: { path: '^(apps|libs)/' },
      to: { circular: true },
    },
    {
      name: 'apps-are-strangers',
      comment: 'web and api meet in schema.graphql only.',
      severity: 'error',
      from: { path: '^apps/([^/]+)/' },
      to: { path: '^apps/', pathNot: '^apps/$1/' },
    },
    {
      name: 'libs-are-pure',
      comment: 'A library computes. Pass it what it needs: it reaches no app, package, machine or network.',
      severity: 'error',
      from: { path: '^libs/' },
      to: { pathNot: '^libs/' },
    },
    {
      name: 'units-at-the-bottom',
      comment: 'units imports nothing.',
      severity: 'error',
      from: { path: '^libs/units/' },
      to: { pathNot: '^libs/units/' },
    },
    {
      name: 'platform-knows-no-feature',
      comment: "Platform is the floor: take the feature's part as a parameter.",
      severity: 'error',
      from: { path: '^apps/api/src/platform/' },
      to: { path: '^apps/api/src/features/' },
    },
    ...upward,
    {
      name: 'feature-front-door',
      comment: 'From another feature import its *.service.ts, *.loader.ts, *.type.ts or *.event.ts only.',
      severity: 'error',
      from: { path: '^apps/api/src/features/([^/]+)/' },
      to: { path: '^apps/api/src/features/', pathNot: ['^apps/api/src/features/$1/', '[.](service|loader|type|event|module)[.]ts$'] },
    },
    {
      name: 'rows-stay-behind-the-repository',
      comment: 'Only *.repository.ts, *.entity.ts and migrations speak to TypeORM.',
      severity: 'error',
      from: { path: '^apps/api/src/features/', pathNot: '[.](repository|entity|module)[.]ts$' },
      to: { path: 'node_modules/(typeorm|@nestjs/typeorm)/' },
    },
    {
      name: 'web-features-are-strangers',
      comment: 'Compose two features in app/routes, or move the shared part to ui/.',
      severity: 'error',
      from: { path: '^apps/web/src/features/([^/]+)/' },
      to: { path: '^apps/web/src/features/', pathNot: '^apps/web/src/features/$1/' },
    },
    {
      name: 'ui-knows-no-feature',
      comment: 'ui/ draws; it is handed its words and numbers.',
      severity: 'error',
      from: { path: '^apps/web/src/(ui|offline|graphql)/' },
      to: { path: '^apps/web/src/(features|app)/' },
    },
    {
      name: 'nothing-leans-on-tests',
      comment: 'Move what is useful out of tests/.',
      severity: 'error',
      from: { path: '^(apps|libs)/' },
      to: { path: '^tests/' },
    },
    {
      name: 'no-stranger-in-the-house',
      comment: 'Nobody imports this file. Use it or remove it.',
      severity: 'error',
      from: { orphan: true, pathNot: ['[.]d[.]ts$', '(^|/)main[.]tsx?$', '(^|/)([^/]+[.]config|codegen)[.]ts$', '^tests/'] },
      to: {},
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^|/)(dist|dist-types|__generated__|node_modules/[.]cache)/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.base.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['rillbook-source', 'import', 'node', 'default', 'types'] },
  },
};
