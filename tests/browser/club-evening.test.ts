// Pages behind one address at a server with the limits that stand by default; twenty of them are part of the siege.
import { expect, test } from 'vitest';
import { browserEvening } from '../kit/browser-evening.ts';
import { browserSuite } from '../kit/browser-suite.ts';

// What is not set has its default.
const suite = browserSuite({ REQUESTS_PER_MINUTE: '', ROOMS_PER_MINUTE: '', SOCKETS_PER_IP: '' });

test('AC2 six pages behind one address open, join, play a step and reload at once', async () => {
  const shown = await browserEvening(suite.newPage, suite.origin(), { tables: 2, people: 3 });
  expect(shown).toHaveLength(6);
  for (const question of shown) expect(question).toMatch(/^First across/);
});
