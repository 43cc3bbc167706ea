import tseslint from 'typescript-eslint';
import hooks from 'eslint-plugin-react-hooks';
import jsdoc from 'eslint-plugin-jsdoc';
import { house } from './.ci/house-rules.mjs';

// A later block's 'no-restricted-syntax' REPLACES an earlier one's, so each list is built from these.
const everywhere = [
  { selector: 'ExportAllDeclaration', message: 'No barrels: import the file that defines the thing.' },
  {
    selector: 'CallExpression[callee.object.name=/^(it|test|describe)$/][callee.property.name=/^(only|skip)$/]',
    message: 'A test is run or removed.',
  },
];
// A session setting outlives the request on a pooled connection, and SET takes no parameters, so that people write values into it.
const SESSION = 'No SET: it outlives the transaction, or is built by hand. Use set_config($1, $2, true) inside a transaction.';
const sessions = [
  { selector: "CallExpression[callee.property.name='query'][arguments.0.value=/^\\s*(set|reset|discard)\\b/i]", message: SESSION },
  {
    selector:
      "CallExpression[callee.property.name='query'] > TemplateLiteral.arguments > TemplateElement:first-child[value.raw=/^\\s*(set|reset|discard)\\b/i]",
    message: SESSION,
  },
  {
    selector: 'TemplateElement[value.raw=/set_config\\([^)]*,\\s*false\\s*\\)/i], Literal[value=/set_config\\([^)]*,\\s*false\\s*\\)/i]',
    message: SESSION,
  },
];
const OUTSIDE = 'A feature asks the database inside its organization transaction only: take `tx` first and use tx.of(Row) or tx.query(…).';
const outside = [
  {
    selector:
      'CallExpression[callee.object.name=/[sS]ource$/][callee.property.name=/^(query|transaction|createQueryRunner|createQueryBuilder|getRepository)$/]',
    message: OUTSIDE,
  },
  {
    selector:
      'CallExpression[callee.object.property.name=/[sS]ource$/][callee.property.name=/^(query|transaction|createQueryRunner|createQueryBuilder|getRepository)$/]',
    message: OUTSIDE,
  },
  { selector: "ImportDeclaration[source.value='pg'][importKind!='type']", message: OUTSIDE },
];
const rows = [
  {
    selector: 'Decorator[expression.callee.name=/^(OneToMany|ManyToMany)$/]',
    message: 'Rows point up only: ManyToOne. Ask a repository for the children.',
  },
  {
    selector: 'Decorator[expression.callee.name=/^(Field|ObjectType|InputType)$/]',
    message: 'A row is not a GraphQL type: write a *.type.ts.',
  },
  {
    selector: "Decorator Property[key.name='eager'][value.value=true]",
    message: 'No eager relations: say what you read in the repository.',
  },
];
const pure = [
  { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: 'Take the instant as a parameter.' },
  { selector: "ThrowStatement > NewExpression[callee.name='Error']", message: 'Throw a DomainError with a code.' },
];
const COLOUR = '/^(#([0-9a-f]{3,4}|[0-9a-f]{6}|[0-9a-f]{8})$|(rgb|hsl|hwb|lab|lch|oklab|oklch)a?\\()/i';
const colours = [
  {
    selector: `Literal[value=${COLOUR}], TemplateElement[value.raw=${COLOUR}]`,
    message: 'No literal colours: name one in libs/showing/src/colours and in tokens.css, so that every theme has it.',
  },
];
const syntax = (...lists) => ['error', ...lists.flat()];
const unit = '^[\\s\\S]*\\[[^\\]]+\\][\\s\\S]*$'; // somewhere in the text: a unit in square brackets

