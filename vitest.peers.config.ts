import { defineConfig } from 'vitest/config';

/** Tests against other programs (LibreOffice, R) that must be installed first: see DEVELOPERS.md. */
export default defineConfig({
  test: {
    include: ['tests/peers/**/*.test.ts'],
    reporters: ['default', './tests/house/closingLine.ts'],
    testTimeout: 300_000,
    hookTimeout: 300_000,
    maxWorkers: 1,
  },
});
