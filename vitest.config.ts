import path from 'node:path';
import { defineConfig } from 'vitest/config';

// Before the test processes start: the locale is read from the environment once, when a process begins.
Object.assign(process.env, { TZ: 'Asia/Kathmandu', LANG: 'en_GB.UTF-8', LC_ALL: 'en_GB.UTF-8' });

export default defineConfig({
  resolve: {
    alias: { '@': import.meta.dirname, 'server-only': path.resolve(import.meta.dirname, 'tests/hostile/server-only.ts') },
  },
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/setup.ts'],
    // Native add-ons (sharp) and a large WebAssembly heap: processes, not threads.
    pool: 'forks',
    maxWorkers: 2,
    // A limit against hanging, not a measure of speed: a busy machine of two cores takes three times as long.
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
