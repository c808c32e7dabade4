import js from '@eslint/js';
import tseslint from 'typescript-eslint';

/** Imports point one way: each room may use the rooms below it, never those above. */
const ROOMS = [
  'quantity',
  'reading',
  'model',
  'geometry',
  'computation',
  'engine',
  'matrix',
  'compare',
  'where',
  'output',
  'cli',
];
const COMPUTATION = [
  'joints',
  'film',
  'water',
  'climate',
  'moisture',
  'vapor',
  'continuity',
  'products',
  'specification',
];
const above = (room) => ROOMS.slice(ROOMS.indexOf(room) + 1).flatMap((r) => (r === 'computation' ? COMPUTATION : [r]));
const oneWay = (folder, room) => ({
  files: [`src/${folder}/**/*.ts`],
  ignores: ['**/*.test.ts'],
  rules: {
    'no-restricted-imports': [
      'error',
      {
        patterns: [
          {
            group: above(room).map((r) => `**/${r}/**`),
            allowTypeImports: room === 'engine' || room === 'model',
            message: `src/${folder} may not import from the rooms above it.`,
          },
        ],
      },
    ],
  },
});

export default tseslint.config(
  { ignores: ['dist', 'generated', 'node_modules', 'coverage', 'tests/data', 'fixtures'] },
  js.configs.recommended,
  ...tseslint.configs.strictTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-unnecessary-condition': 'off',
      '@typescript-eslint/no-confusing-void-expression': 'off',
      'no-console': 'error',
    },
  },
  ...['quantity', 'reading', 'model', 'geometry', 'engine', 'matrix', 'compare', 'where', 'output'].map((room) =>
    oneWay(room, room),
  ),
  ...COMPUTATION.map((folder) => oneWay(folder, 'computation')),
  {
    files: ['rules/**/*.ts'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              group: ['**/reading/**', '**/output/**', '**/cli/**'],
              allowTypeImports: true,
              message: 'A rule sees the model, never how it was read or how it is printed.',
            },
          ],
        },
      ],
    },
  },
  {
    files: ['**/*.test.ts', '**/testing/**/*.ts', 'tests/**/*.ts'],
    rules: {
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      'no-control-regex': 'off',
    },
  },
  {
    files: ['**/*.mjs', 'eslint.config.js'],
    ...tseslint.configs.disableTypeChecked,
    languageOptions: {
      parserOptions: { projectService: false },
      globals: {
        process: 'readonly',
        console: 'readonly',
        URL: 'readonly',
        performance: 'readonly',
        setTimeout: 'readonly',
      },
    },
    rules: { ...tseslint.configs.disableTypeChecked.rules, 'no-console': 'off' },
  },
);
