import tseslint from 'typescript-eslint';
import jsdoc from 'eslint-plugin-jsdoc';

// A later block's 'no-restricted-syntax' REPLACES an earlier one's, so each list is built from these.
const everywhere = [
  { selector: 'ExportAllDeclaration', message: 'No barrels: import the file that defines the thing.' },
  { selector: 'CallExpression[callee.object.name=/^(it|test|describe)$/][callee.property.name=/^(only|skip)$/]', message: 'A test is run or removed.' },
];
const rows = [
  { selector: 'Decorator[expression.callee.name=/^(OneToMany|ManyToMany)$/]', message: 'Rows point up only: ManyToOne. Ask a repository for the children.' },
  { selector: 'Decorator[expression.callee.name=/^(Field|ObjectType|InputType)$/]', message: 'A row is not a GraphQL type: write a *.type.ts.' },
  { selector: "Decorator Property[key.name='eager'][value.value=true]", message: 'No eager relations: say what you read in the repository.' },
];
const pure = [
  { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: 'Take the instant as a parameter.' },
  { selector: "ThrowStatement > NewExpression[callee.name='Error']", message: 'Throw a DomainError with a code.' },
];
const unit = '^[\\s\\S]*\\[[^\\]]+\\][\\s\\S]*$'; // somewhere in the text: a unit in square brackets

export default tseslint.config(
  {
    files: ['**/*.{ts,tsx}'],
    languageOptions: { parser: tseslint.parser, parserOptions: { experimentalDecorators: true, emitDecoratorMetadata: true } },
    plugins: { '@typescript-eslint': tseslint.plugin },
    rules: {
      'max-lines': ['error', { max: 300 }],
      'max-lines-per-function': ['error', { max: 60, skipComments: true, skipBlankLines: true }],
      'max-depth': ['error', 3],
      complexity: ['error', 10],
      '@typescript-eslint/max-params': ['error', { max: 5 }],
      '@typescript-eslint/consistent-type-imports': 'error',
      'no-restricted-exports': ['error', { restrictDefaultExports: { direct: true } }],
      'no-restricted-syntax': ['error', ...everywhere],
    },
  },
  { files: ['**/*.entity.ts'], rules: { 'no-restricted-syntax': ['error', ...everywhere, ...rows] } },
  {
    files: ['libs/*/src/**/*.ts'],
    plugins: { jsdoc },
    rules: {
      'jsdoc/require-jsdoc': ['error', { publicOnly: true, require: { FunctionDeclaration: true, ArrowFunctionExpression: true }, contexts: ['TSTypeAliasDeclaration', 'TSInterfaceDeclaration'] }],
      'jsdoc/require-param': 'error',
      'jsdoc/require-returns': 'error',
      'jsdoc/check-param-names': 'error',
      'jsdoc/check-tag-names': ['error', { definedTags: ['source', 'domain'] }],
      'jsdoc/match-description': ['error', { mainDescription: '^[\\s\\S]*$', tags: { param: unit, returns: unit } }],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: 'Take a random source as a parameter.' }, { object: 'Date', property: 'now', message: 'Take the instant as a parameter.' }],
      'no-restricted-syntax': ['error', ...everywhere, ...pure],
    },
  },
);
