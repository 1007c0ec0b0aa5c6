import tseslint from 'typescript-eslint';

/** Pure code: everything in lib but the edges, what the server calls, and the command line. */
const PURE = ['lib/**/*.ts'];
const NOT_PURE = ['lib/edges/**', 'lib/server/**', 'lib/commands/**'];
/** Constants and other tables are as long as their subject. */
const TABLES = ['**/constants.ts', 'lib/card/aruco-4x4-50.ts', 'lib/card/pen-glyphs.ts'];

/** Habits of tests that let one pass without checking anything. */
const TESTS_THAT_CANNOT_FAIL = [
  {
    selector: 'ExpressionStatement > CallExpression[callee.name="expect"], AwaitExpression > CallExpression[callee.name="expect"]',
    message: 'This expect has no matcher.',
  },
  {
    selector: ':matches(ExpressionStatement, AwaitExpression) > MemberExpression',
    message: 'This matcher is never called.',
  },
  {
    selector: 'MemberExpression[object.name=/^(it|test|describe|suite)$/][property.name=/^(only|skip|todo|fails)$/]',
    message: 'Every test runs; what a machine may lack is asked with skipIf.',
  },
  {
    selector: 'CallExpression[callee.name=/^(xit|xtest|xdescribe|fit|fdescribe)$/]',
    message: 'Every test runs; what a machine may lack is asked with skipIf.',
  },
  {
    selector: 'MemberExpression[property.name=/^toMatch(Inline|File)?Snapshot$/]',
    message: 'No snapshots: a test states the value it expects, and why.',
  },
  {
    selector: 'CallExpression[callee.name=/^(it|test)$/] > ArrowFunctionExpression > BlockStatement[body.length=0]',
    message: 'This test checks nothing.',
  },
];

export default tseslint.config(
  { ignores: ['node_modules/', '.next/', '.scratch/', 'out/', 'lib/edges/db/generated/', '**/*.d.mts'] },
  {
    files: ['**/*.{ts,tsx,js,mjs}'],
    extends: [tseslint.configs.base],
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      eqeqeq: 'error',
      'no-debugger': 'error',
      'no-empty': 'error',
      'no-unreachable': 'error',
      'no-var': 'error',
      'prefer-const': 'error',
      'no-unused-expressions': 'error',
    },
  },
  {
    files: ['**/*.{ts,tsx}'],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': 'error',
      '@typescript-eslint/await-thenable': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
    },
  },
  {
    files: PURE,
    ignores: NOT_PURE,
    rules: {
      'max-lines-per-function': ['error', { max: 40, skipBlankLines: true, skipComments: true }],
      // CIE Lab says its white: lab65 or lab50.
      'id-denylist': ['error', 'lab', 'Lab'],
    },
  },
  { files: PURE, ignores: [...NOT_PURE, ...TABLES], rules: { 'max-lines': ['error', { max: 150 }] } },
  {
    files: ['lib/{measure,trend,decide}/**/*.ts'],
    ignores: ['**/constants.ts'],
    rules: {
      '@typescript-eslint/no-magic-numbers': [
        'error',
        // Counting, halves, squares, percent, a half turn and a full one: arithmetic, not knowledge.
        { ignore: [-1, 0, 0.5, 1, 2, 3, 4, 100, 180, 360], ignoreArrayIndexes: true, ignoreTypeIndexes: true, ignoreNumericLiteralTypes: true },
      ],
    },
  },
  { files: ['app/**/page.tsx'], rules: { 'max-lines': ['error', { max: 40 }] } },
  {
    files: ['app/**/{route,actions}.ts'],
    rules: { 'max-lines-per-function': ['error', { max: 50, skipBlankLines: true, skipComments: true }] },
  },
  {
    files: ['tests/**/*.ts'],
    rules: {
      'no-restricted-syntax': ['error', ...TESTS_THAT_CANNOT_FAIL],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: 'Chance in tests has a seed.' }],
    },
  },
  // The setup replaces chance, and its test looks at the replacement.
  { files: ['tests/setup.ts', 'tests/unit/setup/**'], rules: { 'no-restricted-properties': 'off' } },
);
