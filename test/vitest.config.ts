import { defineConfig } from 'vitest/config';

const unit = ['**/*.test.ts', '**/*.test.tsx'];
const app = ['app/**/*.test.ts', 'app/**/*.test.tsx'];

// `unit` is everything that needs no browser; `app` drives the whole program in one.
export default defineConfig({
  root: import.meta.dirname,
  test: {
    projects: [
      { extends: true, test: { name: 'unit', include: unit, exclude: app, environment: 'node', testTimeout: 30_000 } },
      {
        extends: true,
        test: {
          name: 'app',
          include: app,
          environment: 'node',
          // Drills and sets play at their own pace: two files at a time wait together.
          maxWorkers: 2,
          testTimeout: 90_000,
          hookTimeout: 90_000,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
