// A page on a slow phone: its processor and its line throttled.
import type { Page } from 'playwright-core';

/** Slow 4G as throttling tools commonly set it (common practice, no source): bytes a second and milliseconds. */
const SLOW_4G = { downloadThroughput: 180_000, uploadThroughput: 84_000, latency: 150 } as const;
const SLOWER_CPU = 4;

export async function throttle(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Network.enable');
  await session.send('Network.emulateNetworkConditions', { offline: false, ...SLOW_4G });
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER_CPU });
}
