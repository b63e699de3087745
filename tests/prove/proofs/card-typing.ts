// A card of one's own is entered quickly: the whole house card by keyboard, ten of its hands by touch, in a real browser.
import type { Browser } from 'playwright-core';
import { openChromium } from '../../../client/tools/chromium.ts';
import { startPageServer } from '../../../client/tools/page-server.ts';
import { meanSameHands } from '../../../shared-engine/card/compare.ts';
import type { CardFile } from '../../../shared-engine/card/format.ts';
import { HOUSE_CARD } from '../../../shared-engine/card/house/card.ts';
import { drawn, stream } from '../../../shared-engine/rules/deal/random.ts';
import { layHand } from '../../kit/card-laying.ts';
import { openNewCard, storedCard, typeCard } from '../../kit/card-typing.ts';
import type { Proof, ProofRow } from '../proof.ts';

/** Hands laid by touch. */
const LAID = 10;
const MOST_KEYS = 30;
const MOST_TAPS = 25;

export const proof: Proof = {
  summary:
    'The house card is typed with at most 30 keys a hand; ten drawn hands are laid with at most 25 taps each.',
  async run({ seed }) {
    const server = await startPageServer();
    const browser = await openChromium();
    try {
      return [...(await typed(browser, server.origin)), ...(await laid(browser, server.origin, seed))];
    } finally {
      await browser.close();
      await server.stop();
    }
  },
};

async function typed(browser: Browser, origin: string): Promise<ProofRow[]> {
  const page = await browser.newPage({ serviceWorkers: 'block' });
  await openNewCard(page, origin);
  const keys = await typeCard(page, HOUSE_CARD);
  const mean = keys.reduce((sum, count) => sum + count, 0) / keys.length;
  const same = meanSameHands(await storedCard(page), HOUSE_CARD);
  return [
    {
      what: `keys a hand, on average over ${keys.length} hands, points and Enter included`,
      value: Math.round(mean * 10) / 10,
      bar: `at most ${MOST_KEYS}`,
      ok: mean <= MOST_KEYS,
    },
    { what: 'the card typed has the hands of the house card', value: same, bar: 'true', ok: same },
  ];
}

async function laid(browser: Browser, origin: string, seed: string): Promise<ProofRow[]> {
  const page = await browser.newPage({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    serviceWorkers: 'block',
  });
  const patterns = drawn(HOUSE_CARD.patterns, LAID, stream(seed, 'laid hands'));
  await openNewCard(page, origin);
  await page.getByRole('button', { name: 'Add a hand' }).tap();
  const rows: ProofRow[] = [];
  for (const pattern of patterns) {
    const taps = await layHand(page, pattern);
    rows.push({
      what: `taps for ${pattern.id}`,
      value: taps,
      bar: `at most ${MOST_TAPS}`,
      ok: taps <= MOST_TAPS,
    });
  }
  const same = meanSameHands(oneSection(await storedCard(page)), oneSection({ ...HOUSE_CARD, patterns }));
  return [...rows, { what: 'the hands laid are those drawn', value: same, bar: 'true', ok: same }];
}

/** The same hands in one section, whatever sections they came from. */
function oneSection(card: CardFile): CardFile {
  const sections = [{ id: 'all', name: 'All' }];
  return { ...card, sections, patterns: card.patterns.map((pattern) => ({ ...pattern, section: 'all' })) };
}
