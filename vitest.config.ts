import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    globalSetup: 'tests/kit/build-server.ts',
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // Two cores: more workers only take turns.
    maxWorkers: 2,
    // The modules keep no state of their own, so that files of tests may share them instead of loading them anew.
    isolate: false,
  },
});
