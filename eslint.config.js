import js from '@eslint/js';
import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

/** What a pure layer may not touch: no clock and no randomness but a seeded generator passed in. */
const pure = {
  'no-restricted-properties': [
    'error',
    {
      object: 'Math',
      property: 'random',
      message: 'Pass in a seeded generator (num/seededRandom.ts).',
    },
    { object: 'Date', property: 'now', message: 'Pass the time in.' },
    { object: 'performance', property: 'now', message: 'Pass the time in.' },
  ],
  'no-restricted-syntax': [
    'error',
    {
      selector: "NewExpression[callee.name='Date'][arguments.length=0]",
      message: 'Pass the time in.',
    },
  ],
};

const pureFiles = [
  'src/num/**/*.ts',
  'src/core/**/*.ts',
  'src/formats/**/*.ts',
  'src/words/**/*.ts',
];

/** Most test files share a process, where a module that is mocked for one would be mocked for all after it, or for none. */
const noModuleMocks = ['mock', 'doMock'].map((property) => ({
  object: 'vi',
  property,
  message: 'Pass in what is to be replaced, or see test/dangers.',
}));

export default tseslint.config(
  { ignores: ['build/', 'node_modules/', 'src/web/public/'] },
  js.configs.recommended,
  {
    files: ['**/*.ts', '**/*.tsx'],
    extends: [tseslint.configs.strictTypeChecked],
    languageOptions: {
      parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname },
    },
    rules: {
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/restrict-template-expressions': [
        'error',
        { allowNumber: true, allowBoolean: true },
      ],
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
    },
  },
  {
    files: ['src/web/**/*.{ts,tsx}'],
    plugins: { 'react-hooks': reactHooks },
    rules: reactHooks.configs.recommended.rules,
  },
  {
    files: pureFiles,
    rules: pure,
  },
  {
    files: ['src/**/*.test.ts', 'bench/**/*.test.ts', 'test/*.ts', 'test/conformance/**/*.ts'],
    rules: { 'no-restricted-properties': ['error', ...noModuleMocks] },
  },
  {
    files: pureFiles.map((files) => files.replace('*.ts', '*.test.ts')),
    rules: {
      'no-restricted-properties': [...pure['no-restricted-properties'], ...noModuleMocks],
    },
  },
  {
    files: ['**/*.js', '**/*.mjs'],
    languageOptions: { globals: { process: 'readonly', console: 'readonly', URL: 'readonly' } },
  },
);