export default tseslint.config(
  { ignores: ['**/dist/**', '**/dist-types/**', '**/__generated__/**', '**/.data/**', 'coverage/**'] },
  {
    files: ['**/*.{ts,tsx}'],
    languageOptions: { parser: tseslint.parser, parserOptions: { experimentalDecorators: true, emitDecoratorMetadata: true } },
    plugins: { '@typescript-eslint': tseslint.plugin, house },
    rules: {
      'max-lines': ['error', { max: 300 }],
      'max-lines-per-function': ['error', { max: 60, skipComments: true, skipBlankLines: true }],
      'max-depth': ['error', 3],
      complexity: ['error', 10],
      '@typescript-eslint/max-params': ['error', { max: 5 }],
      '@typescript-eslint/consistent-type-imports': 'error',
      'no-restricted-exports': ['error', { restrictDefaultExports: { direct: true } }],
      'no-restricted-syntax': syntax(everywhere),
      'house/telling-name': 'error',
    },
  },
  { files: ['apps/api/src/**/*.ts'], rules: { 'no-restricted-syntax': syntax(everywhere, sessions) } },
  { files: ['apps/api/src/features/**/*.ts'], rules: { 'no-restricted-syntax': syntax(everywhere, sessions, outside) } },
  { files: ['apps/api/src/**/*.entity.ts'], rules: { 'no-restricted-syntax': syntax(everywhere, sessions, outside, rows) } },
  { files: ['apps/api/src/**/*.{resolver,controller}.ts'], rules: { 'house/named-permission': 'error' } },
  { files: ['apps/api/src/**/*.repository.ts'], rules: { 'house/few-methods': 'error' } },
  {
    files: ['apps/web/src/**/*.{ts,tsx}'],
    plugins: { 'react-hooks': hooks },
    rules: {
      'no-restricted-syntax': syntax(everywhere, colours),
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              regex: '__generated__/index(\\.js)?$',
              message:
                'Import graphql from gql.js: only there does the build put each document in its place, instead of all in every page.',
            },
          ],
        },
      ],
      'react-hooks/rules-of-hooks': 'error',
      'react-hooks/exhaustive-deps': 'error',
    },
  },
  {
    files: ['libs/*/src/**/*.ts'],
    plugins: { jsdoc },
    rules: {
      'jsdoc/require-jsdoc': [
        'error',
        {
          publicOnly: true,
          require: { FunctionDeclaration: true, ArrowFunctionExpression: true },
          contexts: ['TSTypeAliasDeclaration', 'TSInterfaceDeclaration'],
        },
      ],
      'jsdoc/require-param': 'error',
      'jsdoc/require-returns': 'error',
      'jsdoc/check-param-names': 'error',
      'jsdoc/check-tag-names': ['error', { definedTags: ['source', 'domain'] }],
      'jsdoc/match-description': ['error', { mainDescription: '^[\\s\\S]*$', tags: { param: unit, returns: unit } }],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Take a random source as a parameter.' },
        { object: 'Date', property: 'now', message: 'Take the instant as a parameter.' },
      ],
      'no-restricted-syntax': syntax(everywhere, pure),
      'house/few-exports': 'error',
    },
  },
  // What only shows numbers has words and shapes, not quantities: its parameters bear no units.
  {
    files: ['libs/showing/src/**/*.ts'],
    rules: {
      ...Object.fromEntries(
        ['require-jsdoc', 'require-param', 'require-returns', 'check-param-names', 'match-description'].map((rule) => [
          `jsdoc/${rule}`,
          'off',
        ]),
      ),
      'house/few-exports': ['error', { most: 12 }],
    },
  },
  // A file of units is one quantity with a conversion to and from every unit that people use.
  { files: ['libs/units/src/**/*.ts'], rules: { 'house/few-exports': ['error', { most: 10 }] } },
  // The inner loop of a balance or a replay reads better in one piece.
  {
    files: ['libs/*/src/**/*.kernel.ts'],
    rules: { 'max-lines-per-function': ['error', { max: 150, skipComments: true, skipBlankLines: true }], complexity: ['error', 25] },
  },
  // A describe block is the room of its tests, not a function; each test stays short because its file does.
  { files: ['tests/**/*.spec.{ts,tsx}'], rules: { 'max-lines': ['error', { max: 500 }], 'max-lines-per-function': 'off' } },
  // These are called by name of their file: the tools take the default export.
  {
    files: [
      '*.config.ts',
      'tests/{mutation,prove/phones}/vitest.config.ts',
      'tests/mutation/few-runs.ts',
      'apps/web/{vite.config,codegen}.ts',
      'tests/support/*.global.ts',
    ],
    rules: { 'no-restricted-exports': 'off' },
  },
);
