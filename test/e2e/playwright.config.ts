import { defineConfig } from '@playwright/test';
import { BROWSER_ARGUMENTS, findBrowser } from './browser.ts';

export default defineConfig({
  testDir: '.',
  testMatch: '*.e2e.ts',
  outputDir: '../../test-results',
  fullyParallel: false,
  workers: 2,
  // A second try on a shared machine; the list names as flaky what only passed then.
  retries: process.env.CI ? 1 : 0,
  timeout: 300_000,
  expect: { timeout: 30_000 },
  reporter: [['list']],
  use: {
    browserName: 'chromium',
    viewport: { width: 1280, height: 800 },
    trace: 'on-first-retry',
    launchOptions: { executablePath: findBrowser(), args: BROWSER_ARGUMENTS },
  },
});
