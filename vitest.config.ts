import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/setup.ts'],
    // Native add-ons (sharp) and a large WebAssembly heap: processes, not threads.
    pool: 'forks',
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    env: { TZ: 'Asia/Kathmandu', LANG: 'en_GB.UTF-8' },
  },
});
