import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'rules/**/*.test.ts', 'tests/**/*.test.ts'],
    setupFiles: ['tests/support/random.ts'],
    testTimeout: 60_000,
    reporters: ['default'],
  },
});
