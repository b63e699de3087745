// A closed round in the page, and deep answers that come one by one in an order of the test's while steps are opened.
import type { Page, Worker } from 'playwright-core';
import { dealHash, exchangeOf } from '../../client/app/routes/deal-link.ts';
import { playRound } from '../../client/tools/parts/stage.ts';
import type { KeyedAnalysis } from '../../client/workers/seat-work.ts';
import { decisionKey, decisionsIn } from '../../shared-engine/analysis/review/deep-analysis.ts';
import type { Review } from '../../shared-engine/analysis/review/review.ts';
import { type Random, shuffled, stream } from '../../shared-engine/rules/deal/random.ts';
import { analysisWith } from './made-up-analyses.ts';
import { type ReviewOnScreen, watchReview } from './review-on-screen.ts';
import { seedNamed } from './rounds.ts';
import { type GivenChoice, screenContradictions } from './screen-contradictions.ts';

export interface Arrivals {
  /** Each contradiction, with the answer it came with; empty where every moment told one story. */
  readonly found: readonly string[];
  readonly moments: number;
  /** What stood on the screen at last, and what the page had been given by then. */
  readonly last: ReviewOnScreen;
  readonly given: readonly GivenChoice[];
}

export interface ClosedRound {
  readonly review: Review;
  /** Of its choices, as the worker names them. */
  readonly keys: readonly string[];
  /** Analyzes nothing; what it answers is the test's. */
  readonly worker: Worker;
}

/** Plays the round that `name` names and opens it in the page, as one that was left after its close. */
export async function openClosedRound(page: Page, origin: string, name: string): Promise<ClosedRound> {
  const { review, closed, stored } = await playRound(seedNamed(name));
  if (closed.view?.audience !== 'seat') throw new Error('a seat plays its own round');
  await page.route(/deep-analysis-worker/, (route) =>
    route.fulfill({ contentType: 'text/javascript', body: 'export {};' }),
  );
  await page.addInitScript(
    (text) => localStorage.setItem('quadrille.page-round', text),
    JSON.stringify(stored),
  );
  const { deal, seat, terms } = stored;
  const link = dealHash({ deal, seat, cardOf: null, ways: exchangeOf(terms) });
  const [worker] = await Promise.all([page.waitForEvent('worker'), page.goto(`${origin}/${link}`)]);
  await page.locator('.lesson-text').waitFor();
  return { review, keys: decisionsIn(closed.view.record).map(decisionKey), worker };
}

/** Opens a closed round and gives it deep answers, one by one, while one step after the other is opened. */
export async function giveAnswers(page: Page, origin: string, name: string): Promise<Arrivals> {
  const random = stream(name, 'answers');
  const { review, keys, worker } = await openClosedRound(page, origin, name);
  const watched = await watchReview(page);
  const strip = page.locator('.choice-strip button');
  let given: readonly GivenChoice[] = review.choices.map((choice) => ({ choice, analysis: null }));
  let opened: number | null = null;
  const found: string[] = [];
  let [last] = await watched.moments();
  let count = 0;
  for (const [done, nth] of shuffled([...keys.keys()], random).entries()) {
    const before = given;
    const analysis = analysisWith(review.choices[nth]!, someValues(random));
    given = given.map((one, place) => (place === nth ? { ...one, analysis } : one));
    if (random.below(2) === 0) {
      opened = random.below(keys.length);
      await strip.nth(opened).click();
    }
    await answer(worker, { key: keys[nth]!, analysis });
    await showsAnswers(page, done + 1, keys.length);
    const moments = await watched.moments();
    count += moments.length;
    last = moments.at(-1);
    const kinds = [
      ...contradictionsAmong(moments, before, given),
      ...(isOpenAsMeant(last, opened) ? [] : ['the open step is neither the one opened nor the top’s']),
    ];
    found.push(...kinds.map((kind) => `answer ${done + 1}: ${kind}`));
  }
  return { found, moments: count, last: last!, given };
}

/** Until somebody opens a step, the one that the top speaks of is open, and no button leads there. */
function isOpenAsMeant(screen: ReviewOnScreen | undefined, opened: number | null): boolean {
  return opened === null ? screen?.pointsTo === null : screen?.strip[opened]?.isOpen === true;
}

/** The last moment knows the new answer; each before it knows it or does not, and nothing between. */
function contradictionsAmong(
  moments: readonly ReviewOnScreen[],
  before: readonly GivenChoice[],
  given: readonly GivenChoice[],
): readonly string[] {
  const kinds = moments.flatMap((screen, nth) => {
    const now = screenContradictions(screen, given);
    const isLast = nth === moments.length - 1;
    return isLast || screenContradictions(screen, before).length > 0 ? now : [];
  });
  return [...new Set(kinds)];
}

/** Difference and half width of three alternatives, in thousandths of a win. */
function someValues(random: Random): readonly (readonly [number, number])[] {
  return [0, 1, 2].map(() => [random.below(13_000) - 4_000, 1 + random.below(3_000)] as const);
}

async function answer(worker: Worker, keyed: KeyedAnalysis): Promise<void> {
  await worker.evaluate((made) => self.postMessage(made), keyed);
}

async function showsAnswers(page: Page, done: number, all: number): Promise<void> {
  if (done < all) await page.locator(`#analysis-progress[value="${done}"]`).waitFor();
  else await page.locator('#analysis-progress').waitFor({ state: 'detached' });
}
