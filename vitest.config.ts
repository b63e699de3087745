import { defineConfig } from 'vitest/config';
import { LongestFirst } from './tests/kit/longest-first.ts';

export default defineConfig({
  test: {
    globalSetup: 'tests/kit/build-server.ts',
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // One more than cores: tests of pages and processes wait for a third of their time.
    maxWorkers: 3,
    sequence: { sequencer: LongestFirst },
    // Files of tests share their modules instead of loading them anew. What these keep makes no test depend on another:
    // it is found by its whole content (cards and what is compiled of them, in server/playing-card.ts and the kit), or
    // nobody reads it (closed databases, in server/store/held.ts), or only its being new counts (ids of messages).
    isolate: false,
    // A spy that a failing test left would stay in those shared modules.
    restoreMocks: true,
  },
});
