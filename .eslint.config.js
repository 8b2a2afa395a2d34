import js from '@eslint/js';
import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', 'openapi/', 'var/'] },
  js.configs.recommended,
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: {
      parserOptions: { project: './tsconfig.json', tsconfigRootDir: import.meta.dirname },
    },
    rules: {
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      '@typescript-eslint/strict-boolean-expressions': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      '@typescript-eslint/require-await': 'off',
      'no-restricted-globals': [
        'error',
        { name: 'Date', message: 'Use domain/calendar, or the Clock handed in.' },
      ],
      'no-restricted-syntax': [
        'error',
        { selector: 'ExportDefaultDeclaration', message: 'Name every export.' },
        { selector: 'TSEnumDeclaration', message: 'Use a union of string literals.' },
      ],
      eqeqeq: 'error',
    },
  },
  { files: ['.eslint.config.js', '.vitest.config.ts'], rules: { 'no-restricted-syntax': 'off' } },
  { files: ['**/*.js'], ...tseslint.configs.disableTypeChecked },
  {
    // Time enters the program in two places only.
    files: ['src/domain/calendar/**', 'src/app/system-clock.ts', 'tests/**'],
    rules: { 'no-restricted-globals': 'off' },
  },
);
