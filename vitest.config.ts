import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/peers/**'],
    reporters: ['default', './tests/house/closingLine.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // Two cores on the smallest machine we support; more workers only swap.
    maxWorkers: 2,
  },
});
