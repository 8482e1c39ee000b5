import officeAddins from 'eslint-plugin-office-addins';
import tseslint from 'typescript-eslint';

/** What the plugin recommends of its own rules: a load before a read, a sync between them, none in loops. */
const officeRules = Object.fromEntries(
  officeAddins.configs.recommended
    .flatMap(({ rules = {} }) => Object.entries(rules))
    .filter(([name]) => name.startsWith('office-addins/')),
);

export default tseslint.config(
  { ignores: ['node_modules/', 'dist/', 'coverage/'] },
  ...tseslint.configs.recommended,
  {
    rules: {
      // Taking a key out of an object by naming it beside the rest is the plain way to do so.
      '@typescript-eslint/no-unused-vars': ['error', { ignoreRestSiblings: true }],
      'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
      '@typescript-eslint/consistent-type-definitions': ['error', 'type'],
      '@typescript-eslint/consistent-type-imports': 'error',
      'no-restricted-exports': ['error', { restrictDefaultExports: { direct: true } }],
    },
  },
  {
    // The generator of the function metadata reads only plain `any` and `any[][]`.
    files: ['functions/**/*.ts'],
    rules: { '@typescript-eslint/no-explicit-any': 'off' },
  },
  {
    files: ['taskpane/host/excel/*.ts'],
    plugins: { 'office-addins': officeAddins },
    rules: officeRules,
  },
  {
    // These tools take nothing but a default export.
    files: [
      '*.config.{js,ts}',
      '*.config.*.ts',
      'tests/house/closingLine.ts',
      'tests/house/jsdomEnvironment.ts',
    ],
    rules: { 'no-restricted-exports': 'off' },
  },
);
