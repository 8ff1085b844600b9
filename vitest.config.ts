import { defineConfig } from 'vitest/config';

// Screens show local times; tests are the same everywhere.
process.env.TZ = 'UTC';

/** Unit and outside checks run in parallel; the terminal tests drive the built bundle one file at a time. */
export default defineConfig({
  test: {
    globalSetup: ['test/compile-words.ts'],
    projects: [
      {
        test: {
          name: 'unit',
          testTimeout: 120_000,
          include: ['test/**/*.test.{ts,tsx}'],
          exclude: ['test/outside/**', 'test/terminal/**'],
        },
      },
      { test: { name: 'outside', testTimeout: 60_000, include: ['test/outside/**/*.test.ts'] } },
      {
        test: {
          name: 'terminal',
          include: ['test/terminal/**/*.test.ts'],
          fileParallelism: false,
          testTimeout: 600_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
