import jsxA11y from 'eslint-plugin-jsx-a11y';
import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';
import { noReadingSentences } from './no-reading-sentences.js';

const specs = ['tests/**/*.ts', '**/*.spec.ts'];
/** Bends files as they are written, before they are read: what is in them is not known. */
const benders = ['apps/cli/bench/plans/damaged-tours.ts'];

const howWritten = 'Write moments, days and numbers by apps/web/src/platform/written.ts.';

export default tseslint.config(
  { ignores: ['dist', 'node_modules', 'libs/contracts', '.data', 'coverage', 'out'] },
  {
    files: ['**/*.ts', '**/*.tsx'],
    extends: [...tseslint.configs.recommendedTypeChecked],
    languageOptions: {
      parserOptions: {
        project: ['../tsconfig.json', '../apps/web/tsconfig.json'].map((path) => new URL(path, import.meta.url).pathname),
      },
    },
    rules: {
      // swc turns a type-only import of an injected class into nothing; this rule knows decorators, the formatter's does not.
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_', ignoreRestSiblings: true }],
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      eqeqeq: ['error', 'always'],
    },
  },
  {
    // A function fits a screen.
    files: ['**/*.ts', '**/*.tsx'],
    ignores: specs,
    rules: { 'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }] },
  },
  {
    // Nothing decides by reading a sentence: what it says may change, and be said in another language.
    files: ['apps/**/*.{ts,tsx}', 'libs/**/*.ts'],
    ignores: [...specs, 'libs/words/**'],
    plugins: { own: { rules: { 'no-reading-sentences': noReadingSentences } } },
    rules: { 'own/no-reading-sentences': 'error' },
  },
  {
    // What may be missing is said to be missing. Old places are listed in eslint-suppressions.json, a list that only gets shorter.
    // A bench that misses something may stop.
    files: ['apps/**/*.{ts,tsx}'],
    ignores: [...specs, 'apps/cli/bench/**'],
    rules: { '@typescript-eslint/no-non-null-assertion': 'error' },
  },
  {
    files: ['apps/web/**/*.{ts,tsx}'],
    plugins: { 'react-hooks': reactHooks, 'jsx-a11y': jsxA11y },
    languageOptions: { parserOptions: { ecmaFeatures: { jsx: true } } },
    rules: {
      ...reactHooks.configs.recommended.rules,
      ...jsxA11y.flatConfigs.strict.rules,
      // On the floor the field that a scanner types into has the focus as soon as its screen is chosen.
      'jsx-a11y/no-autofocus': 'off',
      // The turnable load is an application (WAI-ARIA): it takes keys, and its table below says the same.
      'jsx-a11y/no-noninteractive-tabindex': ['error', { tags: [], roles: ['application'] }],
    },
  },
  {
    // A moment, a day and a number stand one way on all screens, whatever the browser's language.
    files: ['apps/web/**/*.{ts,tsx}'],
    ignores: [...specs, 'apps/web/src/platform/written.ts'],
    rules: {
      'no-restricted-properties': [
        'error',
        ...['toLocaleString', 'toLocaleDateString', 'toLocaleTimeString'].map((property) => ({ property, message: howWritten })),
      ],
      'no-restricted-syntax': [
        'error',
        { selector: "MemberExpression[property.name='format'][object.callee.property.name=/Format$/]", message: howWritten },
        {
          selector: "CallExpression[callee.property.name='slice'][arguments.0.raw='0'][arguments.1.raw=/^1[069]$/]",
          message: howWritten,
        },
      ],
    },
  },
  {
    // Solving takes seconds: in a thread it costs nobody anything, where requests are answered it stops them all.
    files: ['apps/api/src/**/*.ts'],
    ignores: ['apps/api/src/**/*.task.ts', 'apps/api/src/features/loading/loading-decisions.ts'],
    rules: {
      '@typescript-eslint/no-restricted-imports': [
        'error',
        {
          paths: [
            {
              name: '#pack-plan',
              importNames: ['makePackPlan', 'makeSteadyPlan', 'replanTrucks', 'workListOf', 'betweenShows', 'swapOf'],
              message: 'Solve in a task (*.task.ts), which runs in a thread.',
            },
            { name: '#cart-allocation', message: 'Solve in a task (*.task.ts), which runs in a thread.', allowTypeImports: true },
            { name: '#truck-pack', message: 'Solve in a task (*.task.ts), which runs in a thread.', allowTypeImports: true },
          ],
        },
      ],
    },
  },
  {
    // Engines have no output of their own and no clock: a date or a seed is an argument.
    files: ['libs/**/*.ts'],
    ignores: ['**/*.spec.ts'],
    rules: {
      'no-console': 'error',
      'no-restricted-globals': ['error', 'console', 'process', 'setTimeout', 'Buffer', 'document', 'window', 'fetch'],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: 'Take a seeded generator as an argument.' }],
    },
  },
  {
    // Tests bend inputs in ways that their types forbid, and look at replies field by field.
    files: [...specs, ...benders],
    rules: Object.fromEntries(
      [
        'no-explicit-any',
        'no-unsafe-assignment',
        'no-unsafe-member-access',
        'no-unsafe-call',
        'no-unsafe-argument',
        'no-unsafe-return',
      ].map((rule) => [`@typescript-eslint/${rule}`, 'off']),
    ),
  },
);
