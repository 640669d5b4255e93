import tseslint from 'typescript-eslint';

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
    files: ['tests/**/*.ts', '**/*.spec.ts'],
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
