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
          exclude: ['tests/peers/**', 'tests/**/*.window.test.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'window',
          include: ['tests/**/*.window.test.ts'],
          environment: './tests/house/jsdomEnvironment.ts',
        },
      },
    ],
  },
});
