import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    reporters: ['default', './tests/house/closingLine.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // Two cores on the smallest machine we support; more workers only swap.
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/peers/**', 'tests/**/*.window.test.ts', 'tests/**/*.page.test.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'window',
          include: ['tests/**/*.window.test.{ts,tsx}'],
          environment: './tests/house/jsdomEnvironment.ts',
        },
      },
      {
        extends: true,
        test: {
          name: 'page',
          include: ['tests/**/*.page.test.ts'],
          globalSetup: './tests/page/buildOnce.ts',
          // One browser at a time, and nothing beside it: these tests also measure.
          fileParallelism: false,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
