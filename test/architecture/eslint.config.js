import svelte from 'eslint-plugin-svelte';
import tseslint from 'typescript-eslint';
import { importRule } from './import-rule.ts';

// Run from the root: eslint -c test/architecture/eslint.config.js .
const ROOT = new URL('../..', import.meta.url).pathname;

const CODE = ['**/*.ts', '**/*.js', '**/*.mjs', '**/*.svelte'];
const LONGEST_FILE = 450;

const impure = (name, instead) => ({ name, message: `shared-core is the same on any machine, at any time: ${instead}.` });

/** ESLint's own rules against what is never meant; what the compiler finds is left to it. */
const NEVER_RIGHT = [
  'array-callback-return', 'for-direction', 'no-async-promise-executor', 'no-case-declarations', 'no-compare-neg-zero',
  'no-cond-assign', 'no-constant-binary-expression', 'no-debugger', 'no-delete-var', 'no-dupe-else-if', 'no-duplicate-case',
  'no-empty', 'no-empty-character-class', 'no-empty-pattern', 'no-eval', 'no-ex-assign', 'no-fallthrough', 'no-global-assign',
  'no-implied-eval', 'no-irregular-whitespace', 'no-loss-of-precision', 'no-misleading-character-class', 'no-new-func',
  'no-prototype-builtins', 'no-regex-spaces', 'no-self-assign', 'no-self-compare', 'no-sparse-arrays',
  'no-template-curly-in-string', 'no-throw-literal', 'no-unsafe-finally', 'no-unsafe-optional-chaining', 'no-useless-catch',
  'no-useless-escape', 'no-var', 'require-yield', 'use-isnan',
];

export default tseslint.config(
  { ignores: ['out/', 'test-results/', 'playwright-report/'] },
  ...tseslint.configs.recommended.map((config) => ({ files: CODE, ...config })),
  ...svelte.configs.recommended,
  { files: ['**/*.svelte', '**/*.svelte.ts'], languageOptions: { parserOptions: { parser: tseslint.parser } } },
  {
    files: CODE,
    plugins: { struckline: { rules: { 'import-table': importRule(ROOT) } } },
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      'struckline/import-table': 'error',
      'max-lines': ['error', LONGEST_FILE],
      'no-constant-condition': ['error', { checkLoops: 'none' }],
      eqeqeq: 'error',
      'prefer-const': ['error', { destructuring: 'all' }],
      ...Object.fromEntries(NEVER_RIGHT.map((rule) => [rule, 'error'])),
      '@typescript-eslint/no-unused-vars': ['error', { ignoreRestSiblings: true, argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports', disallowTypeAnnotations: false }],
      'no-restricted-syntax': [
        'error',
        { selector: 'TSEnumDeclaration', message: 'Node runs this code without a build: a union of texts instead of an enum.' },
        { selector: 'TSParameterProperty', message: 'Node runs this code without a build: a field instead of a parameter property.' },
        { selector: 'TSModuleDeclaration[kind="namespace"]', message: 'Node runs this code without a build: a module instead of a namespace.' },
      ],
    },
  },
  {
    files: ['**/*.svelte'],
    rules: {
      // A component's properties are taken apart in one statement, whether or not they are written to.
      'prefer-const': 'off',
      'svelte/prefer-const': ['error', { destructuring: 'all' }],
    },
  },
  // A set that lives within one function has nobody who waits for its changes.
  { files: ['**/*.svelte', '**/*.svelte.ts'], rules: { 'svelte/prefer-svelte-reactivity': 'off' } },
  { files: ['shared-core/**', 'src-renderer/**'], rules: { 'no-console': 'error' } },
  {
    files: ['shared-core/**'],
    rules: {
      'no-restricted-globals': [
        'error',
        impure('Date', 'take a date as an argument'),
        impure('Intl', 'print numbers with units/'),
        impure('performance', 'bound work by steps'),
        impure('crypto', 'take ids as an argument'),
        impure('globalThis', 'nothing of the machine is known here'),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'shared-core is the same every time: seed a generator of its own.' },
        ...['localeCompare', 'toLocaleString', 'toLocaleUpperCase', 'toLocaleLowerCase', 'toLocaleDateString'].map((property) => ({
          property,
          message: 'shared-core knows no locale: compare and print with its own functions.',
        })),
      ],
    },
  },
);
